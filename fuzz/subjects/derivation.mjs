// Derivations, two of them side by side, and exercises.
import fc from 'fast-check';
import { anyText, call, fields, listOf, maybe, one, plain, steps, stock } from '../draw.mjs';
import { isDocument, language } from './documents.mjs';
import { model } from './gas.mjs';
import { spec } from './target.mjs';
import { reading } from './verdict.mjs';

/** @import { Block, Derivation } from 'isochore/worked' */
/** @import { Holds, Subject } from './subject.mjs' */

const reader = fields({
  language,
  units: fields({
    pressure: one('bar', 'MPa', 'psi', 'kgf/cm2', 'Pa'),
    temperature: one('°C', 'K', '°F'),
    volume: one('L', 'm3', 'US gal'),
    mass: one('kg', 'g', 'lb'),
  }),
  detail: one('answer', 'steps', 'steps', 'everything'),
  digits: maybe(one(4, 6, 12)),
});
const derivation = fc.constantFrom(stock('a derivation'), stock('a derivation by the ideal gas'));
const title = plain(anyText);
const TOPICS = [
  ...['target', 'gas to add', 'gas held'],
  ...['not drained', 'cold after draining', 'unit slip', 'shifted gauge', 'torn separator'],
];
const wanted = fields({
  seed: plain(steps(0, 4_294_967_295, 1)),
  count: one(1, 1, 2),
  topics: listOf(one(...TOPICS), 1, 2),
  gas: model,
});
const drawn = call('worked.exercises', wanted);

/** @type {Holds} */
const areBlocks = (answer, args) =>
  isDocument({ language: 'en', title: 'Working', blocks: /** @type {readonly Block[]} */ (answer) }, args);

/** @type {readonly Subject[]} */
export const DERIVATIONS = [
  {
    name: 'derivationOf',
    args: fc.tuple(fields({ spec, reading }), fc.constant(stock('a check to be derived'))),
    holds: (answer) => {
      const { steps: shown } = /** @type {Derivation} */ (answer);
      return shown.every(({ number }, i) => number === i + 1) ? undefined : 'steps out of order';
    },
    echoes: true,
  },
  { name: 'derivationBlocks', args: fc.tuple(derivation, reader), holds: areBlocks, echoes: true },
  { name: 'derivationDocument', args: fc.tuple(derivation, title, reader), holds: isDocument, echoes: true },
  {
    name: 'derivationExcerpt',
    args: fc.tuple(derivation, fc.constant(stock('a choice of steps')), title, reader),
    holds: isDocument,
    echoes: true,
  },
  { name: 'comparisonBlocks', args: fc.tuple(derivation, derivation, reader), holds: areBlocks, echoes: true },
  {
    name: 'comparisonDocument',
    args: fc.tuple(derivation, derivation, title, reader),
    holds: isDocument,
    echoes: true,
  },
  {
    name: 'exercises',
    args: fc.tuple(wanted),
    holds: (answer) => (Array.isArray(answer) && answer.length > 0 ? undefined : 'no exercises'),
    weight: 0.3,
  },
  { name: 'exerciseSheet', args: fc.tuple(drawn, title, reader), holds: isDocument, echoes: true, weight: 0.3 },
  { name: 'exerciseKey', args: fc.tuple(drawn, title, reader), holds: isDocument, echoes: true, weight: 0.3 },
];
