// What the symbols of the relations stand for: docs/method.md has the same symbols with their meanings, and a test holds
// that every symbol of every relation is here and there.

/** What a symbol stands for, where a reader may choose the unit; else its unit, which is fixed. */
export type Meaning =
  | 'gauge pressure'
  | 'absolute pressure'
  | 'pressure difference'
  | 'temperature'
  | 'temperature difference'
  | 'volume'
  | 'mass'
  | { readonly unit: string; readonly from?: 'model' | 'published' };

const G = 'gauge pressure';
const A = 'absolute pressure';
const D = 'pressure difference';
const T = 'temperature';
const NUMBER = { unit: '1' } as const;
const AMOUNT = { unit: 'mol' } as const;
const DENSITY = { unit: 'mol/m3' } as const;
const OF_MODEL = { unit: '1', from: 'model' } as const;

/** By symbol. `from` says where a value comes from that was neither handed in nor worked out in a step before. */
const MEANING: Readonly<Record<string, Meaning>> = {
  p_abs: A,
  p_amb: A,
  p_amb_stated: A,
  p_n: A,
  p_g: G,
  p_stated: G,
  p_1: G,
  p_2: G,
  p_target: G,
  p_read: G,
  p_lower: G,
  p_upper: G,
  p_stop: G,
  p_allowable: G,
  p_most: G,
  p_full: G,
  p_high: G,
  p_low: G,
  p_settled: G,
  dp: D,
  dp_off: D,
  dp_inside: D,
  dp_allowance: D,
  dp_step: D,
  dp_reading: D,
  dp_span: D,
  dp_target: D,
  dp_below: D,
  p_span: D,
  u: D,
  u_single: D,
  dp_expanded: D,
  dp_half: D,
  dp_low: D,
  dp_high: D,
  dp_guard: D,
  dp_beyond: D,
  dp_vessel: D,
  // What one unit of an error makes of (reading − target), and the size of the error in its SI unit, whichever that is.
  c: { unit: 'Pa' },
  e: NUMBER,
  T,
  T_1: T,
  T_2: T,
  T_n: T,
  T_stated: T,
  T_gauge: T,
  T_gauge_ref: T,
  T_surroundings: T,
  T_shell: T,
  T_read: T,
  T_stop: T,
  dT: 'temperature difference',
  dT_step: 'temperature difference',
  dT_expanded: 'temperature difference',
  V: 'volume',
  V_n: 'volume',
  V_kit: 'volume',
  V_gas: 'volume',
  V_room: 'volume',
  m: 'mass',
  rho: DENSITY,
  rho_n: DENSITY,
  rho_high: DENSITY,
  rho_low: DENSITY,
  rho_kit: DENSITY,
  rho_residual: DENSITY,
  R: { unit: 'J/(mol K)', from: 'model' },
  M: { unit: 'kg/mol', from: 'model' },
  Z: NUMBER,
  n: AMOUNT,
  n_1: AMOUNT,
  n_in: AMOUNT,
  n_year: AMOUNT,
  n_bubble: AMOUNT,
  n_kit: AMOUNT,
  n_usable: AMOUNT,
  n_each: AMOUNT,
  n_air: { unit: '1/h' },
  u_mol: { unit: 'J/mol', from: 'model' },
  h_mol: { unit: 'J/mol', from: 'model' },
  s_mol: { unit: 'J/(mol K)', from: 'model' },
  u_high: { unit: 'J/mol', from: 'model' },
  u_low: { unit: 'J/mol', from: 'model' },
  v_mol: { unit: 'm3/mol' },
  u_1: { unit: 'J/mol', from: 'model' },
  h_in: { unit: 'J/mol', from: 'model' },
  w: { unit: 'J/mol', from: 'model' },
  s: { unit: 'J/(mol K)', from: 'model' },
  s_liquid: { unit: 'J/(mol K)', from: 'model' },
  s_vapour: { unit: 'J/(mol K)', from: 'model' },
  // Any property: per mole of what the step is about.
  y: NUMBER,
  y_liquid: OF_MODEL,
  y_vapour: OF_MODEL,
  p_T: { unit: 'Pa/K', from: 'model' },
  p_T_stated: { unit: 'Pa/K', from: 'model' },
  p_rho: { unit: 'Pa m3/mol', from: 'model' },
  p_rho_stated: { unit: 'Pa m3/mol', from: 'model' },
  u_rho: OF_MODEL,
  u_rho_stated: OF_MODEL,
  r_rho: NUMBER,
  u2_rho: NUMBER,
  e_rho: NUMBER,
  alpha: { unit: '1/K' },
  alpha_stated: { unit: '1/K' },
  d_alpha: { unit: '1/K' },
  percent: NUMBER,
  percent_K: { unit: '1/K' },
  digits: NUMBER,
  emissivity: NUMBER,
  d_emissivity: NUMBER,
  U: { unit: 'J' },
  U_in: { unit: 'J' },
  E: { unit: 'J' },
  E_gas: { unit: 'J' },
  E_push: { unit: 'J' },
  k: { unit: '1', from: 'published' },
  r_k: NUMBER,
  k_p: { unit: '1', from: 'published' },
  k_expanded: NUMBER,
  times: NUMBER,
  r_margin: NUMBER,
  e_TNT: { unit: 'J/kg', from: 'published' },
  t: { unit: 'min' },
  t_c: { unit: 'min' },
  t_limit: { unit: 'min' },
  t_year: { unit: 'min', from: 'published' },
  t_test: { unit: 'min' },
  t_bubble: { unit: 'min' },
  x: NUMBER,
  x_vapour: NUMBER,
  x_O2: NUMBER,
  x_O2_before: NUMBER,
  x_O2_limit: NUMBER,
  x_left: NUMBER,
  x_before: NUMBER,
  x_supply: NUMBER,
  r_gas: NUMBER,
  r_air: NUMBER,
  r_left: NUMBER,
  count: NUMBER,
  count_most: { unit: '1', from: 'published' },
  share: { unit: '1', from: 'published' },
  p_before: A,
  p_after: A,
  theta_1: { unit: '°C' },
  theta_2: { unit: '°C' },
  tau: NUMBER,
  delta: NUMBER,
  T_reducing: T,
  rho_reducing: { unit: 'mol/m3', from: 'model' },
  n_i: OF_MODEL,
  d_i: OF_MODEL,
  t_i: OF_MODEL,
  l_i: OF_MODEL,
  eta_i: OF_MODEL,
  epsilon_i: OF_MODEL,
  beta_i: OF_MODEL,
  gamma_i: OF_MODEL,
  a_i: NUMBER,
  a_before: NUMBER,
  a_d: NUMBER,
  a_T: { unit: 'Pa m6/mol2' },
  a_c: { unit: 'Pa m6/mol2', from: 'model' },
  b: { unit: 'm3/mol', from: 'model' },
  kappa: OF_MODEL,
};

/** What a symbol stands for; one that is not of the library has the unit that its relation says, or none. */
export function meaningOf(symbol: string, unit = ''): Meaning {
  // Terms of a sum of squares: as many as there are errors.
  if (/^u_[a-z]$/.test(symbol)) return D;
  return Object.hasOwn(MEANING, symbol) ? (MEANING[symbol] as Meaning) : { unit };
}

/** The SI unit of what a symbol stands for. */
export function unitOf(meaning: Meaning): string {
  if (typeof meaning === 'object') return meaning.unit;
  if (meaning === 'volume') return 'm3';
  if (meaning === 'mass') return 'kg';
  return meaning === 'temperature' || meaning === 'temperature difference' ? 'K' : 'Pa';
}
