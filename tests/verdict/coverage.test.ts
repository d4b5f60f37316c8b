// What the stated intervals and risks are worth, by simulating the work itself. Every error is drawn of what causes it, the
// true target is that of the true gas under the true conditions, and what is shown is rounded to the marks. Nothing of the
// budget or of its sensitivities is used but its result.
import {
  absolute,
  nitrogen,
  specification,
  target,
  type PressureDifference,
  type Reading,
  type Specification,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import type { Instruments } from '../../src/reading/instruments.js';
import { uncertainty, type Budget } from '../../src/verdict/budget.js';
import { decide } from '../../src/verdict/decide.js';
import type { Rule } from '../../src/verdict/rule.js';
import { globalRisks, type Prior } from '../../src/verdict/global-risk.js';
import { bar, barOf, celsius, GIVEN, pointOf, readingWith, specWith } from '../support/accumulator.js';
import { CONTACT, DIAL, inBar, inK, instrumentsWith } from '../support/instruments.js';

const TRIALS = 200_000;
/** For risks, each held within an error that follows from the count. */
const FEWER = 100_000;
const PATIENCE = 300_000;

/** A generator of its own: Park and Miller's, Commun. ACM 31 (1988) 1192. */
function random(seed: number): () => number {
  let state = seed;
  return () => {
    state = (state * 48_271) % 2_147_483_647;
    return state / 2_147_483_647;
  };
}

interface Dice {
  /** Uniform from −half to half. */
  readonly within: (half: number) => number;
  readonly normal: (sigma: number) => number;
}

function dice(seed: number): Dice {
  const next = random(seed);
  return {
    within: (half) => (2 * next() - 1) * half,
    // Box and Muller, Ann. Math. Statist. 29 (1958) 610.
    normal: (sigma) => sigma * Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next()),
  };
}

const rounded = (value: number, step: number): number => (step === 0 ? value : Math.round(value / step) * step);
const bars = (difference: PressureDifference): number => difference.pascals / 1e5;

/** What is true of one accumulator in one hour: bar gauge, and what the instruments show of it. */
interface Trial {
  readonly target: number;
  readonly limits: readonly [lower: number, upper: number];
  readonly gas_C: number;
  readonly ambient_Pa: number;
  /** Shows a true pressure. */
  readonly show: (pressure: number) => number;
  readonly shown_C: number;
  readonly shownAmbient_Pa: number;
}

const { pvt, density } = nitrogen['~kernel'];

/** Draws the errors of everything, for a specification at 140 bar and 20 °C ± 2 bar. */
function trial(roll: Dice, instruments: Instruments, spec: Specification, around_C: number): Trial {
  const { gauge, thermometer, barometer, printed, vessel, modelErrorCorrelation: r, readings } = instruments;
  if (gauge.type !== 'dial gauge' || gauge.temperature === 'not known' || printed.pressure === 'as the table states')
    throw new Error('not simulated');
  const gas_C = around_C + roll.within(5);
  const T = gas_C + 273.15;
  const ambient_Pa = 101_325 + roll.within(3000);

  // What the maker meant, of which the manual prints something rounded.
  const stated_Pa = roll.within(printed.pressure.pascals / 2);
  const T_ref = 293.15 + roll.within(printed.temperature.kelvins / 2);
  const stated_amb = 101_325 + roll.within(printed.ambientLimit.pascals);
  // The gas itself: densities that the equation has wrong by a relative error at either end, correlated.
  const one = roll.normal(1);
  const other = r * one + Math.sqrt(1 - r * r) * roll.normal(1);
  const [e_ref, e_T] = [1e-4 * one, 1e-4 * other];
  const alpha =
    vessel.treated === 'corrected'
      ? vessel.linearExpansion_per_K + roll.within(vessel.limit_per_K)
      : roll.within(vessel.linearExpansion_per_K + vessel.limit_per_K);
  const grown = 1 + 3 * alpha * (T - T_ref);
  const gaugeAt = (p_ref: number): number => {
    const rho = (density(T_ref, p_ref + stated_Pa + stated_amb) * (1 + e_ref)) / grown;
    const out = { p_Pa: 0, dpdrho_T: 0, dpdT_rho: 0 };
    pvt(T, rho / (1 + e_T), out);
    return (out.p_Pa - ambient_Pa) / 1e5;
  };
  const wanted = gaugeAt(140e5);
  // The instruments.
  const span = bars({ ...barOf(0), pascals: gauge.fullScale.pascals });
  const { accuracy } = gauge;
  const ofGauge =
    'certificate' in accuracy
      ? roll.normal(bars(accuracy.certificate.expandedUncertainty) / accuracy.certificate.coverageFactor) -
        bars(accuracy.certificate.correction)
      : roll.within('limit' in accuracy ? bars(accuracy.limit) : (accuracy.accuracyClass / 100) * span);
  const warm = roll.within(0.0004 * span * Math.abs(gauge.temperature.kelvins - 293.15));
  if (!('limit' in thermometer.accuracy)) throw new Error('not simulated');
  const ofThermometer = roll.within(thermometer.accuracy.limit.kelvins) + roll.within(thermometer.shellToGas.kelvins);
  const mean = (show: () => number): number => {
    let sum = 0;
    for (let i = 0; i < readings; i += 1) sum += show();
    return sum / readings;
  };
  // Between several readings the truth has moved by up to a step, so that their roundings differ; what moved is known.
  const moved = (step: number): number => (readings > 1 ? roll.within(step / 2) : 0);
  const showing = (value: number, step: number): number => {
    const by = moved(step);
    return rounded(value + by, step) - by;
  };
  const show = (pressure: number): number => mean(() => showing(pressure + ofGauge + warm, STEP));
  const step_K = thermometer.step.kelvins;
  return {
    target: wanted,
    limits: limitsOf(spec, wanted, gaugeAt),
    gas_C,
    ambient_Pa,
    show,
    shown_C: mean(() => showing(gas_C + ofThermometer, step_K)),
    shownAmbient_Pa: ambient_Pa + roll.within(barometer.limit.pascals),
  };
}

/** The true limits: about the true target, or on the lines through the tolerance at the reference point. */
function limitsOf(
  { tolerance }: Specification,
  wanted: number,
  gaugeAt: (p_ref: number) => number,
): readonly [number, number] {
  if (!('plusMinus' in tolerance)) throw new Error('not simulated');
  const size = tolerance.plusMinus.pascals;
  return tolerance.applies === 'at the reference temperature'
    ? [gaugeAt(140e5 - size), gaugeAt(140e5 + size)]
    : [wanted - size / 1e5, wanted + size / 1e5];
}

const STEP = 0.5;

function readingOf(p_bar: number, t_C: number, ambient_Pa: number): Reading {
  return readingWith({
    pressure: bar(p_bar),
    temperature: celsius(t_C),
    ambient: absolute(ambient_Pa, 'Pa'),
    gaugeStep: { step: STEP, unit: 'bar' },
  });
}

function budgetAt(spec: Specification, reading: Reading, instruments: Instruments): Budget {
  const found = uncertainty(spec, reading, instruments);
  if (!('interval' in found)) throw new Error(found.because);
  return found;
}

const dial = { ...DIAL, temperature: celsius(25) };
const fine = { ...CONTACT, accuracy: { limit: inK(0.5) }, step: inK(0.1), shellToGas: inK(0.5) };

const SETS: readonly (readonly [string, Instruments])[] = [
  [
    'a gauge of class 2.5, a rectangle that outweighs the rest',
    instrumentsWith({ gauge: { ...dial, accuracy: { accuracyClass: 2.5 } }, thermometer: fine }),
  ],
  [
    'a shell far from its gas, and a coarse thermometer',
    instrumentsWith({
      gauge: { ...dial, accuracy: { accuracyClass: 0.25 } },
      thermometer: { ...CONTACT, accuracy: { limit: inK(3) }, step: inK(1), shellToGas: inK(5) },
    }),
  ],
  [
    'contributions alike',
    instrumentsWith({ gauge: dial, thermometer: { ...CONTACT, accuracy: { limit: inK(2) }, step: inK(1) } }),
  ],
  [
    'a certificate, a corrected vessel, a model that errs alike at both ends',
    instrumentsWith({
      gauge: {
        ...dial,
        accuracy: {
          certificate: {
            correction: barOf(0.7),
            expandedUncertainty: barOf(1.2),
            coverageFactor: 2,
            due: '2027-01-01',
          },
        },
      },
      vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 2e-6, treated: 'corrected' },
      modelErrorCorrelation: 0.9,
    }),
  ],
];

describe('the interval of 95 % holds the truth in 94.5 % to 95.5 % of the readings', () => {
  test.each(SETS)(
    '%s',
    (_, instruments) => {
      const spec = specWith();
      const roll = dice(20_260_314);
      // The half width hardly depends on what is shown, and not on the pressure: kept by temperature, to 0.1 K.
      const halves = new Map<number, { half: number; shift: number }>();
      let held = 0;
      for (let i = 0; i < TRIALS; i += 1) {
        const { target: wanted, show, shown_C, shownAmbient_Pa } = trial(roll, instruments, spec, 40);
        const truth = wanted + roll.within(4);
        const shown = show(truth);
        const reading = readingOf(shown, shown_C, shownAmbient_Pa);
        const byTarget = shown - target(spec, reading).pascals / 1e5;
        const key = Math.round(shown_C * 10);
        let known = halves.get(key);
        if (known === undefined) {
          const budget = budgetAt(spec, reading, instruments);
          // The corrections move the difference by a constant.
          const off = bars(budget.offTarget);
          known = { half: bars(budget.interval.upper) - off, shift: off - byTarget };
          halves.set(key, known);
        }
        if (Math.abs(byTarget + known.shift - (truth - wanted)) <= known.half) held += 1;
      }
      expect(halves.size).toBeGreaterThan(10);
      const rate = held / TRIALS;
      expect(rate).toBeGreaterThan(0.945);
      expect(rate).toBeLessThan(0.955);
    },
    PATIENCE,
  );

  test(
    'also of the mean of four readings between which the truth has moved',
    () => {
      const instruments = instrumentsWith({
        gauge: { ...dial, accuracy: { accuracyClass: 0.1 } },
        thermometer: { ...CONTACT, accuracy: { limit: inK(0.3) }, step: inK(2), shellToGas: inK(0.3) },
        readings: 4,
      });
      const spec = specWith();
      const roll = dice(4);
      let [held, sum] = [0, 0];
      const half = (() => {
        const budget = budgetAt(spec, readingOf(150, 40, 101_325), instruments);
        return bars(budget.interval.upper) - bars(budget.offTarget);
      })();
      for (let i = 0; i < TRIALS; i += 1) {
        const { target: wanted, show, shown_C, shownAmbient_Pa } = trial(roll, instruments, spec, 40);
        const shown = show(wanted);
        const off = shown - target(spec, readingOf(shown, shown_C, shownAmbient_Pa)).pascals / 1e5;
        sum += off;
        if (Math.abs(off) <= half) held += 1;
      }
      expect(Math.abs(sum / TRIALS)).toBeLessThan(0.01);
      expect(held / TRIALS).toBeGreaterThan(0.945);
      expect(held / TRIALS).toBeLessThan(0.955);
    },
    PATIENCE,
  );
});

const OUTCOMES = ['undercharged', 'inconclusive', 'within', 'inconclusive', 'overcharged'] as const;
type Outcome = (typeof OUTCOMES)[number];

/**
 * What is decided of a reading by its difference from the target: five regions, whose bounds are found from decisions alone
 * and kept by temperature. They hardly depend on the pressure of these gauges.
 */
function decider(spec: Specification, instruments: Instruments, rule: Rule, every_K: number) {
  const kept = new Map<number, readonly number[]>();
  const boundsAt = (shown_C: number): readonly number[] => {
    const there = target(spec, readingOf(150, shown_C, 101_325)).pascals / 1e5;
    const regionOf = (off: number): number => {
      const { outcome } = decide(spec, readingOf(there + off, shown_C, 101_325), instruments, rule);
      return outcome === 'inconclusive' ? (off < 0 ? 1 : 3) : OUTCOMES.indexOf(outcome as Outcome);
    };
    return [1, 2, 3, 4].map((region) => {
      let [low, high] = [-FAR, FAR];
      if (regionOf(low) !== 0 || regionOf(high) !== 4) throw new Error('not decided far outside');
      for (let i = 0; i < 17; i += 1) {
        const middle = (low + high) / 2;
        if (regionOf(middle) >= region) high = middle;
        else low = middle;
      }
      return high;
    });
  };
  return (off: number, shown_C: number): Outcome => {
    const key = Math.round(shown_C / every_K);
    const bounds = kept.get(key) ?? boundsAt(key * every_K);
    kept.set(key, bounds);
    return OUTCOMES[bounds.filter((bound) => off >= bound).length] ?? 'inconclusive';
  };
}

const FAR = 35;
/** Half width of a band that is wide enough for one limit not to feel the other. */
const WIDE = 12;

const offTarget = (spec: Specification, shown: number, { shown_C, shownAmbient_Pa }: Trial): number =>
  shown - target(spec, readingOf(shown, shown_C, shownAmbient_Pa)).pascals / 1e5;

describe('specific risk: with the truth on a limit, what a guarded acceptance accepts', () => {
  const wide = specWith({ tolerance: { plusMinus: barOf(WIDE), applies: 'at the measured temperature' } });
  const rule: Rule = { acceptance: 'guarded acceptance', risk: { below: 0.02, above: 0.1 } };
  const risks = [rule.risk.below, rule.risk.above] as const;

  function acceptedAtLimits(
    spec: Specification,
    instruments: Instruments,
    around_C: number,
    every_K: number,
  ): number[] {
    const decided = decider(spec, instruments, rule, every_K);
    const roll = dice(7);
    const accepted: [number, number] = [0, 0];
    for (let i = 0; i < FEWER; i += 1) {
      const drawn = trial(roll, instruments, spec, around_C);
      for (const side of [0, 1] as const)
        if (decided(offTarget(spec, drawn.show(drawn.limits[side]), drawn), drawn.shown_C) === 'within')
          accepted[side] += 1;
    }
    return accepted.map((count) => count / FEWER);
  }

  function expectRisks(rates: readonly number[]): void {
    risks.forEach((risk, side) => {
      const error = 4 * Math.sqrt((risk * (1 - risk)) / FEWER);
      const rate = rates[side] ?? Number.NaN;
      expect(rate).toBeLessThan(risk + error);
      // And no less either: the risk is the one that was asked for, not a smaller one.
      expect(rate).toBeGreaterThan(risk - error - 0.001);
    });
  }

  test.each(SETS.slice(0, 3))(
    '%s',
    (_, instruments) => expectRisks(acceptedAtLimits(wide, instruments, 40, 1)),
    PATIENCE,
  );

  test(
    'limits that follow lines of their own count as themselves, not as the target',
    () => {
      // The tolerance holds at 20 °C. Hot the band is wider, and its limits feel the thermometer differently.
      const applies = 'at the reference temperature';
      const spec = specification({
        ...GIVEN,
        precharge: pointOf(140, 20),
        tolerance: { plusMinus: barOf(WIDE), applies },
      });
      const instruments = instrumentsWith({
        gauge: { ...dial, accuracy: { accuracyClass: 0.1 } },
        thermometer: { ...CONTACT, accuracy: { limit: inK(1) }, step: inK(1), shellToGas: inK(4) },
      });
      expectRisks(acceptedAtLimits(spec, instruments, 65, 0.5));
    },
    PATIENCE,
  );
});

describe('global risks', () => {
  test(
    'of a population are those of its simulation',
    () => {
      const spec = specWith();
      const instruments = instrumentsWith({
        gauge: { ...dial, accuracy: { accuracyClass: 0.25 } },
        thermometer: { ...CONTACT, accuracy: { limit: inK(0.5) }, step: inK(0.5), shellToGas: inK(0.5) },
      });
      const rule: Rule = { acceptance: 'guarded both ways', risk: { below: 0.1, above: 0.2 } };
      const prior: Prior = { mean: inBar(-0.8), standard: inBar(1.5) };
      const found = globalRisks(spec, readingOf(152, 40, 101_325), instruments, rule, prior);
      if (!('conforming' in found)) throw new Error(found.because);
      const decided = decider(spec, instruments, rule, 0.5);
      const roll = dice(5);
      const counts = {
        conforming: 0,
        below: 0,
        above: 0,
        falselyRejected: 0,
        accepted: 0,
        rejected: 0,
        inconclusive: 0,
      };
      for (let i = 0; i < FEWER; i += 1) {
        const drawn = trial(roll, instruments, spec, 40);
        const truth = -0.8 + roll.normal(1.5);
        const outcome = decided(offTarget(spec, drawn.show(drawn.target + truth), drawn), drawn.shown_C);
        const conforms = Math.abs(truth) <= 2;
        if (conforms) counts.conforming += 1;
        if (outcome === 'inconclusive') counts.inconclusive += 1;
        else if (outcome === 'within') {
          counts.accepted += 1;
          if (truth < -2) counts.below += 1;
          if (truth > 2) counts.above += 1;
        } else {
          counts.rejected += 1;
          if (conforms) counts.falselyRejected += 1;
        }
      }
      const computed = { ...found, ...found.falselyAccepted };
      for (const [name, count] of Object.entries(counts)) {
        const share = computed[name as keyof typeof counts];
        const error = 4 * Math.sqrt((share * (1 - share)) / FEWER) + 2e-4;
        expect([name, Math.abs(count / FEWER - share) < error]).toEqual([name, true]);
      }
    },
    PATIENCE,
  );
});
