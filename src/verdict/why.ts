import { fill } from '../basis/fault.js';
import { listed, type Bound } from '../basis/listed.js';
import { needCode, ownField, ownText } from '../basis/own-words.js';
import { CORRECTED, EXPLAINED, REASON, type Reason, type Words } from '../basis/words.js';
import {
  gaugeOf,
  pressureDifferenceOf,
  wrongKind,
  type GaugePressure,
  type PressureDifference,
} from '../quantity/kind.js';
import { finer, sayable, write, type Division, type Toward } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { shown, type Reading } from '../reading/reading.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { targetAt } from '../target/target.js';
import { bandAbout, stepFor, widthOf, type Band } from './band.js';
import { explainingOf } from './compare.js';
import { checkedReading } from './judge.js';

/**
 * The reasons of a verdict, or of a charge or stop that is withheld, in words: with the numbers of its specification and
 * reading, pressures in the unit of the gauge.
 *
 * @param result what {@link judge}, {@link charge} or {@link check} gave for this specification and reading
 * @param words of one's own, where the library's are not wanted
 * @throws {@link Fault} as {@link judge}; `wrong kind` for a result that has no reasons, `too long` for one of more than a
 * hundred, `unknown word` for a reason that there is not; `words not sound` for words that are no texts, or for a
 * name in braces that no text of the library has
 * @example
 * ```ts
 * why(spec, reading, judge(spec, reading)).split(':')[0]; // => 'undercharged by 9.6 bar'
 * const words = { reasons: { 'below the lower limit': '{off} zu wenig' }, explained: 'richtig bei {explaining}' };
 * why(spec, reading, judge(spec, reading), words); // => '9.6 bar zu wenig; richtig bei 24.7 °C'
 * ```
 */
export function why(
  spec: Specification,
  reading: Reading,
  result: { readonly because: readonly Reason[] },
  words?: Words,
): string {
  needSpecification(spec);
  return inWords(spec, checkedReading(reading), reasonsOf(result), words);
}

function inWords(spec: Specification, reading: Reading, because: readonly Reason[], words: Words | undefined): string {
  const target = gaugeOf(targetAt(spec, reading));
  const band = bandAbout(spec, reading, target.pascals, reading);
  const { gaugeStep, pressure, systemPressure, temperature, correctionIncluded, fullScale } = reading;
  const as = resolving(gaugeStep, band);
  const written = (pressure: GaugePressure | PressureDifference, toward?: Toward): string =>
    write<GaugePressure | PressureDifference>(pressure, { ...sayable(pressure, as), ...(toward && { toward }) });
  const explaining = explainingOf(spec, reading);
  const needed = stepFor(band, gaugeStep.unit);
  const values: Readonly<Record<string, () => string>> = {
    reading: () =>
      isCorrected(correctionIncluded) ? say(own(words, 'corrected', 'words') ?? CORRECTED) : written(pressure),
    corrected: () => written(pressure),
    shown: () => written(shown(reading)),
    fullScale: () => (fullScale === undefined ? 'not known' : written(fullScale)),
    target: () => written(target),
    lower: () => written(band.lower, 'up'),
    upper: () => written(band.upper, 'down'),
    off: () => withoutBasis(written(pressureDifferenceOf(Math.abs(pressure.pascals - target.pascals)))),
    temperature: () => write(temperature, { step: 0.1, unit: '°C' }),
    explaining: () => (explaining === 'none in range' ? explaining : write(explaining, { step: 0.1, unit: '°C' })),
    system: () => (systemPressure === undefined ? 'not known' : written(systemPressure)),
    rested: () => String(reading.minutesAtRest),
    minutesNeeded: () => String(spec.settling.minutes),
    step: () => stepText(gaugeStep),
    stepNeeded: () => stepText(needed),
    stop: () => written(gaugeOf(target.pascals + spec.settling.allowance.pascals)),
    allowable: () => written(spec.allowable),
  };
  const say = (text: string): string =>
    fill(text, (name) => (Object.hasOwn(values, name) ? values[name]?.() : undefined));
  const own = (from: unknown, field: string, path: string): string | undefined =>
    ownText(ownField(from, field, path), path);
  const reasons = ownField(words, 'reasons', 'words');
  const said = because.map((reason) => say(own(reasons, reason, 'words.reasons') ?? REASON[reason]));
  if (because.some((reason) => EXPLICABLE.includes(reason)) && explaining !== 'none in range')
    said.push(say(own(words, 'explained', 'words') ?? EXPLAINED));
  return said.join('; ');
}

/** A result has one or two. */
const REASONS: Bound = { most: 100, what: 'reasons' };

/** The reasons of a result, each one of the library's. */
function reasonsOf(result: { readonly because: readonly Reason[] }): readonly Reason[] {
  const because: unknown = result?.because;
  if (!Array.isArray(because)) return wrongKind('result with its reasons', result, 'result');
  return listed(because as readonly Reason[], REASONS, 'result.because', (reason, i) => {
    needCode(REASON, reason, `result.because[${i}]`);
    return reason;
  });
}

/** A correction of zero is none that anybody sees. */
function isCorrected(included: Reading['correctionIncluded']): boolean {
  return included !== undefined && included.pascals !== 0;
}

/** Where another temperature of the gas may be the explanation. */
const EXPLICABLE: readonly Reason[] = ['below the lower limit', 'above the upper limit'];

function withoutBasis(difference: string): string {
  return difference.replace(/ difference$/, '');
}

function stepText({ step, unit }: Division<PressureUnit>): string {
  return `${step} ${unit}`;
}

/** A step for the numbers in sentences: finer than the gauge's, and fine enough to tell the limits apart. */
function resolving(gaugeStep: Division<PressureUnit>, band: Band): Division<PressureUnit> {
  const { unit } = gaugeStep;
  const [one, other] = [finer(gaugeStep), finer({ step: widthOf(band, unit), unit })];
  return one.step < other.step ? one : other;
}
