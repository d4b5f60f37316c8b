// What is wrong and compiles all the same: the compiler cannot see it, so it must be refused when it runs.
import { charge, difference, gauge, judge, shift, toAbsolute } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, hPa, reads, specWith } from '../support/accumulator.js';
import { problemOf } from '../support/problem.js';

const shown = bar(143);
const other = bar(140);

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
])('%s', (_, call, found) => {
  test('compiles, and is refused when it runs', () => {
    expect(problemOf(call).found).toMatch(found);
  });
});
