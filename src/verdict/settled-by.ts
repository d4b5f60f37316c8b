import { filled } from '../basis/fault.js';
import { ownField, ownText } from '../basis/own-words.js';
import { SETTLED, type SettledBy } from '../basis/words.js';
import { wrongKind, type PressureDifference, type TemperatureDifference } from '../quantity/kind.js';
import { checkStep, finer, needDivision, write, type Division } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import { isObject } from '../target/table.js';
import type { Settling } from './what-settles.js';

/** One way to settle a reading that leaves a decision open. */
export interface SettlingWay {
  readonly code: SettledBy;
  readonly text: string;
}

/**
 * What would settle an inconclusive reading, in words: each way by itself, all else as it is, or that none does alone. The
 * limits are rounded down, so that an instrument bought by the sentence does what it says.
 *
 * @param settling what {@link decide} or {@link assess} says of an inconclusive reading
 * @param gaugeStep step and unit of the gauge that was read: limits of a gauge are said in its unit
 * @param own words in place of the library's
 * @throws {@link Fault} `wrong kind`, `unchecked copy` for what is no such thing; `not a step`, `unknown unit` for the step;
 * `words not sound` for words that are no texts, or for a name in braces that the way has no value for
 * @example
 * ```ts
 * const rule = { acceptance: 'guarded acceptance', risk: { below: 0.02, above: 0.05 } } as const;
 * const close = { ...reading, pressure: gauge(153, 'bar') };
 * const decision = decide(spec, close, instruments, rule);
 * const settling = 'settling' in decision ? decision.settling : undefined;
 * if (settling) settledBy(settling, close.gaugeStep)[0]?.text; // => 'no single change: better instruments together, or gas brought to the target'
 * ```
 */
export function settledBy(
  settling: Settling,
  gaugeStep: Division<PressureUnit>,
  own?: Readonly<Partial<Record<SettledBy, string>>>,
): readonly SettlingWay[] {
  if (!isObject(settling)) wrongKind('what would settle a reading', settling, 'settling');
  const { gaugeLimit, accuracyClass, thermometerLimit, shellToGas, readings } = settling;
  const { step, unit } = needDivision(gaugeStep, 'gaugeStep');
  checkStep(step, 'gaugeStep.step');
  const pressure = (one: PressureDifference): string => bare(write(one, { ...finer({ step, unit }), toward: 'down' }));
  const kelvins = (one: TemperatureDifference): string => bare(write(one, { step: 0.1, unit: 'K', toward: 'down' }));
  const say = (code: SettledBy, values: Readonly<Record<string, string>>): SettlingWay => ({
    code,
    text: filled(ownText(ownField(own, code, 'own'), 'own') ?? SETTLED[code], values),
  });
  const ways = [
    ...(typeof gaugeLimit === 'string' ? [] : [say('better gauge', { limit: pressure(gaugeLimit) })]),
    ...(typeof accuracyClass === 'number' ? [say('finer class', { class: String(accuracyClass) })] : []),
    ...(typeof thermometerLimit === 'string' ? [] : [say('better thermometer', { limit: kelvins(thermometerLimit) })]),
    ...(typeof shellToGas === 'string' ? [] : [say('more settling', { limit: kelvins(shellToGas) })]),
    ...(typeof readings === 'number' ? [say('repeats', { readings: String(readings) })] : []),
  ];
  return ways.length === 0 ? [say('nothing alone', {})] : ways;
}

function bare(difference: string): string {
  return difference.replace(/ difference$/, '');
}
