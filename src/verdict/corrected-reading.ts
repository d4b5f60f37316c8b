import { has } from '../basis/has.js';
import { step2, type Trace } from '../basis/relation.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import { CORRECTED, CORRECTED_TEMPERATURE } from './relations.js';

/** What was read, with the corrections of the certificates. */
export interface CorrectedReading {
  readonly p_g_Pa: number;
  readonly T_K: number;
  readonly ambient_Pa: number;
}

/** What was read, with the corrections of the certificates. */
export function correctedReading(
  reading: Reading,
  { gauge, thermometer }: Instruments,
  trace?: Trace,
): CorrectedReading {
  const read = reading.pressure.pascals;
  const p_g_Pa = has(gauge.accuracy, 'certificate')
    ? step2(trace, CORRECTED, 'reading', read, gauge.accuracy.certificate.correction.pascals)
    : read;
  const T_read = reading.temperature.kelvins;
  const T_K = has(thermometer.accuracy, 'certificate')
    ? step2(trace, CORRECTED_TEMPERATURE, 'reading', T_read, thermometer.accuracy.certificate.correction.kelvins)
    : T_read;
  return { p_g_Pa, T_K, ambient_Pa: reading.ambient.pascals };
}
