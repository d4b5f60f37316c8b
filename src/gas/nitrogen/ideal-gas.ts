import { R_CODATA_2018 as R } from '../constant.js';
import { propertiesFrom, pvtFrom, type Derivatives, type IdealPart } from '../helmholtz.js';
import { gasModel, type GasKernel, type GasModel } from '../model.js';
import { M, SPAN_2000 } from './coefficients.js';
import { idealPart } from './ideal.js';

/** No residual part: that is what makes a gas ideal. */
const NONE: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };

const KERNEL: GasKernel = {
  pvt: (T_K, rho, out) => {
    pvtFrom(NONE, R, T_K, rho, out);
  },
  properties: (T_K, rho, out) => {
    const i: IdealPart = { a: 0, t: 0, tt: 0 };
    idealPart(T_K, rho, i);
    propertiesFrom(i, NONE, R, M, T_K, rho, out);
    out.jt_K_Pa = 0;
  },
  density: (T_K, p_Pa) => p_Pa / (R * T_K),
  saturation: () => false,
  densest_mol_m3: 1.7976931348623157e308, // the largest number: a bundler may not leave out what reads a property
  criticalTemperature_K: 0,
};

/**
 * Nitrogen as an ideal gas, p = ρ R T: for comparison and teaching. Along a constant-density line it is 3 bar off at
 * 140 bar and 20 K, more than most bands allow. Its heat capacity is that of the reference equation at zero pressure.
 *
 * @example
 * ```ts
 * const state = stateAt(idealNitrogen, { pressure: absolute(140, 'bar'), temperature: temperature(20, '°C') });
 * state.compressibility; // => 1
 * ```
 */
export const idealNitrogen: GasModel = /* @__PURE__ */ gasModel({
  id: 'nitrogen-ideal',
  gas: 'nitrogen',
  source: {
    citation: /* @__PURE__ */ citation(),
  },
  molarMass_kg_mol: M,
  gasConstant_J_molK: R,
  validity: {
    temperature_K: [64, 1000],
    pressure_Pa: [0, 200e6],
    reason: 'it is compared with the reference equation there; it describes no real gas at high pressure',
  },
  uncertainty: [],
  '~kernel': KERNEL,
});

function citation(): string {
  return `Ideal-gas law with R of CODATA 2018; heat capacity: ${SPAN_2000.citation}`;
}
