/** Molar gas constant, J/(mol K), for models that own none: CODATA 2018, exact since the 2019 redefinition of the SI. */
export const R_CODATA_2018 = 8.31446261815324;
