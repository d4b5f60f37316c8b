// A perfect gas, with a heat capacity that does not depend on temperature: for it the textbooks have closed forms.
import { gasModel, type GasModel } from '../../src/gas/model.js';

export const R = 8.314462618;
/** Heat capacity at constant volume of a diatomic gas, 5/2 R. */
export const CV = 2.5 * R;
/** Ratio of heat capacities, 7/5. */
export const GAMMA = 1.4;

/** p = ρ R T, u = cv T. Entropy counts from 300 K and 1 mol/m3. */
export const perfectGas: GasModel = gasModel({
  id: 'perfect-gas',
  gas: 'none',
  source: { citation: 'ideal-gas law with constant heat capacity' },
  molarMass_kg_mol: 0.028,
  gasConstant_J_molK: R,
  validity: { temperature_K: [10, 5000], pressure_Pa: [0, 1e9], reason: 'it is for tests' },
  uncertainty: [],
  '~kernel': {
    pvt: (T, rho, out) => {
      out.p_Pa = rho * R * T;
      out.dpdrho_T = R * T;
      out.dpdT_rho = rho * R;
    },
    properties: (T, rho, out) => {
      out.u_J_mol = CV * T;
      out.h_J_mol = CV * T + R * T;
      out.s_J_molK = CV * Math.log(T / 300) - R * Math.log(rho);
      out.cv_J_molK = CV;
      out.cp_J_molK = CV + R;
      out.w_m_s = Math.sqrt((GAMMA * R * T) / 0.028);
      out.jt_K_Pa = 0;
    },
    density: (T, p) => p / (R * T),
    saturation: () => false,
    densest_mol_m3: Number.MAX_VALUE,
    criticalTemperature_K: 0,
  },
});
