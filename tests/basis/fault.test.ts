import fc from 'fast-check';
import * as isochore from 'isochore';
import { describe, expect, it, vi } from 'vitest';
import {
  collect,
  cut,
  describe as sentence,
  fail,
  failIfAny,
  Fault,
  filled,
  isFault,
  problem,
  quote,
  type Problem,
} from '../../src/basis/fault.js';
import * as catalogue from '../../src/basis/problem.js';
import { inheriting } from '../support/inheriting.js';
import { problemOf } from '../support/problem.js';

const negative = problem(catalogue.negative, 'overfill', '-1 bar');
const missing = problem(catalogue.missing, '', 'nothing', { wanted: 'an ambient pressure' });

describe('a problem of a kind', () => {
  it('has the text of its code, the values filled in, and the values themselves', () => {
    expect(negative).toStrictEqual({
      code: 'negative',
      path: 'overfill',
      found: '-1 bar',
      wanted: catalogue.negative.wanted,
      remedy: catalogue.negative.remedy,
      values: {},
    });
    expect(missing).toMatchObject({ wanted: 'an ambient pressure', values: { wanted: 'an ambient pressure' } });
  });

  it('takes a value as it stands, braces, dollars and all', () => {
    const wanted = '{remedy} $& $1 {}';
    expect(problem(catalogue.missing, '', 'nothing', { wanted }).wanted).toBe(wanted);
  });

  it('is made only with the values that its text names', () => {
    const never = (): void => {
      // @ts-expect-error -- the text of this kind names a value
      problem(catalogue.missing, '', 'nothing');
      // @ts-expect-error -- another one than this
      problem(catalogue.missing, '', 'nothing', { least: '1' });
      // @ts-expect-error -- and this kind has none
      problem(catalogue.negative, '', 'nothing', { least: '1' });
      // @ts-expect-error -- a code of the catalogue, not one's own
      problem({ code: 'mine', wanted: '', remedy: '' }, '', 'nothing');
    };
    expect(never).toThrow(/none but the names in braces/);
  });

  it.each(['{most}', '{toString}', '{__proto__}'])(
    'a text that asks for %s, which there is not, is refused',
    (brace) => {
      const refused = { code: 'words not sound', path: 'words' };
      expect(problemOf(() => filled(`at most ${brace}`, { least: '1' }))).toMatchObject(refused);
    },
  );
});

describe('the catalogue', () => {
  const kinds = Object.entries(catalogue);

  it('has one text a code', () => {
    expect(kinds.length).toBeGreaterThan(60);
    expect(new Set(kinds.map(([, { code }]) => code)).size).toBe(kinds.length);
  });

  it.each(kinds)('%s: names in braces, and no other brace', (_, { code, wanted, remedy }) => {
    expect(code).toMatch(/^[a-zA-Z ]+$/);
    for (const text of [wanted, remedy]) {
      expect(text).not.toMatch(/^$|[.;]$|^[A-Z](?!\d)[a-z]/);
      expect(text.replace(/\{[a-z]+\}/g, '')).not.toMatch(/[{}]/);
    }
  });
});

describe('a problem as a sentence', () => {
  it('says where, what was found, what is wanted and what to do', () => {
    expect(sentence(negative)).toBe('overfill: found -1 bar, wanted zero or more; give a size, not a signed value');
  });

  it('leaves out a place that there is not', () => {
    expect(sentence(missing)).toBe(
      'found nothing, wanted an ambient pressure; state it; nothing is assumed in its place',
    );
  });
});

describe('a Fault', () => {
  it('lists every problem, in its data and line by line in its message', () => {
    const fault = new Fault([negative, missing]);
    expect(fault.problems).toEqual([negative, missing]);
    expect(fault.message).toBe(`${sentence(negative)}\n${sentence(missing)}`);
    expect(String(fault)).toMatch(/^Fault: overfill: found/);
    expect(fault).toBeInstanceOf(Error);
  });

  it('is thrown for one problem, and for several if there are any', () => {
    expect(() => fail(catalogue.negative, 'overfill', '-1 bar')).toThrow(new Fault([negative]));
    expect(() => failIfAny([negative, missing])).toThrow(new Fault([negative, missing]));
    expect(() => {
      failIfAny([]);
    }).not.toThrow();
  });

  it('is recognised, and nothing else is', () => {
    expect(isFault(new Fault([negative]))).toBe(true);
    const others = [
      new Error('x'),
      new TypeError('x'),
      Object.assign(new Error('x'), { problems: [negative] }),
      { '~isochore': 'fault', problems: [negative] },
      null,
      undefined,
      'fault',
    ];
    expect(others.filter(isFault)).toEqual([]);
    const marked = { problems: [negative], '~isochore': 'gauge pressure' };
    expect(isFault(Object.assign(new Error('x'), marked))).toBe(false);
  });

  it.each(['fault', 'no fault', false])('is told from other errors where all objects inherit the mark %j', (mark) => {
    const [own, other] = [new Fault([negative]), new Error('x')];
    expect(inheriting('~isochore', mark, () => [isFault(own), isFault(other)])).toEqual([true, false]);
  });

  it('is recognised across two copies of the library, where instanceof fails', async () => {
    vi.resetModules();
    const copy = await import('isochore');
    const thrown = (() => {
      try {
        return copy.gauge(Number.NaN, 'bar');
      } catch (error) {
        return error;
      }
    })();
    expect(thrown).not.toBeInstanceOf(isochore.Fault);
    expect(isochore.isFault(thrown)).toBe(true);
    expect(copy.isFault(new isochore.Fault([negative]))).toBe(true);
    // And so is a quantity: a program may have made it with the other copy.
    expect(isochore.toAbsolute(copy.gauge(1, 'bar'), copy.absolute(1, 'bar')).pascals).toBe(200_000);
  });
});

describe('collecting problems', () => {
  const refuse = (...problems: [Problem, ...Problem[]]) => {
    throw new Fault(problems);
  };

  it('gives the result where there is one', () => {
    const problems: Problem[] = [];
    expect(collect(problems, 'limit', () => 5)).toBe(5);
    expect(problems).toEqual([]);
  });

  it('keeps what was there before, and goes on', () => {
    const problems: Problem[] = [missing];
    expect(collect(problems, 'limit', () => refuse(negative, missing))).toBeUndefined();
    expect(problems.map(({ path }) => path)).toEqual(['', 'limit.overfill', 'limit']);
    expect(problems[1]).toEqual({ ...negative, path: 'limit.overfill' });
  });

  it.each([
    ['$', 'groups', '$.groups'],
    ['$.groups', '[0].ambient', '$.groups[0].ambient'],
    ['', 'ambient', 'ambient'],
    ['', '[0]', '[0]'],
    ['ambient', '', 'ambient'],
    ['', '', ''],
  ])('puts %o before %o', (outer, inner, path) => {
    const problems: Problem[] = [];
    collect(problems, outer, () => refuse({ ...negative, path: inner }));
    expect(problems[0]?.path).toBe(path);
  });

  it('lets a defect of ours through', () => {
    const defect = new RangeError('a defect');
    const problems: Problem[] = [];
    expect(() =>
      collect(problems, 'limit', () => {
        throw defect;
      }),
    ).toThrow(defect);
    expect(problems).toEqual([]);
  });
});

describe('quoting', () => {
  it.each([
    ['bar', '"bar"'],
    ['', '""'],
    ['two\nlines\u0000"', String.raw`"two\nlines\u0000\""`],
    ['\ud800', String.raw`"\ud800"`],
    [141.3, '141.3'],
    [Number.NaN, 'NaN'],
    [10n, '10n'],
    [true, 'true'],
    [null, 'null'],
    [undefined, 'undefined'],
    [[1, 2], 'an array'],
    [{ kind: 'x' }, 'an object'],
    [Object.create(null), 'an object'],
    [() => 1, 'a function'],
    [Symbol('x'), 'a symbol'],
  ])('names %o', (value, text) => {
    expect(quote(value)).toBe(text);
  });

  // Half a surrogate pair is no text: it breaks the encoding of whatever the message is written to.
  const anyText = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 200 }),
    fc.tuple(fc.nat(82), fc.nat(5)).map(([before, pairs]) => 'x'.repeat(before) + '🜍'.repeat(pairs + 40)),
  );

  it('stays short and never cuts a character in half', () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const shown of [cut(text), quote(text)]) {
          expect(shown.length).toBeLessThanOrEqual(81);
          expect(/\p{Surrogate}/u.test(shown)).toBe(false);
        }
        expect(text.startsWith(cut(text).replace(/…$/, ''))).toBe(true);
      }),
      { numRuns: 500 },
    );
    // Six characters for each of these would be more than a text can hold.
    expect(quote('\0'.repeat(100_000_000))).toBe(`${`"${'\\u0000'.repeat(14)}`.slice(0, 80)}…`);
    expect([quote(-10n), quote(2n ** 199n), quote(10n ** 1000n)]).toEqual(['-10n', 'a large bigint', 'a large bigint']);
  });

  it('leaves 80 characters as they are and marks what it has cut', () => {
    expect(cut('x'.repeat(80))).toBe('x'.repeat(80));
    expect(cut('x'.repeat(81))).toBe(`${'x'.repeat(80)}…`);
    expect(cut(`${'x'.repeat(79)}🜍`)).toBe(`${'x'.repeat(79)}…`);
    expect(cut(`${'x'.repeat(78)}🜍x`)).toBe(`${'x'.repeat(78)}🜍…`);
  });
});
