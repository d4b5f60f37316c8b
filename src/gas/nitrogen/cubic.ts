import { log } from '../elementary.js';
import { R_CODATA_2018 as R } from '../constant.js';
import { propertiesFrom, pvtFrom, type Derivatives, type IdealPart } from '../helmholtz.js';
import { gasModel, type GasKernel, type GasModel, type Properties, type Pvt } from '../model.js';
import { densityRoot, type Isothermal } from '../solve.js';
import { M } from './coefficients.js';
import { idealPart } from './ideal.js';

// Peng and Robinson (1976): p = R T / (v − b) − a α(T) / (v² + 2 b v − b²), with
// a = Ω_a R² Tc² / pc, b = Ω_b R Tc / pc, α = (1 + κ (1 − √(T/Tc)))², κ = 0.37464 + 1.54226 ω − 0.26992 ω².
// Ω_a and Ω_b follow from the critical point to as many digits as wanted; the paper prints 0.45724 and 0.07780.

/** Critical temperature and pressure of nitrogen, Span et al. (2000). */
export const T_c = 126.192;
const p_c = 3.3958e6;
/** Acentric factor of nitrogen: −log10(p_sat / p_c) at 0.7 T_c, less 1; 0.0372 by the reference equation. */
const omega = 0.0372;
const OMEGA_A = 0.457235528921382;
const OMEGA_B = 0.0777960739038885;

// By calls, which a bundler may leave out: it cannot know that arithmetic has no effects.
export const a_c = /* @__PURE__ */ attraction();
export const b = /* @__PURE__ */ covolume();
export const kappa = /* @__PURE__ */ characteristicConstant();

function attraction(): number {
  return (OMEGA_A * R * R * T_c * T_c) / p_c;
}

function covolume(): number {
  return (OMEGA_B * R * T_c) / p_c;
}

/** κ, characteristic of each substance: √α falls by it for each unit that √(T/Tc) rises. */
function characteristicConstant(): number {
  return 0.37464 + 1.54226 * omega - 0.26992 * omega * omega;
}

/** Residual part of the Helmholtz energy: −ln(1 − bρ) − A(T) L(bρ), with A = aα / (2√2 b R T). */
function residual(T_K: number, rho: number, out: Derivatives): void {
  const s = Math.sqrt(T_K / T_c);
  const root = 1 + kappa * (1 - s);
  const scale = a_c / (2 * Math.SQRT2 * b * R * T_K);
  // A ∝ τ (1 + κ − κs)² with s ∝ τ^(−1/2), so τ ∂A/∂τ ∝ τ (1 + κ) (1 + κ − κs).
  const A = scale * root * root;
  const A_t = scale * root * (1 + kappa);
  const A_tt = 0.5 * scale * kappa * s * (1 + kappa);
  const x = b * rho;
  const q = 1 + 2 * x - x * x;
  const L = log((1 + (1 + Math.SQRT2) * x) / (1 + (1 - Math.SQRT2) * x));
  const L_d = (2 * Math.SQRT2 * x) / q;
  const L_dd = (2 * Math.SQRT2 * x * (1 + x * x)) / (q * q);
  const y = x / (1 - x);
  out.a = -log(1 - x) - A * L;
  out.d = y - A * L_d;
  out.dd = y / (1 - x) - A * L_dd;
  out.t = -A_t * L;
  out.td = -A_t * L_d;
  out.tt = -A_tt * L;
}

function pvt(T_K: number, rho: number, out: Pvt): void {
  const r: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };
  residual(T_K, rho, r);
  pvtFrom(r, R, T_K, rho, out);
}

function properties(T_K: number, rho: number, out: Properties): void {
  const r: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };
  const i: IdealPart = { a: 0, t: 0, tt: 0 };
  residual(T_K, rho, r);
  idealPart(T_K, rho, i);
  propertiesFrom(i, r, R, M, T_K, rho, out);
}

function density(T_K: number, p_Pa: number): number {
  if (p_Pa === 0) return 0;
  const r: Derivatives = { a: 0, d: 0, dd: 0, t: 0, td: 0, tt: 0 };
  const isotherm = (rho: number, out: Isothermal): void => {
    residual(T_K, rho, r);
    out.z = 1 + r.d;
    out.zz = out.z + r.dd;
  };
  const ideal = p_Pa / (R * T_K);
  return densityRoot(isotherm, ideal, Math.min(ideal, 0.8 / b), pole());
}

/** The equation has a pole at 1/b: the molecules of the model fill all space there. */
function pole(): number {
  return 1 / b;
}

const KERNEL: GasKernel = {
  pvt,
  properties,
  density,
  saturation: () => false,
  densest_mol_m3: /* @__PURE__ */ pole(),
  criticalTemperature_K: 0,
};

/**
 * Nitrogen by the cubic equation of Peng and Robinson (1976), with T_c = 126.192 K, p_c = 3.3958 MPa and ω = 0.0372: for
 * comparison and teaching. Its critical compression factor is 0.3074 whatever the gas; nitrogen's is 0.2894.
 *
 * Valid here from 160 K, above its critical temperature, so that it has one root everywhere.
 *
 * @example
 * ```ts
 * const state = stateAt(cubicNitrogen, { pressure: absolute(140, 'bar'), temperature: temperature(20, '°C') });
 * state.compressibility.toFixed(3); // => '0.994'
 * ```
 */
export const cubicNitrogen: GasModel = /* @__PURE__ */ gasModel({
  id: 'nitrogen-peng-robinson-1976',
  gas: 'nitrogen',
  source: {
    citation:
      'Peng, D.-Y., Robinson, D. B.: A new two-constant equation of state. Ind. Eng. Chem. Fundam. 15 (1976) 59-64',
    doi: '10.1021/i160057a011',
  },
  molarMass_kg_mol: M,
  gasConstant_J_molK: R,
  validity: {
    temperature_K: [160, 1000],
    pressure_Pa: [0, 100e6],
    reason:
      'it is for comparison with the reference equation, where it has one root; it is up to 14 % off in density there, and 5 % at 250–350 K below 30 MPa',
  },
  uncertainty: [],
  '~kernel': KERNEL,
});
