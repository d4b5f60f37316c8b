// Every function that the package exports has a subject here: a new one without is an error of the command.
import * as library from 'isochore';
import * as record from 'isochore/record';
import * as worked from 'isochore/worked';
import { AUDIT } from './audit.mjs';
import { BASIS } from './basis.mjs';
import { CHARGE } from './charge.mjs';
import { DERIVATIONS } from './derivation.mjs';
import { DOCUMENTS } from './documents.mjs';
import { GAS } from './gas.mjs';
import { QUANTITY } from './quantity.mjs';
import { RECORD } from './record.mjs';
import { SUPPLY } from './supply.mjs';
import { SETTLING } from './settling.mjs';
import { SAFETY } from './safety.mjs';
import { TARGET } from './target.mjs';
import { UNCERTAINTY } from './uncertainty.mjs';
import { VERDICT } from './verdict.mjs';

/** @import { Subject } from './subject.mjs' */

/** @type {readonly Subject[]} */
export const SUBJECTS = [
  ...often(4, BASIS),
  ...often(8, QUANTITY),
  ...often(4, GAS),
  ...TARGET,
  ...AUDIT,
  ...VERDICT,
  ...UNCERTAINTY,
  ...CHARGE,
  ...SUPPLY,
  // An integration takes as long as a thousand conversions.
  ...often(0.1, SETTLING),
  ...SAFETY,
  // A round takes as long as a hundred conversions.
  ...often(0.4, RECORD),
  ...often(0.4, DOCUMENTS),
  ...often(0.2, DERIVATIONS),
];

/** @param {number} times @param {readonly Subject[]} subjects */
function often(times, subjects) {
  return subjects.map((subject) => ({ ...subject, weight: times * (subject.weight ?? 1) }));
}

/** Names of exported functions without a subject, and of subjects without an exported function. */
export function unmatched() {
  const exported = Object.entries({ ...worked, ...record, ...library }).flatMap(([name, own]) =>
    typeof own === 'function' ? [name] : [],
  );
  const named = SUBJECTS.map(({ name }) => name);
  return {
    uncovered: exported.filter((name) => !named.includes(name)),
    unknown: named.filter((name) => !exported.includes(name)),
  };
}
