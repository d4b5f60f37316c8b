// The gas models: states, saturation, amounts.
import fc from 'fast-check';
import { call, fields, one, plain, steps, stock } from '../draw.mjs';
import { a, condition } from './quantity.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Subject } from './subject.mjs' */

/** @type {Arbitrary<Recipe>} */
export const model = fc.constantFrom(
  ...['nitrogen', 'nitrogen', 'nitrogen', 'idealNitrogen', 'cubicNitrogen', 'nitrogen of the other build'].map(stock),
);
/** @type {Arbitrary<Recipe>} */
export const maybeTrace = fc.oneof(
  { weight: 9, arbitrary: one(undefined) },
  { weight: 1, arbitrary: fc.constant(stock('a trace')) },
);

const temperature = call(
  'temperature',
  plain(fc.oneof(steps(64, 130), steps(64, 1000), steps(126, 126.4, 1e5))),
  one('K'),
);
const pressure = call(
  'absolute',
  plain(fc.oneof(steps(0.001, 4, 1000), steps(1, 2000), fc.constantFrom(1e-6, 1e-300, 33.958))),
  one('bar'),
);
const density = plain(
  fc.oneof(steps(0.001, 100, 1000), steps(1, 35_000), fc.constantFrom(1e-9, 1e-300, 11183.9, 44735.6)),
);

/** @type {Arbitrary<Recipe>} */
const state = fc.oneof(
  fields({ pressure, temperature }),
  fields({ temperature, density_mol_m3: density }),
  fields({ pressure, entropy_J_molK: plain(steps(50, 260)) }),
  fields({ density_mol_m3: density, internalEnergy_J_mol: plain(steps(-2000, 25_000)) }),
);

/** @param {unknown} answer */
const numbers = (answer) => /** @type {Readonly<Record<string, number>>} */ (answer);

/** @type {readonly Subject[]} */
export const GAS = [
  {
    name: 'stateAt',
    args: fc.tuple(model, state, maybeTrace),
    holds: (answer) => {
      const positive = [
        'density_mol_m3',
        'compressibility',
        'cv_J_molK',
        'cp_J_molK',
        'speedOfSound_m_s',
        'dpdT_Pa_K',
        'dpdrho_Pa_m3_mol',
      ];
      const wrong = positive.find((field) => !((numbers(answer)[field] ?? Number.NaN) > 0));
      if (wrong !== undefined) return `${wrong} not above zero`;
      return (numbers(answer)['cp_J_molK'] ?? 0) > (numbers(answer)['cv_J_molK'] ?? 0) ? undefined : 'cp not above cv';
    },
  },
  {
    name: 'saturationAt',
    args: fc.tuple(
      model,
      call('temperature', plain(fc.oneof(steps(64, 126.3), steps(126, 126.3, 1e5))), one('K')),
      maybeTrace,
    ),
    holds: (answer) => {
      const { liquidDensity_mol_m3: liquid, vapourDensity_mol_m3: vapour } = numbers(answer);
      return vapour !== undefined && liquid !== undefined && vapour > 0 && liquid > vapour
        ? undefined
        : 'liquid no denser than vapour';
    },
  },
  { name: 'massOfGas', args: fc.tuple(a('amount'), model, maybeTrace), holds: notNegative },
  { name: 'normalVolume', args: fc.tuple(a('amount'), model, condition, maybeTrace), holds: notNegative },
  { name: 'normalVolumeAsIdealGas', args: fc.tuple(a('amount'), condition, maybeTrace), holds: notNegative },
];

/** @param {unknown} answer */
function notNegative(answer) {
  const { kilograms, cubicMetres } = numbers(answer);
  return (kilograms ?? cubicMetres ?? -1) >= 0 ? undefined : 'less than nothing';
}

export const read = fields({ pressure: a('gauge'), temperature: a('temperature'), ambient: a('absolute') });
export const conditions = fields({ temperature: a('temperature'), ambient: a('absolute') });
