// The two solvers. Both keep a bracket that every evaluation narrows, and fall back on its middle where Newton's step
// would leave it: with one root in the bracket they close on it, whatever the start.

const MOST_STEPS = 100;

/** Z and d(ρ Z)/dρ of an isotherm at a density in the solver's own unit; the caller's object. */
export interface Isothermal {
  z: number;
  zz: number;
}

/**
 * The density at which an isotherm has a pressure: ρ Z(ρ) = `ideal`, the density that an ideal gas would have. Newton's
 * method in ln p against ln ρ, where an isotherm is nearly straight. NaN if it does not close.
 */
export function densityRoot(
  at: (rho: number, out: Isothermal) => void,
  ideal: number,
  guess: number,
  end: number,
): number {
  const of: Isothermal = { z: 1, zz: 1 };
  let low = 0;
  let high = end;
  let rho = guess;
  for (let step = 0; step < MOST_STEPS; step += 1) {
    at(rho, of);
    const x = ideal / (rho * of.z); // p wanted over p here
    if (x > 1) low = rho;
    else high = rho;
    // x^m, with m = d ln ρ / d ln p, by its [1/1] Padé approximant: exact to third order, and no logarithm.
    const m = of.z / of.zz;
    const next = (rho * (1 + 0.5 * (1 + m) * (x - 1))) / (1 + 0.5 * (1 - m) * (x - 1));
    const inside = next >= low && next <= high;
    const change = inside ? next - rho : 0.5 * (low + high) - rho;
    rho += change;
    // Convergence is at least quadratic, so the change after one below 1e-9 is below the rounding of a double.
    // Where the isotherm is flat, at the critical point, rounding sends it outside until the bracket has closed on it.
    const closed = inside ? Math.abs(change) <= 1e-9 * rho : high - low <= 1e-15 * rho && Math.abs(x - 1) <= 1e-12;
    if (closed) return rho;
  }
  return Number.NaN;
}

/** A value and its slope; the caller's object. */
export interface Sloped {
  value: number;
  slope: number;
}

/** Where a function that increases from `low` to `high` has a value. NaN if it does not close. */
export function increasingRoot(
  at: (x: number, out: Sloped) => void,
  wanted: number,
  low: number,
  high: number,
): number {
  const of: Sloped = { value: 0, slope: 1 };
  let x = 0.5 * (low + high);
  for (let step = 0; step < MOST_STEPS; step += 1) {
    at(x, of);
    if (Number.isNaN(of.value)) return of.value; // no side to go on
    if (of.value < wanted) low = x;
    else high = x;
    const next = x + (wanted - of.value) / of.slope;
    const inside = next >= low && next <= high;
    const change = inside ? next - x : 0.5 * (low + high) - x;
    x += change;
    if (inside ? Math.abs(change) <= 1e-9 * Math.abs(x) : high - low <= 1e-15 * Math.abs(x)) return x;
  }
  return Number.NaN;
}
