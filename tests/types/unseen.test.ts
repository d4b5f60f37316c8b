// What is wrong and compiles all the same: the compiler cannot see it, so it must be refused when it runs.
import {
  amount,
  charge,
  decide,
  difference,
  gauge,
  judge,
  nitrogen,
  oxygenAfterRelease,
  shift,
  stateAt,
  toAbsolute,
  volume,
  type Release,
  type Rule,
} from 'isochore';
import { reportRound } from 'isochore/record';
import { describe, expect, test } from 'vitest';
import { bar, barOf, celsius, hPa, reads, specWith } from '../support/accumulator.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { problemOf } from '../support/problem.js';

const shown = bar(143);
const other = bar(140);
const inTheRoom = { temperature: celsius(35), ambient: hPa(1013) };
const release: Release = {
  room: volume(30, 'm3'),
  conditions: inTheRoom,
  gas: nitrogen,
  released: amount(400, 'mol'),
  minutes: 10,
  ventilation: 'none',
  oxygenBefore: 0.209,
  limit: { fraction: 0.195, source: 'an invented rule' },
};
const inPercent: Rule = { acceptance: 'guarded acceptance', risk: { below: 5, above: 0.05 } };

describe.each<[string, () => unknown, RegExp]>([
  ['two pressures set in order by an operator', () => shown < other, /gauge pressure used with .*</],
  ['a pressure made a number by a sign', () => +shown, /gauge pressure used with/],
  ['a pressure made a number by name', () => Number(shown), /gauge pressure used with/],
  ['pressures put in order by their texts', () => [bar(10), bar(9)].sort(), /gauge pressure made a text by sort/],
  [
    'a pressure in a template',
    () => `as found: ${shown as unknown as string}`,
    /gauge pressure made a text by .* String/,
  ],
  ['a copy of a pressure', () => toAbsolute({ ...shown }, hPa(1008)), /unchecked copy of a gauge pressure/],
  ['a copy of a difference', () => shift(shown, { ...barOf(2) }), /unchecked copy of a pressure difference/],
  ['a pressure put together from two', () => difference(shown, { ...shown, pascals: 0 }), /unchecked copy/],
  ['a copy of a specification', () => judge({ ...specWith() }, reads(143)), /unchecked copy of a specification/],
  [
    'a specification with another allowable',
    () => charge({ ...specWith(), allowable: gauge(900, 'bar') }, reads(143)),
    /unchecked copy of a specification/,
  ],
  [
    'a copy of a gas model',
    () => stateAt({ ...nitrogen }, { pressure: hPa(1008), temperature: celsius(20) }),
    /unchecked copy of a gas model/,
  ],
  ['a risk in percent', () => decide(specWith(), reads(143), INSTRUMENTS, inPercent), /^5$/],
  [
    'a limit of oxygen in percent',
    () => oxygenAfterRelease({ ...release, limit: { ...release.limit, fraction: 19.5 } }),
    /^19\.5$/,
  ],
  ['the oxygen before in percent', () => oxygenAfterRelease({ ...release, oxygenBefore: 20.9 }), /^20\.9$/],
  [
    'the text of a round where its data is meant',
    () => reportRound('{}', { problems: 'refuse the round' }),
    /^"\{\}"$/,
  ],
])('%s', (_, call, found) => {
  test('compiles, and is refused when it runs', () => {
    expect(problemOf(call).found).toMatch(found);
  });
});

// Under exactOptionalPropertyTypes, as the tests have it, it does not compile; a program need not have that.
test('an optional part that is undefined is one that is left out', () => {
  const absent = { systemPressure: undefined as never, fullScale: undefined as never };
  expect(judge(specWith(), { ...reads(143), ...absent })).toEqual(judge(specWith(), reads(143)));
});
