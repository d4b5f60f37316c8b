// What the uncertainty of a reading rests on, gathered from where a round states it: the instrument, the hour, the manual
// and the round. Where something is lacking there is no uncertainty, and what is lacking is said.
import { has } from '../basis/has.js';
import type { Lacking } from '../basis/words.js';
import type { DialGauge, DigitalGauge } from '../reading/gauge.js';
import type { Instruments } from '../reading/instruments.js';
import type { Rule } from '../verdict/rule.js';
import type { Manual } from './admit.js';
import type { Admitted } from './admit-reading.js';
import { dayOf } from './instruments.js';

/** How a round decides. */
export interface Deciding {
  readonly rule: Rule;
  /** Undefined where the round does not state it. */
  readonly modelErrorCorrelation: number | undefined;
}

/** The instruments of a reading as the core takes them, or what the round leaves out. */
export type Measuring = { readonly instruments: Instruments } | { readonly lacking: readonly Lacking[] };

/** Gathers what the uncertainty of a reading rests on. */
export function measuringOf({ used, hour, at }: Admitted, manual: Manual, deciding: Deciding): Measuring {
  const { pressure, temperature } = used.by;
  const { gaugeTemperature, ambientLimit, readings } = hour;
  const { printed, vessel } = manual;
  const { modelErrorCorrelation } = deciding;
  const [shown, felt] = [pressure?.characterised, temperature?.characterised];
  const bare = shown !== undefined && has(shown, 'gauge') ? shown.gauge : undefined;
  const gauge = bare === undefined ? undefined : ofTheHour(bare, gaugeTemperature);
  const thermometer = felt !== undefined && has(felt, 'thermometer') ? felt.thermometer : undefined;
  if (
    gauge === undefined ||
    thermometer === undefined ||
    ambientLimit === undefined ||
    readings === undefined ||
    printed === undefined ||
    vessel === undefined ||
    modelErrorCorrelation === undefined
  ) {
    const lacking: Lacking[] = [];
    if (pressure === undefined) lacking.push('gauge not named');
    else if (bare === undefined) lacking.push('gauge not characterised');
    else if (gauge === undefined) lacking.push('gauge temperature not stated');
    if (temperature === undefined) lacking.push('thermometer not named');
    else if (thermometer === undefined) lacking.push('thermometer not characterised');
    if (ambientLimit === undefined) lacking.push('limit of the ambient not stated');
    if (printed === undefined) lacking.push('printed steps not stated');
    if (vessel === undefined) lacking.push('vessel not stated');
    if (modelErrorCorrelation === undefined) lacking.push('model error correlation not stated');
    if (readings === undefined) lacking.push('number of readings not stated');
    return { lacking };
  }
  const barometer = { limit: ambientLimit };
  const on = dayOf(at);
  return { instruments: { gauge, thermometer, barometer, printed, modelErrorCorrelation, vessel, readings, on } };
}

/** A gauge as it was used: at its own temperature of the hour; undefined where that is asked for and not stated. */
function ofTheHour(
  gauge: DialGauge | DigitalGauge,
  temperature: Admitted['hour']['gaugeTemperature'],
): DialGauge | DigitalGauge | undefined {
  // Nothing is known of what the temperature of such a gauge does: its temperature is not needed.
  if (gauge.type === 'digital gauge' && gauge.temperature === 'not known') return gauge;
  if (temperature === undefined) return undefined;
  if (gauge.type === 'dial gauge' || temperature === 'not known') return { ...gauge, temperature } as typeof gauge;
  return gauge.temperature === 'not known'
    ? gauge
    : { ...gauge, temperature: { ...gauge.temperature, is: temperature } };
}
