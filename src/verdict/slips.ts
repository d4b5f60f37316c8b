import { collect, filled, type Problem } from '../basis/fault.js';
import { needCode, ownField, ownText } from '../basis/own-words.js';
import { SLIP, type SlipCode } from '../basis/words.js';
import { gaugeOf, wrongKind, type GaugePressure, type Temperature } from '../quantity/kind.js';
import { gauge, pressureDifference } from '../quantity/pressure.js';
import { rounded, valueIn } from '../quantity/step.js';
import { temperature } from '../quantity/temperature.js';
import type { PressureUnit, TemperatureUnit } from '../quantity/unit.js';
import { notCovered } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import { shown, type Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { checkedMeasured } from './budget.js';
import { cumulative, quantile } from './distribution.js';
import { sidesOf, sumsOf } from './sides.js';
import { checkedReading, judged, type Verdict } from './judge.js';

// Readings that only make sense in another unit or basis. The number is what somebody saw; unit and basis are what somebody
// said of it. Nothing is corrected here: a slip is shown, and people look at the gauge again.

/** What was stated otherwise than the instrument showed it. */
export type SlipKind =
  | { readonly code: 'unit of pressure'; readonly stated: PressureUnit; readonly readAs: PressureUnit }
  | { readonly code: 'absolute stated as gauge' | 'gauge stated as absolute'; readonly unit: PressureUnit }
  | { readonly code: 'unit of temperature'; readonly stated: TemperatureUnit; readonly readAs: TemperatureUnit };

/** A slip, and the number as the instrument showed it. */
export type Slip = SlipKind & { readonly number: number };

/** What a reading would be if a number, or two, were meant otherwise. */
export interface SlipCandidate {
  /** One of them; a pressure and a temperature only where no single one lands in the band. */
  readonly slips: readonly [Slip] | readonly [Slip, Slip];
  readonly pressure: GaugePressure;
  readonly temperature: Temperature;
  /** What the reading would then say: `within`, or `gauge too coarse` beside a band without a mark. */
  readonly verdict: Verdict;
}

/** What is to be made of a reading before it is believed. */
export interface Slips {
  /**
   * `no reason to ask`: the reading lies in its band or not far from it. `slip possible`: it makes no sense or lies far off,
   * and the candidates land in the band. `no slip found`: none does. `no evidence`: it cannot be compared in any unit.
   */
  readonly outcome: 'no reason to ask' | 'slip possible' | 'no slip found' | 'no evidence';
  /** Nearest to its target first; empty unless a slip is possible. */
  readonly candidates: readonly SlipCandidate[];
  /** The reading as it stands; or why there is no answer to it, such as a temperature outside the gas model. */
  readonly asItStands: Verdict | { readonly outcome: 'no answer'; readonly problems: readonly Problem[] };
  /**
   * Whether this one reading could tell a gauge in kgf/cm2 from one in bar, which is 2 %: only where the whole band, so
   * mistaken, lands outside itself by more than the instruments explain. Not in question for gauges in other units, nor
   * without a band. Where it cannot be told here a round may tell it: see {@link together}.
   */
  readonly kgfFromBar: 'can be told' | 'cannot be told from bar' | 'not in question';
}

const PRESSURES: readonly PressureUnit[] = ['bar', 'MPa', 'psi', 'kgf/cm2', 'kPa'];
const TEMPERATURES: readonly TemperatureUnit[] = ['°C', '°F', 'K'];
/** To one side: what the instruments explain ends where they would err as much in 2.5 of 100 cases, as in `uncertainty`. */
const TAIL = 0.025;

/** A reading with a number meant otherwise. */
export interface Slipped {
  readonly slip: Slip;
  readonly reading: Reading;
}

/**
 * Every single slip of the pressure of a reading, as the gauge showed it; below vacuum it reads empty, and is none. A
 * correction that is in the reading is not carried over: it was found for the unit that was stated.
 *
 * @param most what the gauge can have shown at that accumulator: more was never read, whatever number was written down
 */
export function pressureSlips({ correctionIncluded, ...read }: Reading, most: GaugePressure): Slipped[] {
  const reading: Reading = {
    ...read,
    pressure: correctionIncluded ? shown({ ...read, correctionIncluded }) : read.pressure,
  };
  const { pressure, ambient, gaugeStep } = reading;
  const { step, unit } = gaugeStep;
  const found: Slipped[] = [];
  const said = valueIn(pressure, unit);
  for (const other of PRESSURES) {
    if (other === unit) continue;
    // The gauge is in another unit than was said, and so are its steps.
    const slip: Slip = { code: 'unit of pressure', number: said, stated: unit, readAs: other };
    found.push({ slip, reading: { ...reading, pressure: gauge(said, other), gaugeStep: { step, unit: other } } });
    // Or the gauge is in the unit said, and its number was written down in another one: then it can be read on that gauge.
    // This keeps a true loss of 2 % from being taken for a number in kgf/cm2. But a pressure that cannot have been there was
    // read in another unit, on a mark or not.
    const number = valueIn(pressure, other);
    const written = gauge(number, unit);
    if (isReadOn(written, reading) || (pressure.pascals > most.pascals && isWritten(number)))
      found.push({
        slip: { code: 'unit of pressure', number, stated: other, readAs: unit },
        reading: { ...reading, pressure: written },
      });
  }
  const [less, more] = [gaugeOf(pressure.pascals - ambient.pascals), gaugeOf(pressure.pascals + ambient.pascals)];
  found.push(
    { slip: { code: 'absolute stated as gauge', number: said, unit }, reading: { ...reading, pressure: less } },
    {
      slip: { code: 'gauge stated as absolute', number: valueIn(more, unit), unit },
      reading: { ...reading, pressure: more },
    },
  );
  return found;
}

/**
 * Whether a number can be read on a gauge: on a mark, or where a pointer between two marks is seen by eye, in halves and
 * fifths of a division (common practice, no source), both of which are tenths. What was converted from another unit by
 * calculation lies on none of them but by chance.
 */
function isReadOn(pressure: GaugePressure, { gaugeStep }: Reading): boolean {
  const seen = collect([], '', () => rounded(pressure, { ...tenth(gaugeStep), toward: 'nearest even' }).si);
  return seen === pressure.pascals;
}

/** Whether somebody can have written a number down: five digits are more than any gauge shows, and conversion leaves more. */
function isWritten(number: number): boolean {
  return Number(number.toPrecision(5)) === number;
}

function tenth({ step, unit }: Reading['gaugeStep']): Reading['gaugeStep'] {
  return { step: Number((step / 10).toPrecision(15)), unit };
}

/** Every single slip of the temperature of a reading that makes a temperature at all. */
export function temperatureSlips(reading: Reading): Slipped[] {
  return TEMPERATURES.flatMap((stated) =>
    TEMPERATURES.flatMap((readAs): Slipped[] => {
      if (stated === readAs) return [];
      const number = valueIn(reading.temperature, stated);
      const meant = collect([], '', () => temperature(number, readAs)); // none below absolute zero
      if (meant === undefined) return [];
      const slip: Slip = { code: 'unit of temperature', number, stated, readAs };
      return [{ slip, reading: { ...reading, temperature: meant } }];
    }),
  );
}

/**
 * Whether a reading only makes sense in another unit or basis: bar, MPa, psi, kgf/cm2, kPa; gauge, absolute; °C, °F, K. It
 * is asked only of a reading that makes no sense as it stands, reads empty, or lies outside the band by more than its
 * instruments explain (or, if they are not given, by more than a step of the gauge). Nothing is corrected: a candidate is
 * a reason to look at the gauge again, and a true loss may happen to look like one.
 *
 * A slip of the unit of pressure starts from the gauge's own unit, that of `gaugeStep`; or ends there, if the number can be
 * read on that gauge, on a mark or by eye between two, or if the pressure stated is above the allowable one or the scale.
 *
 * {@link check} and {@link assess} do not ask this: they answer to the reading that they are given. {@link workOrder} and the
 * report of a round do, and withhold gas on a candidate until the reading states `possibleSlip`; here that makes no difference.
 *
 * @param givenInstruments also tell a reading beyond the end of its scale, which makes no sense as it stands
 * @throws {@link Fault} for a faulty specification or reading, as {@link judge}, and for faulty instruments, as
 * {@link uncertainty}; but where the reading is sound and there is no answer to it, the result says so
 * @example
 * ```ts
 * const typed = { ...reading, pressure: gauge(152, 'bar'), temperature: temperature(104, '°C') };
 * const found = slips(spec, typed, instruments);
 * found.outcome; // => 'slip possible'
 * const [candidate] = found.candidates;
 * candidate?.slips; // => [{ code: 'unit of temperature', number: 104, stated: '°C', readAs: '°F' }]
 * candidate?.verdict.outcome; // => 'within'
 * ```
 */
export function slips(spec: Specification, reading: Reading, givenInstruments?: Instruments): Slips {
  needSpecification(spec);
  const checked = checkedReading(reading);
  const { fullScale } = checked;
  const own = { ...checked, fullScale: undefined } as unknown as Reading;
  const instruments =
    givenInstruments === undefined ? undefined : checkedMeasured(spec, own, givenInstruments).instruments;
  const scale = instruments === undefined ? fullScale : instruments.gauge.fullScale;
  // Judged as if the scale had no end: that a reading lies beyond it is what is to be explained.
  const beyondScale = scale !== undefined && shown(own).pascals > scale.pascals;

  const { asItStands, farOff } = standing(spec, own, instruments, beyondScale);
  const kgfFromBar = kgfOf(spec, own, instruments, asItStands);
  if (hasNoEvidence(spec, own)) return { outcome: 'no evidence', candidates: [], asItStands, kgfFromBar };
  if (!farOff) return { outcome: 'no reason to ask', candidates: [], asItStands, kgfFromBar };

  const [pressures, temperatures] = [pressureSlips(own, mostShown(spec, scale)), temperatureSlips(own)];
  let candidates = landing(
    spec,
    [...pressures, ...temperatures].map(({ slip, reading }) => ({ slips: [slip] as const, reading })),
  );
  if (candidates.length === 0) {
    const pairs = pressures.flatMap((one) =>
      temperatures.map((other) => ({
        slips: [one.slip, other.slip] as const,
        reading: { ...one.reading, temperature: other.reading.temperature },
      })),
    );
    candidates = landing(spec, pairs);
  }
  const outcome = candidates.length === 0 ? 'no slip found' : 'slip possible';
  return { outcome, candidates, asItStands, kgfFromBar };
}

/** The most that a gauge can have shown: the end of its scale, or what the accumulator may hold. */
function mostShown({ allowable }: Specification, scale: GaugePressure | undefined): GaugePressure {
  return scale !== undefined && scale.pascals < allowable.pascals ? scale : allowable;
}

interface Standing {
  readonly asItStands: Slips['asItStands'];
  readonly farOff: boolean;
}

function standing(
  spec: Specification,
  reading: Reading,
  instruments: Instruments | undefined,
  beyondScale: boolean,
): Standing {
  const problems: Problem[] = [];
  const found = collect(problems, '', (): Standing => {
    const asItStands = judged(spec, reading);
    return { asItStands, farOff: beyondScale || isFarOff(spec, reading, instruments, asItStands) };
  });
  return found ?? { asItStands: { outcome: 'no answer', problems }, farOff: true };
}

function isFarOff(
  spec: Specification,
  reading: Reading,
  instruments: Instruments | undefined,
  verdict: Verdict,
): boolean {
  if (verdict.outcome === 'gas side empty') return true;
  if (verdict.outcome !== 'undercharged' && verdict.outcome !== 'overcharged') return false;
  if (instruments === undefined || notCovered(instruments.gauge, reading) !== undefined)
    return verdict.insideBandBy.pascals < -stepOf(reading);
  const sides = sidesOf(spec, reading, instruments);
  const sums = sumsOf(sides, instruments.readings);
  return cumulative(sums.lower, sides.lower.inside) <= TAIL || cumulative(sums.upper, sides.upper.inside) <= TAIL;
}

function stepOf({ gaugeStep }: Reading): number {
  return pressureDifference(gaugeStep.step, gaugeStep.unit).pascals;
}

/** Evidence does not depend on the temperature: at the reference temperature there always is an answer about it. */
function hasNoEvidence(spec: Specification, reading: Reading): boolean {
  const verdict = collect([], '', () => judged(spec, { ...reading, temperature: spec.referenceTemperature }));
  return verdict?.outcome === 'gas not known' || verdict?.outcome === 'not comparable';
}

function landing(
  spec: Specification,
  meant: readonly { readonly slips: SlipCandidate['slips']; readonly reading: Reading }[],
): SlipCandidate[] {
  const found = meant.flatMap(({ slips, reading }) => {
    const verdict = collect([], '', () => judged(spec, reading)); // no answer is no candidate
    if (verdict?.outcome !== 'within' && verdict?.outcome !== 'gauge too coarse') return [];
    const { pressure, temperature } = reading;
    const off = Math.abs(pressure.pascals - verdict.target.pascals);
    return [{ off, candidate: { slips, pressure, temperature, verdict } }];
  });
  return found.sort((a, b) => a.off - b.off).map(({ candidate }) => candidate);
}

/** Pressure of one kgf/cm2 over that of one bar: 0.980665 exactly (kgf of 9.80665 N, CGPM 1901). */
export function kgfOverBar(): number {
  return gauge(1, 'kgf/cm2').pascals / gauge(1, 'bar').pascals;
}

function kgfOf(
  spec: Specification,
  reading: Reading,
  instruments: Instruments | undefined,
  asItStands: Slips['asItStands'],
): Slips['kgfFromBar'] {
  const { unit } = reading.gaugeStep;
  if (asItStands.outcome === 'no answer' || (unit !== 'bar' && unit !== 'kgf/cm2')) return 'not in question';
  const { lower, upper } = asItStands.band;
  let [low, high] = [stepOf(reading), stepOf(reading)];
  if (instruments !== undefined && notCovered(instruments.gauge, reading) === undefined) {
    // Where a certificate corrects the temperature out of the gas model there is no band either.
    const sums = collect([], '', () => sumsOf(sidesOf(spec, reading, instruments), instruments.readings));
    if (sums === undefined) return 'not in question';
    [low, high] = [quantile(sums.lower, 1 - TAIL), quantile(sums.upper, 1 - TAIL)];
  }
  // A number in kgf/cm2 that is said to be in bar is a pressure 2 % too high; the other way about, too low.
  const told =
    unit === 'bar'
      ? lower.pascals / kgfOverBar() > upper.pascals + high
      : upper.pascals * kgfOverBar() < lower.pascals - low;
  return told ? 'can be told' : 'cannot be told from bar';
}

/**
 * A slip in words.
 *
 * @param own words in place of the library's
 * @throws {@link Fault} `wrong kind` for anything but a slip; `unknown word` for a code that there is not; `words not
 * sound` for words that are no texts, or for a name in braces that the slip has no value for
 * @example
 * ```ts
 * slipText({ code: 'unit of pressure', number: 14.1, stated: 'bar', readAs: 'MPa' });
 * // => 'the number 14.1 was stated in bar; the gauge may show MPa'
 * ```
 */
export function slipText(slip: Slip, own?: Readonly<Partial<Record<SlipCode, string>>>): string {
  if (!isObject(slip)) wrongKind('slip', slip, 'slip');
  const { code, ...values } = slip;
  needCode(SLIP, code, 'slip.code');
  const texts = Object.entries<unknown>(values).map(([name, value]) => {
    if (typeof value !== 'string' && typeof value !== 'number') wrongKind('text or number', value, 'slip');
    return [name, String(value)] as const;
  });
  return filled(ownText(ownField(own, code, 'own'), 'own') ?? SLIP[code], Object.fromEntries(texts));
}
