import { fail } from '../basis/fault.js';
import { notAmbient } from '../basis/problem.js';
import { need, type AbsolutePressure, type Temperature } from '../quantity/kind.js';

/** Where and when a pressure is asked for or read: the gas temperature and the ambient pressure of that hour. */
export interface Conditions {
  /** Temperature of the gas; on board, of the shell after it has settled. */
  readonly temperature: Temperature;
  /** Ambient pressure of the place and hour, absolute: the barometer, not a default. 50 to 120 kPa. */
  readonly ambient: AbsolutePressure;
}

// Wider than any place where people work unpressurised (sea-level records are about 870 and 1085 hPa, a mountain
// workshop at 4000 m has about 620 hPa; common knowledge, no source). A barometer read in the wrong unit is far outside,
// and would shift every target by bars.
const AMBIENT_MIN_Pa = 50_000;
const AMBIENT_MAX_Pa = 120_000;

/** Refuses an ambient pressure that no place of work has. */
export function needAmbient(ambient: AbsolutePressure, path: string): void {
  need('absolute pressure', ambient, path);
  if (ambient.pascals >= AMBIENT_MIN_Pa && ambient.pascals <= AMBIENT_MAX_Pa) return;
  const [least, most] = [String(AMBIENT_MIN_Pa / 100), String(AMBIENT_MAX_Pa / 100)];
  fail(notAmbient, path, `${ambient.pascals / 100} hPa absolute`, { least, most });
}
