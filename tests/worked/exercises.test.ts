// Exercises: the same for the same seed, sensible, with one right answer that the library itself gives, wrong ones that are
// worked to by the mistakes that they are named after, and diagnoses that the library confirms.
import { cubicNitrogen, idealNitrogen, judge, nitrogen, target, valueIn, type Specification } from 'isochore';
import {
  documentHtml,
  documentMarkdown,
  documentText,
  english,
  exerciseKey,
  exercises,
  exerciseSheet,
  german,
  type Arithmetic,
  type ArithmeticExercise,
  type Choice,
  type Diagnosis,
  type DiagnosisExercise,
  type Exercise,
  type Mistake,
  type Reader,
} from 'isochore/worked';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { span2000 } from '../support/span2000.js';

const ARITHMETIC: readonly Arithmetic[] = ['target', 'gas to add', 'gas held'];
const DIAGNOSES: readonly Diagnosis[] = [
  'not drained',
  'cold after draining',
  'unit slip',
  'shifted gauge',
  'torn separator',
];
const UNITS = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
const reader = (detail: Reader['detail'], language = english): Reader => ({ language, units: UNITS, detail });

const made = (seed: number, count = 8): readonly Exercise[] =>
  exercises({ seed, count, topics: [...ARITHMETIC, ...DIAGNOSES], gas: nitrogen });
const isArithmetic = (one: Exercise): one is ArithmeticExercise => !('judged' in one);
const isDiagnosis = (one: Exercise): one is DiagnosisExercise => 'judged' in one;
const SEEDS = Array.from({ length: 40 }, (_, i) => i * 97 + 1);
const all = SEEDS.flatMap((seed) => made(seed));

const siOf = ({ quantity }: Choice): number => (quantity.kind === 'mass' ? quantity.kilograms : quantity.pascals);

test('the same seed gives the same sheet, another seed another', () => {
  const sheet = (seed: number): string => documentText(exerciseSheet(made(seed), 'x', reader('answer')), { width: 90 });
  expect(sheet(5)).toBe(sheet(5));
  expect(sheet(5)).not.toBe(sheet(6));
});

describe('arithmetic', () => {
  test('has one right answer and all the others by a mistake of their own', () => {
    for (const { topic, choices, answer } of all.filter(isArithmetic)) {
      expect(choices[answer]?.mistake).toBe('none');
      const mistakes = choices.map(({ mistake }) => mistake);
      expect(new Set(mistakes).size).toBe(choices.length);
      expect(choices).toHaveLength(topic === 'gas held' ? 4 : 5);
      for (const choice of choices) expect(choice.derivation.result).toBe(choice.quantity);
    }
  });

  test('puts the right answer anywhere', () => {
    const places = new Set(all.filter(isArithmetic).map(({ answer }) => answer));
    expect(places).toEqual(new Set([0, 1, 2, 3, 4]));
  });

  test('keeps its answers further apart than they are rounded', () => {
    for (const exercise of all.filter(isArithmetic)) {
      const values = exercise.choices.map(siOf).sort((a, b) => a - b);
      const least = exercise.topic === 'target' ? 0.3e5 : 0.002;
      values.slice(1).forEach((value, i) => expect(value - (values[i] ?? 0)).toBeGreaterThanOrEqual(least));
    }
  });

  // The facts of the sheet, worked again with the equation of the paper and the ideal-gas law, and nothing of the library's.
  test('of a target is right by the equation of the paper, and wrong as its mistakes say', () => {
    const bar = (fact: unknown): number => (fact as { pascals: number }).pascals;
    const kelvins = (fact: unknown): number => (fact as { kelvins: number }).kelvins;
    const solve = (T: number, p: number): number => {
      let [low, high] = [0, 20_000];
      for (let i = 0; i < 60; i += 1) {
        const middle = (low + high) / 2;
        if (span2000(T, middle).p_Pa < p) low = middle;
        else high = middle;
      }
      return low;
    };
    const some = all.filter((one): one is ArithmeticExercise => one.topic === 'target').slice(0, 12);
    for (const { facts, choices } of some) {
      const at = (code: string, name: string): unknown => facts.find((fact) => fact.code === code)?.values[name];
      const p = bar(at('stated', 'pressure'));
      const ambient = bar(at('ambient', 'ambient'));
      const [T, T_now] = [kelvins(at('stated', 'temperature')), kelvins(at('gas temperature', 'temperature'))];
      const by: Readonly<Record<Mistake | 'none', number>> = {
        none: span2000(T_now, solve(T, p + ambient)).p_Pa - ambient,
        'ideal gas taken for real': ((p + ambient) * T_now) / T - ambient,
        'gauge taken for absolute': span2000(T_now, solve(T, p)).p_Pa - ambient,
        '°C taken for K': ((p + ambient) * (T_now - 273.15)) / (T - 273.15) - ambient,
        'temperature not taken into account': p,
      };
      for (const choice of choices) expect(Math.abs(siOf(choice) - by[choice.mistake])).toBeLessThan(1e-8 * p);
    }
  });

  // p V = Z n R T and nothing else; R and M of nitrogen from memory.
  test('can be worked by hand with the compression factors of its sheet', () => {
    const [R, M] = [8.314, 0.028013];
    for (const { topic, facts, choices, answer } of all.filter(isArithmetic)) {
      const value = (code: string, name: string, field: string): number => {
        const found = facts.find((fact) => fact.code === code)?.values[name];
        return typeof found === 'number'
          ? found
          : ((found as unknown as Readonly<Record<string, number>>)[field] ?? NaN);
      };
      const ambient = value('ambient', 'ambient', 'pascals');
      const T = value('gas temperature', 'temperature', 'kelvins');
      const held = (gauge_Pa: number, Z: number): number =>
        (M * (gauge_Pa + ambient) * value('gas volume', 'volume', 'cubicMetres')) / (Z * R * T);
      const target = (): number =>
        (((value('stated', 'pressure', 'pascals') + ambient) * T) / value('stated', 'temperature', 'kelvins')) *
          (value('factor at the target', 'factor', '') / value('factor as stated', 'factor', '')) -
        ambient;
      const asRead = (): number => held(value('reading', 'pressure', 'pascals'), value('factor as read', 'factor', ''));
      const onTarget = (): number => held(target(), value('factor at the target', 'factor', ''));
      const [byHand, of] = {
        target: () => [target(), target()] as const,
        'gas held': () => [asRead(), asRead()] as const,
        'gas to add': () => [onTarget() - asRead(), onTarget()] as const,
      }[topic]();
      // Each factor is printed to half of its fourth place, the constants to five digits.
      expect(Math.abs(byHand - siOf(choices[answer] as Choice)) / of).toBeLessThan(2e-4);
    }
  });

  test('by the ideal gas has no mistake of taking nitrogen for ideal', () => {
    const [one] = exercises({ seed: 3, count: 1, topics: ['target'], gas: idealNitrogen });
    expect(one?.choices).toHaveLength(4);
    expect(exercises({ seed: 3, count: 8, topics: [...ARITHMETIC, ...DIAGNOSES], gas: cubicNitrogen })).toHaveLength(8);
  });
});

describe('diagnosis', () => {
  test('offers every diagnosis, and its own is right', () => {
    for (const { topic, choices, answer } of all.filter(isDiagnosis)) {
      expect([...choices].sort()).toEqual([...DIAGNOSES].sort());
      expect(choices[answer]).toBe(topic);
    }
  });

  test.each([
    ['not drained', ['not comparable'], 'reads like system pressure'],
    ['cold after draining', ['not comparable'], 'not at rest long enough'],
    ['unit slip', ['undercharged', 'overcharged'], ''],
    ['shifted gauge', ['overcharged'], 'above the upper limit'],
    ['torn separator', ['gas side empty'], 'reads zero'],
  ] as const)('%s is what the check says of its reading', (topic, outcomes, reason) => {
    for (const { judged } of all.filter(isDiagnosis).filter((one) => one.topic === topic)) {
      const { spec, reading, verdict } = judged;
      expect(verdict).toEqual(judge(spec, reading));
      expect(outcomes).toContain(verdict.outcome);
      if (reason !== '') expect(verdict.because).toContain(reason);
    }
  });

  test('of cold gas rises to the target, and of a shifted gauge is common to most', () => {
    const at = (spec: Specification, one: DiagnosisExercise): number =>
      valueIn(target(spec, one.judged.reading), 'bar');
    for (const one of all.filter(isDiagnosis)) {
      const pressures = one.facts.flatMap(({ code, values }) =>
        code === 'minutes after draining' || code === 'one of the round'
          ? [(values['pressure'] as { pascals: number }).pascals / 1e5]
          : [],
      );
      const wanted = at(one.judged.spec, one);
      if (one.topic === 'cold after draining') {
        expect(pressures).toEqual([...pressures].sort((a, b) => a - b));
        expect(Math.abs((pressures.at(-1) ?? 0) - wanted)).toBeLessThan(1.1);
      }
      if (one.topic === 'shifted gauge') {
        expect(pressures.filter((p) => p - wanted > 2).length).toBe(8);
        expect(pressures.filter((p) => p < wanted)).toHaveLength(1);
      }
    }
  });
});

describe('in print', () => {
  test('a sheet gives nothing away, and the key has letter, mistake and working', () => {
    const some = made(12, 3);
    const sheet = documentText(exerciseSheet(some, 'x', reader('steps')), { width: 100 });
    expect(sheet).not.toMatch(/mistake|[Rr]ight is/);
    const key = documentText(exerciseKey(some, 'x', reader('steps')), { width: 100 });
    const letter = String.fromCharCode(65 + (some[0]?.answer ?? -1));
    expect(key).toContain(`Right is ${letter}: `);
    expect(key.match(/The mistake: /g)).toHaveLength(4 + 4 + 3);
    expect(key).toContain('with degrees Celsius for kelvins');
    expect(documentText(exerciseKey(some, 'x', reader('answer')), { width: 100 })).not.toContain('p_abs');
  });

  test('the key to a slip says which number was in which unit', () => {
    for (const one of all.filter(({ topic }) => topic === 'unit slip').slice(0, 10)) {
      if (!isDiagnosis(one)) continue;
      const { temperature, pressure } = one.judged.reading;
      const key = documentText(exerciseKey([one], 'x', reader('answer')), { width: 200 });
      const [, number, stated, readAs] =
        /^Here: the number ([\d.]+) was stated in (\S+); .* may show (\S+)\.$/m.exec(key) ?? [];
      expect(['°C to °F', 'bar to kgf/cm2', 'kgf/cm2 to bar']).toContain(`${String(stated)} to ${String(readAs)}`);
      const noted = stated === '°C' ? valueIn(temperature, '°C') : valueIn(pressure, stated as 'bar');
      expect(Math.abs(Number(number) - noted)).toBeLessThan(1e-9);
    }
  });

  test('is whole in every format, language and unit', () => {
    const others = { pressure: 'psi', temperature: '°F', volume: 'US gal', mass: 'lb' } as const;
    for (const own of [reader('answer'), reader('answer', german), { ...reader('answer'), units: others }]) {
      for (const page of [exerciseSheet(made(4), 'x', own), exerciseKey(made(4), 'x', own)])
        for (const written of [documentText(page, { width: 90 }), documentMarkdown(page), documentHtml(page)])
          expect(written).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
    }
  });

  test('answers on the sheet are those of the key, rounded as printed', () => {
    for (const one of all.filter(isArithmetic).slice(0, 20)) {
      const sheet = documentText(exerciseSheet([one], 'x', reader('answer')), { width: 100 });
      one.choices.forEach((choice, i) => {
        const printed = new RegExp(`${String.fromCharCode(65 + i)}\\) (\\S+) (bar|kg)`).exec(sheet);
        const si = Number(evaluate(printed?.[1] ?? '')) * (printed?.[2] === 'bar' ? 1e5 : 1);
        expect(Math.abs(si - siOf(choice))).toBeLessThanOrEqual(printed?.[2] === 'bar' ? 0.0501e5 : 0.000501);
      });
    }
  });
});

test('refuses what is no wish for exercises', () => {
  const given = { seed: 1, count: 1, topics: ['target'], gas: nitrogen } as const;
  expect(() => exercises({ ...given, seed: -1 })).toThrow('given.seed');
  expect(() => exercises({ ...given, count: 101 })).toThrow('given.count');
  expect(() => exercises({ ...given, topics: [] })).toThrow('given.topics');
  const ofNoLength = new Proxy<'target'[]>(['target'], { get: () => Number.NaN });
  expect(() => exercises({ ...given, topics: ofNoLength })).toThrow('given.topics');
  expect(() => exercises({ ...given, topics: ['target', 'other' as never] })).toThrow('given.topics[1]');
  expect(() => exercises({ ...given, gas: { ...nitrogen } })).toThrow('given.gas');
  expect(() => exerciseSheet([{}] as never, 'x', reader('steps'))).toThrow('exercises[0]');
});
