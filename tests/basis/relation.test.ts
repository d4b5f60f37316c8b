import { describe, expect, it } from 'vitest';
import { inPart, relation, step2, step3, step4, type Step } from '../../src/basis/relation.js';
import { problemOf } from '../support/problem.js';

// Arguments of unlike weight, so that two of them exchanged give another result.
const text = { gives: 'y', unit: '1', formula: '1000 * a + 100 * b + …', source: 'made up for this test' };
const two = relation({ ...text, from: ['a', 'b'], of: (a, b) => 1000 * a + 100 * b });
const three = relation({ ...text, from: ['a', 'b', 'c'], of: (a, b, c) => 1000 * a + 100 * b + 10 * c });
const four = relation({ ...text, from: ['a', 'b', 'c', 'd'], of: (a, b, c, d) => 1000 * a + 100 * b + 10 * c + d });

describe('a step of a calculation', () => {
  it('computes the same with and without somebody watching', () => {
    expect(step2(undefined, two, 'x', 1, 2)).toBe(1200);
    expect(step3(undefined, three, 'x', 1, 2, 3)).toBe(1230);
    expect(step4(undefined, four, 'x', 1, 2, 3, 4)).toBe(1234);
  });

  it('shows the relation, whose values they are, the values in order and the result', () => {
    const seen: Step[] = [];
    const trace = (step: Step) => seen.push(step);
    expect(step2(trace, two, 'reading', 1, 2)).toBe(1200);
    expect(step3(trace, three, 'target', 1, 2, 3)).toBe(1230);
    expect(step4(trace, four, 'reference point', 1, 2, 3, 4)).toBe(1234);
    expect(seen).toEqual([
      { relation: two, about: 'reading', values: [1, 2], result: 1200 },
      { relation: three, about: 'target', values: [1, 2, 3], result: 1230 },
      { relation: four, about: 'reference point', values: [1, 2, 3, 4], result: 1234 },
    ]);
  });

  it('names the part of the work that it belongs to, and a trace that is no function is refused there too', () => {
    const seen: Step[] = [];
    step2(
      inPart((step) => seen.push(step), 'step 3'),
      two,
      'bottle',
      1,
      2,
    );
    expect(seen).toEqual([{ relation: two, about: 'bottle, step 3', values: [1, 2], result: 1200 }]);
    expect(problemOf(() => step2(inPart('bar' as never, 'step 3'), two, 'bottle', 1, 2))).toMatchObject({
      code: 'wrong kind',
      path: 'trace',
    });
  });
});
