import fc from 'fast-check';
import {
  absolute,
  isFault,
  nitrogen,
  saturationAt,
  stateAt,
  temperature,
  type GasState,
  type Given,
  type Problem,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { anyColdTemperature, at, atDensity, evenly, OF_STATE, T_CRITICAL } from '../support/gas-states.js';
import { problemOf } from '../support/problem.js';
import { relativeError } from '../support/reference.js';
import { span2000, SPAN_2000_JSON } from '../support/span2000.js';

const by = (given: Given): GasState => stateAt(nitrogen, given);
const saturation = (T: number): { p: number; liquid: number; vapour: number } => {
  const { pressure, liquidDensity_mol_m3, vapourDensity_mol_m3 } = saturationAt(nitrogen, temperature(T, 'K'));
  return { p: pressure.pascals, liquid: liquidDensity_mol_m3, vapour: vapourDensity_mol_m3 };
};
/** Energy and entropy on the line across the two-phase region, 0 for the liquid, 1 for the vapour; by the equation. */
function mixed(T: number, share: number): { rho: number; u: number; s: number } {
  const { liquid, vapour } = saturation(T);
  const [l, v] = [span2000(T, liquid), span2000(T, vapour)];
  const mix = (a: number, b: number): number => a + share * (b - a);
  return {
    rho: 1 / mix(1 / liquid, 1 / vapour),
    u: mix(l.u_J_mol, v.u_J_mol),
    s: mix(l.s_J_molK, v.s_J_molK),
  };
}
/** Whether a refusal says that there is liquid, alone or beside vapour. */
const namesLiquid = ({ code }: Problem): boolean => code === 'liquid' || code === 'two phases';

const above = evenly(1e-9, 3).map((x) => 1 + x);

describe('below the critical temperature gas ends at saturation', () => {
  test('(T, p): above the saturation pressure it is liquid, and the refusal says how much gas could have', () => {
    fc.assert(
      fc.property(anyColdTemperature, above, (T, more) => {
        const { p } = saturation(T);
        const problem = problemOf(() => at(T, p * more));
        expect(problem).toMatchObject({ code: 'liquid', path: 'pressure', found: `${p * more} Pa absolute at ${T} K` });
        expect(problem.wanted).toContain(`at most ${p} Pa absolute`);
      }),
    );
  });

  test('(T, p): at 200 MPa too', () => {
    for (const T of [64, 100, 126, 126.19]) expect(problemOf(() => at(T, 200e6)).code).toBe('liquid');
  });

  test('(T, ρ): two phases between the saturated densities', () => {
    fc.assert(
      fc.property(anyColdTemperature, evenly(1e-9, 1 - 1e-9), (T, share) => {
        const { liquid, vapour } = saturation(T);
        const rho = vapour + share * (liquid - vapour);
        const problem = problemOf(() => atDensity(T, rho));
        expect(problem).toMatchObject({ code: 'two phases', path: 'density_mol_m3', found: `${rho} mol/m3 at ${T} K` });
        expect(problem.wanted).toContain(`at most ${vapour} mol/m3`);
      }),
    );
  });

  test('(T, ρ): liquid from the saturated liquid on', () => {
    fc.assert(
      fc.property(anyColdTemperature, above, (T, more) => {
        const { liquid, p } = saturation(T);
        for (const rho of [liquid, liquid * more]) {
          const problem = problemOf(() => atDensity(T, rho));
          expect(problem).toMatchObject({ code: 'liquid', path: 'density_mol_m3' });
          expect(problem.wanted).toContain(`at most ${p} Pa absolute`);
        }
      }),
    );
  });

  test('(p, s): two phases between the saturated entropies, liquid below both', () => {
    fc.assert(
      fc.property(anyColdTemperature, evenly(-0.2, 1 - 1e-6), (T, share) => {
        fc.pre(T > 64.01 && Math.abs(share) > 1e-6);
        const { s } = mixed(T, share);
        const { p } = saturation(T);
        const problem = problemOf(() => by({ pressure: absolute(p, 'Pa'), entropy_J_molK: s }));
        expect(problem).toMatchObject({
          code: share < 0 ? 'liquid' : 'two phases',
          path: 'entropy_J_molK',
          found: `${s} J/(mol K) at ${p} Pa absolute`,
        });
        const [least] = /-?\d+(\.\d+)?/.exec(problem.wanted) ?? [];
        expect(relativeError(Number(least), mixed(T, 1).s)).toBeLessThanOrEqual(1e-8);
      }),
    );
  });

  test('(p, s): however far below, it is liquid', () => {
    for (const p of [20_000, 1e5, 3e6, 3.39e6]) {
      for (const entropy_J_molK of [50, 0, -1e4]) {
        expect(problemOf(() => by({ pressure: absolute(p, 'Pa'), entropy_J_molK })).code).toBe('liquid');
      }
    }
  });

  test('(p, s) and (ρ, u): a hair below saturation is below it, rounding is not', () => {
    for (const T of [65, 80, 100, 120]) {
      const { pressure, entropy_J_molK, density_mol_m3, internalEnergy_J_mol } = at(T, saturation(T).p);
      const hair = 1 - 1e-11;
      expect(namesLiquid(problemOf(() => by({ pressure, entropy_J_molK: entropy_J_molK * hair })))).toBe(true);
      expect(
        namesLiquid(problemOf(() => by({ density_mol_m3, internalEnergy_J_mol: internalEnergy_J_mol * hair }))),
      ).toBe(true);
    }
  });

  test('(p, s): above the critical pressure, colder than the critical temperature', () => {
    const { entropy_J_molK } = at(T_CRITICAL, 5e6);
    const problem = problemOf(() => by({ pressure: absolute(5, 'MPa'), entropy_J_molK: entropy_J_molK - 0.01 }));
    expect(problem.code).toBe('liquid');
  });

  test('(ρ, u): two phases, at densities below and above the critical one', () => {
    fc.assert(
      fc.property(anyColdTemperature, evenly(1e-3, 1 - 1e-3), (T, share) => {
        fc.pre(T < 126);
        const { rho, u } = mixed(T, share);
        const problem = problemOf(() => by({ density_mol_m3: rho, internalEnergy_J_mol: u }));
        expect(problem).toMatchObject({
          code: 'two phases',
          path: 'internalEnergy_J_mol',
          found: `${u} J/mol at ${rho} mol/m3`,
        });
      }),
    );
  });

  test('(ρ, u): liquid, denser than when saturated at its temperature', () => {
    fc.assert(
      fc.property(anyColdTemperature, evenly(1e-3, 0.1), (T, denser) => {
        const rho = saturation(T).liquid * (1 + denser);
        const { u_J_mol } = span2000(T, rho);
        expect(problemOf(() => by({ density_mol_m3: rho, internalEnergy_J_mol: u_J_mol }))).toMatchObject({
          code: 'liquid',
          path: 'internalEnergy_J_mol',
        });
      }),
    );
  });

  test('(ρ, u): a density beyond every state is refused as such', () => {
    for (const density_mol_m3 of [1e5, 1e9, Number.MAX_VALUE]) {
      expect(problemOf(() => by({ density_mol_m3, internalEnergy_J_mol: 5000 }))).toMatchObject({
        code: 'outside the model',
        path: 'density_mol_m3',
      });
    }
  });
});

describe('never a wrong branch', () => {
  test('below the critical temperature no density above that of saturated vapour is answered', () => {
    // Pressures from far below saturation to far above, densities from vapour to compressed liquid.
    fc.assert(
      fc.property(anyColdTemperature, evenly(-12, 5), (T, x) => {
        const { p, vapour } = saturation(T);
        const tries = [() => at(T, Math.min(p * Math.exp(x), 200e6)), () => atDensity(T, vapour * Math.exp(x))];
        for (const call of tries) {
          const answer = attempt(call);
          if (isState(answer)) {
            expect(x).toBeLessThanOrEqual(0);
            // 1e-13 of the pressure counts as saturation; near the critical point it moves the density by more.
            expect(answer.density_mol_m3 / vapour).toBeLessThanOrEqual(1 + 1e-8);
            expect(answer.dpdrho_Pa_m3_mol).toBeGreaterThan(0);
          } else {
            expect(x).toBeGreaterThan(0);
            expect(['liquid', 'two phases']).toContain(answer);
          }
        }
      }),
      { numRuns: 1000 },
    );
  });

  test('what (p, s) and (ρ, u) answer is gas: above the critical temperature or no denser than saturated vapour', () => {
    let answered = 0;
    fc.assert(
      fc.property(evenly(0, 17), evenly(60, 250), evenly(0, 10.6), evenly(-4000, 10_000), (lnp, s, lnrho, u) => {
        const tries = [
          () => by({ pressure: absolute(Math.exp(lnp), 'Pa'), entropy_J_molK: s }),
          () => by({ density_mol_m3: Math.exp(lnrho), internalEnergy_J_mol: u }),
        ];
        for (const call of tries) {
          const answer = attempt(call);
          if (!isState(answer)) continue;
          answered += 1;
          const T = answer.temperature.kelvins;
          if (T >= T_CRITICAL) continue;
          expect(answer.density_mol_m3).toBeLessThanOrEqual(saturation(T).vapour * (1 + 1e-8));
        }
      }),
      { numRuns: 1000 },
    );
    expect(answered).toBeGreaterThan(500);
  });
});

function attempt(call: () => GasState): GasState | string {
  try {
    return call();
  } catch (error) {
    if (!isFault(error)) throw error;
    return error.problems[0].code;
  }
}

function isState(answer: GasState | string): answer is GasState {
  return typeof answer !== 'string';
}

describe('at saturation itself', () => {
  /** The next double above a positive one. */
  const next = (x: number): number => x * (1 + Number.EPSILON);

  test('vapour is answered at the saturation pressure, and one rounding above it', () => {
    for (let T = 64; T < T_CRITICAL - 1e-3; T += 0.1) {
      const { p, vapour } = saturation(T);
      for (const pressure of [p, next(p)]) {
        expect(relativeError(at(T, pressure).density_mol_m3, vapour)).toBeLessThanOrEqual(1e-11);
      }
      expect(problemOf(() => at(T, p * (1 + 1e-12))).code).toBe('liquid');
    }
  });

  test('vapour is answered at its saturated density, and one rounding above it', () => {
    for (let T = 64; T < T_CRITICAL - 1e-3; T += 0.1) {
      const { p, vapour } = saturation(T);
      for (const rho of [vapour, next(vapour)]) {
        expect(relativeError(atDensity(T, rho).pressure.pascals, p)).toBeLessThanOrEqual(1e-13);
      }
      expect(problemOf(() => atDensity(T, vapour * (1 + 1e-11))).code).toBe('two phases');
    }
  });

  test('the saturated vapour is found again from pressure and entropy, and from density and energy', () => {
    for (let T = 64; T < T_CRITICAL - 1e-3; T += 0.5) {
      const state = at(T, saturation(T).p);
      const { pressure, entropy_J_molK, density_mol_m3, internalEnergy_J_mol } = state;
      expect(relativeError(by({ pressure, entropy_J_molK }).temperature.kelvins, T)).toBeLessThanOrEqual(1e-13);
      expect(relativeError(by({ density_mol_m3, internalEnergy_J_mol }).temperature.kelvins, T)).toBeLessThanOrEqual(
        1e-13,
      );
    }
  });
});

describe('the last tenth of a millikelvin below the critical temperature', () => {
  const close = Array.from({ length: 100 }, (_, i) => T_CRITICAL - 10 ** (-4 - i / 10)).filter((T) => T < T_CRITICAL);
  const finite = (state: GasState): boolean => Object.values(OF_STATE).every((of) => Number.isFinite(of(state)));

  test('is answered in full or refused by name', () => {
    const outcomes = new Set<string>();
    for (const T of close) {
      for (const call of [
        () => at(T, 1e5),
        () => at(T, 3.3e6),
        () => at(T, 3.3957e6),
        () => at(T, 50e6),
        () => atDensity(T, 100),
        () => atDensity(T, 11_000),
        () => atDensity(T, 11_183),
        () => atDensity(T, 15_000),
      ]) {
        const answer = attempt(call);
        outcomes.add(isState(answer) ? 'answered' : answer);
        if (isState(answer)) {
          expect(finite(answer)).toBe(true);
          expect(answer.density_mol_m3).toBeLessThan(11_184);
        }
      }
    }
    expect([...outcomes].sort()).toEqual(['answered', 'liquid', 'two phases']);
  });

  const critical = at(T_CRITICAL, 3.3958e6);
  const coldest = saturation(T_CRITICAL - 1e-4).p;
  const band = Array.from({ length: 21 }, (_, i) => coldest + ((3_395_801 - coldest) * i) / 20);

  test('the 30 Pa up to the critical pressure are gas, liquid or two phases, each where it is', () => {
    expect(band[20] ?? 0).toBeGreaterThan(coldest + 10);
    for (const T of [T_CRITICAL, ...close.filter((_, i) => i % 4 === 0)]) {
      for (const p of band) {
        const answer = attempt(() => at(T, p));
        const gas = T === T_CRITICAL || p <= saturation(T).p * (1 + 1e-13);
        if (!gas) expect(answer).toBe('liquid');
        else if (!isState(answer)) throw new Error(`${p} Pa at ${T} K: ${answer}`);
        else expect(relativeError(span2000(T, answer.density_mol_m3).p_Pa, p)).toBeLessThanOrEqual(1e-12);
      }
    }
  });

  // The isotherm is so flat there that rounding leads the solver astray.
  test('the gas is answered however near to saturation', () => {
    const top = span2000(T_CRITICAL, SPAN_2000_JSON.reducing.rho_mol_m3_coolprop).p_Pa;
    for (const T of [T_CRITICAL, ...close]) {
      const saturated = T === T_CRITICAL ? top : saturation(T).p;
      for (let k = 8; k <= 15; k += 0.5) {
        const p = saturated * (1 - 10 ** -k);
        expect(relativeError(span2000(T, at(T, p).density_mol_m3).p_Pa, p)).toBeLessThanOrEqual(1e-12);
      }
    }
  });

  test('gas and liquid of these pressures are told apart by their entropy too', () => {
    for (const p of band) {
      const pressure = absolute(p, 'Pa');
      const warm = at(126.5, p);
      expect(
        relativeError(by({ pressure, entropy_J_molK: warm.entropy_J_molK }).temperature.kelvins, 126.5),
      ).toBeLessThanOrEqual(1e-12);
      expect(problemOf(() => by({ pressure, entropy_J_molK: critical.entropy_J_molK - 5 })).code).toBe('liquid');
    }
  });

  test('saturation is answered, and never beyond the critical point', () => {
    for (const T of close) {
      const { liquid, vapour, p } = saturation(T);
      expect(liquid).toBeGreaterThan(vapour);
      expect(p).toBeLessThan(3_395_801);
      expect(relativeError(span2000(T, vapour).p_Pa, p)).toBeLessThanOrEqual(1e-13);
      expect(relativeError(span2000(T, liquid).p_Pa, p)).toBeLessThanOrEqual(1e-12);
      // Just inside both it is two phases, just outside it is not.
      expect(attempt(() => atDensity(T, vapour * (1 + 1e-11)))).toBe('two phases');
      expect(attempt(() => atDensity(T, liquid))).toBe('liquid');
      expect(isState(attempt(() => atDensity(T, vapour)))).toBe(true);
    }
  });

  test('at the critical temperature itself every pressure is answered', () => {
    for (const p of [1, 1e5, 3.3e6, 3.3957e6, 3.3958e6, 3.396e6, 5e6, 200e6]) {
      const state = at(T_CRITICAL, p);
      expect(finite(state)).toBe(true);
      expect(relativeError(span2000(T_CRITICAL, state.density_mol_m3).p_Pa, p)).toBeLessThanOrEqual(1e-13);
    }
  });

  test('there is no saturation from the critical temperature on', () => {
    for (const T of [T_CRITICAL, 126.2, 300]) {
      expect(problemOf(() => saturation(T))).toMatchObject({
        code: 'no saturation',
        path: 'temperature',
        found: `${T} K`,
        wanted: 'a temperature at which the model has liquid and vapour, below 126.192 K',
      });
    }
    for (const T of [63.99, 1000.1]) expect(problemOf(() => saturation(T)).code).toBe('outside the model');
  });
});
