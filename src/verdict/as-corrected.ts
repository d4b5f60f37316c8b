import { has } from '../basis/has.js';
import { gaugeOf, temperatureOf } from '../quantity/kind.js';
import type { Instruments } from '../reading/instruments.js';
import type { Reading } from '../reading/reading.js';
import type { Specification } from '../target/specification.js';
import { correctedReading } from './corrected-reading.js';
import { judged } from './judge.js';

/**
 * A reading as the certificates of its instruments correct it, with the end of its scale: what is judged is the same gas as
 * what is decided on. The marks of the gauge stay those that it shows.
 *
 * A correction was found near the pressures that were calibrated. Where it leads below vacuum it holds no longer: a gas side
 * that reads empty then stands as it was shown, because that it is empty must not be lost. Any other reading is refused.
 */
export function asCorrected(spec: Specification, reading: Reading, instruments: Instruments): Reading {
  const { p_g_Pa, T_K } = correctedReading(reading, instruments);
  const { accuracy, fullScale } = instruments.gauge;
  const temperature = temperatureOf(T_K, 'reading.temperature');
  const own: Reading = { ...reading, temperature, fullScale };
  if (!has(accuracy, 'certificate')) return own;
  if (p_g_Pa < -reading.ambient.pascals && judged(spec, own).outcome === 'gas side empty') return own;
  return {
    ...own,
    pressure: gaugeOf(p_g_Pa),
    correctionIncluded: accuracy.certificate.correction,
  };
}
