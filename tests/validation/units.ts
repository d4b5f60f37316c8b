// Step 1 of the method: units of measurement.
import { siOf, KINDS } from '../support/kinds.js';
import { referenceText, relativeError } from '../support/reference.js';
import type { Check, Group, Step } from './check.js';

function si(kind: string, value: number, unit: string): number {
  const found = KINDS.find((each) => each.kind === kind);
  if (found === undefined) throw new Error(`no kind ${kind}`);
  return siOf(found.make(value, unit));
}

/** Values of GNU units: its last digit or two are the rounding of its own binary arithmetic. */
function gnuUnits(): Group {
  const [, ...rows] = referenceText('units-gnu.csv')
    .split('\n')
    .filter((line) => line !== '' && !line.startsWith('#'))
    .map((line) => line.split(','));
  const checks = rows.map(([kind = '', value = '', unit = '', , , result = '']): Check => {
    const here = si(kind, Number(value), unit);
    return {
      what: `${kind}, ${value} ${unit}`,
      expected: result,
      obtained: String(here),
      deviation: relativeError(here, Number(result)),
      allowance: 5e-16,
      unit: 'relative',
    };
  });
  return {
    title: 'GNU units',
    source:
      'GNU units 2.22 with its own definitions file, <https://www.gnu.org/software/units/>, recorded to 17 digits in ' +
      '`units-gnu.csv`. It computes in binary floating point: the allowance is its last place.',
    checks,
  };
}

/** Values that are exact by definition. */
const FIXED: readonly (readonly [kind: string, value: number, unit: string, si: number])[] = [
  ['temperature', 0, '°C', 273.15],
  ['temperature', -459.67, '°F', 0],
  ['temperature', 212, '°F', 373.15],
  ['temperature', -40, '°F', 233.15],
  ['temperature difference', 9, '°F', 5],
  ['absolute pressure', 1, 'kgf/cm2', 98066.5],
  ['absolute pressure', 1013.25, 'hPa', 101325],
  ['volume', 5, 'L', 0.005],
];

function fixedPoints(): Group {
  return {
    title: 'Fixed points',
    source:
      'NIST SP 811 (2008), appendices B.8 and B.9, brought from memory; the standard atmosphere: CGPM 1954, ISO 2533. ' +
      'Exact by definition, so nothing is allowed.',
    checks: FIXED.map(([kind, value, unit, wanted]) => {
      const here = si(kind, value, unit);
      return {
        what: `${kind}, ${value} ${unit}`,
        expected: String(wanted),
        obtained: String(here),
        deviation: Math.abs(here - wanted),
        allowance: 0,
        unit: 'SI',
      };
    }),
  };
}

export function units(): Step {
  return { title: 'Units', groups: [fixedPoints(), gnuUnits()] };
}
