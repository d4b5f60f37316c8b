import { test } from 'vitest';
import { expectHeld } from '../support/held.js';
import { jsonPath, judgedOf, nodesOf, reportRest } from '../support/round.js';
import { smallRound } from '../support/small-round.js';

/** What may be reworded, and what another version of the library writes otherwise by its nature. */
const LEFT_OUT = ['text', 'why', 'remedy', 'wanted', 'libraryVersion'];

// The numbers are those of the core, which other tests hold against the outside. Here it is that each of them reaches the
// report: under its name, in its unit, and none that does not belong there.
test('a report on a round that has every field, value by value', () => {
  const values = nodesOf(judgedOf(reportRest(smallRound()))).filter(({ keys, value }) => {
    const isValue = typeof value !== 'object' || value === null || Object.keys(value).length === 0;
    return isValue && !LEFT_OUT.includes(String(keys.at(-1)));
  });
  expectHeld(
    values.map(({ keys, value }) => `${jsonPath(keys)} ${JSON.stringify(value)}`),
    'small-report.txt',
  );
});
