// What a derivation holds: where each value comes from, what was rounded, which states were worked by hand; and that every formula is LaTeX that a real renderer takes in strict mode.
import {
  absolute,
  auditTable,
  bleeding,
  check,
  cubicNitrogen,
  decide,
  idealNitrogen,
  isFault,
  nitrogen,
  normalVolume,
  amount,
  reference15C1bar,
  standardAtmosphere,
  stateAt,
  target,
  temperature,
  toAbsolute,
  uncertainty,
  type Bleeding,
  type Draining,
  type Filling,
  type FillingPlan,
  type GasModel,
  type LeakShown,
  type Serves,
  type Step,
  type StoredEnergy,
} from 'isochore';
import {
  comparisonBlocks,
  comparisonDocument,
  derivationBlocks,
  derivationDocument,
  derivationExcerpt,
  derivationOf,
  documentHtml,
  documentMarkdown,
  documentText,
  english,
  german,
  type Derivation,
  type DerivedStep,
  type Reader,
} from 'isochore/worked';
import katex from 'katex';
import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import { expressionLatex } from '../../src/worked/formula/expression.js';
import { bar, celsius, hPa, readingWith, specBy, specOf, tableOf } from '../support/accumulator.js';
import { inheriting } from '../support/inheriting.js';
import { INSTRUMENTS } from '../support/instruments.js';
import { equationsByStep, printedNumber } from '../support/printed.js';
import { randomBy } from '../support/random.js';
import { relativeError } from '../support/reference.js';
import { CASES } from './derivation-cases.js';

const UNITS = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
const reader = (detail: Reader['detail'], language = english): Reader => ({ language, units: UNITS, detail });

const spec = specOf(141, 19, { ambient: hPa(1017) });
const reading = readingWith({ pressure: bar(120), temperature: celsius(37), ambient: hPa(998) });
const checked = derivationOf({ spec, reading }, (g, trace) => check(g.spec, g.reading, trace));

const textOf = (derivation: Derivation, detail: Reader['detail'], language = english): string =>
  documentText(derivationDocument(derivation, 'x', reader(detail, language)), { width: 300 });

const FILLING_AND_SAFETY = [
  ...[
    'bottleState',
    'checkLoss',
    'beforeCheck',
    'serves',
    'fillingPlan',
    'filling',
    'bleeding',
    'draining',
    'settlingCurve',
  ],
  ...['whereToStop', 'pressureWhenHot', 'oxygenAfterRelease', 'storedEnergy', 'isentropicExpansion', 'purge'],
  ...['leakTest', 'ratings'],
];

describe('a derivation', () => {
  test('gives the result of the calculation, and its steps in order', () => {
    const seen: Step[] = [];
    expect(checked.result).toStrictEqual(check(spec, reading, (step) => seen.push(step)));
    expect(checked.steps.map(({ relation, about, result }) => [relation, about, result.value])).toStrictEqual(
      seen.map(({ relation, about, result }) => [relation, about, result]),
    );
    expect(checked.models.map(({ id }) => id)).toEqual(['nitrogen-span-2000']);
  });

  test('says of every value where it comes from', () => {
    const origin = (about: string, gives: string, symbol: string): unknown =>
      checked.steps
        .find((step) => step.about === about && step.relation.gives === gives)
        ?.from.find((one) => one.symbol === symbol)?.origin;
    expect(origin('target, as stated', 'p_abs', 'p_g')).toEqual({ from: 'given', path: 'spec.precharge.pressure' });
    expect(origin('target, as stated', 'p_abs', 'p_amb')).toEqual({ from: 'given', path: 'spec.ambient' });
    expect(origin('target', 'p_g', 'p_amb')).toEqual({ from: 'given', path: 'reading.ambient' });
    expect(origin('target', 'p_abs', 'rho')).toEqual({ from: 'step', step: 2 });
    expect(origin('gas', 'm', 'M')).toEqual({ from: 'model', model: 'nitrogen-span-2000' });
    expect(origin('add', 'n', 'V')).toEqual({ from: 'given', path: 'spec.gasVolume' });
    expect(origin('reference state of the volume', 'rho', 'T')).toMatchObject({ from: 'published' });
  });

  test('leaves no value of a check unexplained', () => {
    const random = randomBy(3);
    const check = CASES.find(([name]) => name === 'check')?.[1];
    for (let i = 0; i < 100; i += 1)
      for (const step of check?.(random).steps ?? [])
        for (const { symbol, origin } of step.from)
          expect(origin.from, `${step.about}: ${symbol}`).not.toBe('calculation');
  });

  // Of filling, settling and safety everything that can be worked by hand has a step, was given or is found by trial.
  test.each(CASES.filter(([name]) => FILLING_AND_SAFETY.includes(name)))(
    'leaves nothing unexplained of %s',
    (_, derive) => {
      const random = randomBy(4);
      for (let i = 0; i < 40; i += 1)
        for (const { about, relation, from } of derive(random).steps)
          for (const { symbol, value, origin } of from) {
            // The stop on a mark of the gauge is a rounding, and a release at once takes no time.
            const isMark = about.startsWith('stop, ') && relation.gives === 'p_abs' && symbol === 'p_g';
            if (isMark || (about === 'ventilation' && value === 0)) continue;
            expect(origin.from, `${about}: ${symbol}`).not.toBe('calculation');
          }
    },
  );

  // A derivation that shows other numbers than the result explains nothing.
  test('of filling, settling and safety ends in the numbers of the result', () => {
    const random = randomBy(5);
    const drawn = (name: string): Derivation => CASES.find(([one]) => one === name)?.[1](random) as Derivation;
    const last = ({ steps }: Derivation, about: string, gives: string): number =>
      steps.filter((step) => step.about === about && step.relation.gives === gives).at(-1)?.result.value ?? Number.NaN;
    let equalised = 0;
    for (let i = 0; i < 12; i += 1) {
      const serving = drawn('serves');
      const served = serving.result as Serves;
      expect(last(serving, 'bottle', 'count')).toBe(served.accumulators);
      expect(last(serving, 'bottle afterwards', 'p_g')).toBe(served.after.pascals);
      const planning = drawn('fillingPlan');
      const { steps } = planning.result as FillingPlan;
      expect(steps.length).toBeGreaterThan(1);
      steps.forEach(({ bottleAfter, ended }, k) => {
        const shown = last(planning, `bottle afterwards, step ${k + 1}`, 'p_g');
        expect(Math.abs(shown - bottleAfter.pascals)).toBeLessThan(1e-2);
        const dp = last(planning, `bottle less accumulator, step ${k + 1}`, 'dp');
        expect(Number.isNaN(dp)).toBe(ended === 'at the pressure wanted');
        if (ended === 'equalised') equalised += 1;
      });
      const fill = drawn('filling');
      const { adiabatic } = fill.result as Filling;
      if (adiabatic.outcome === 'reached') {
        expect(last(fill, 'settled, adiabatic', 'p_g')).toBe(adiabatic.settled.pascals);
        expect(last(fill, 'stop, adiabatic', 'T')).toBe(adiabatic.temperature.kelvins);
        // What the balance leads to is the temperature that was found: its energy by the model is the one it has by hand.
        const [rho, u] = fill.steps.find(({ relation }) => relation.formula === 'u(T, rho) = u_mol')?.from ?? [];
        const end = { temperature: adiabatic.temperature, density_mol_m3: rho?.value ?? Number.NaN };
        expect(relativeError(u?.value ?? Number.NaN, stateAt(nitrogen, end).internalEnergy_J_mol)).toBeLessThan(1e-11);
      }
      const out = drawn('bleeding');
      expect(last(out, 'settled, adiabatic', 'p_g')).toBe((out.result as Bleeding).adiabatic.settled.pascals);
      const drained = drawn('draining');
      expect(last(drained, 'settled', 'dp')).toBe((drained.result as Draining).mostLow.pascals);
      const leak = drawn('leakTest');
      expect(last(leak, 'gauge', 'dp')).toBe((leak.result as LeakShown).gauge.fall.pascals);
      const stored = drawn('storedEnergy');
      const { charged } = stored.result as StoredEnergy;
      expect(last(stored, 'charged', 'm')).toBe(charged.tnt.kilograms);
      expect(last(stored, 'charged, by the ideal gas', 'E')).toBe(charged.pcc2_J);
      expect(last(stored, 'charged, by the gas model', 'E')).toBe(charged.realGas.energy_J);
      expect(last(stored, 'charged, without the atmosphere', 'E')).toBe(charged.realGas.lessAtmosphere_J);
    }
    expect(equalised).toBeGreaterThan(3);
  });

  test('says of what a solver found that it was tried, and which step confirms it', () => {
    const given = {
      spec,
      read: { pressure: bar(120), temperature: celsius(20), ambient: hPa(1000) },
      how: { until: { stop: bar(100) } },
    };
    const { steps } = derivationOf(given, (g, trace) => bleeding(g.spec, g.read, g.how, trace));
    const root = steps.find(({ relation }) => relation.formula === 's(T, rho) = s_mol');
    const [rho, s] = root?.from ?? [];
    expect(s?.origin.from).toBe('step');
    const number = rho?.origin.from === 'trial' ? rho.origin.step : 0;
    const confirming = steps[number - 1];
    expect(confirming?.relation.formula).toBe('p(T, rho)');
    expect(Math.abs((confirming?.result.value ?? 0) - 101e5)).toBeLessThan(1e-3);
    expect(confirming?.from.find(({ symbol }) => symbol === 'rho')?.origin).toEqual({
      from: 'tried',
      step: root?.number,
    });
    const text = textOf(
      derivationOf(given, (g, trace) => bleeding(g.spec, g.read, g.how, trace)),
      'steps',
    );
    expect(text).toContain(`found by trial: step ${number} confirms it`);
  });

  test('does not take a reading at 0 °C for the normal conditions', () => {
    const cold = readingWith({ pressure: bar(120), temperature: celsius(0), ambient: standardAtmosphere });
    const { steps } = derivationOf({ spec, cold }, (g, trace) => check(g.spec, g.cold, trace));
    const [T, p] = steps.find(({ about }) => about === 'reference state of the volume')?.from ?? [];
    expect([T?.origin.from, p?.origin.from]).toEqual(['published', 'published']);
  });

  test('tells one input from another of the same value by what the step is about', () => {
    const given = { spec, reading, instruments: INSTRUMENTS };
    const { steps } = derivationOf(given, (g, trace) => uncertainty(g.spec, g.reading, g.instruments, trace));
    const pathsOf = (about: string, symbol: string): (string | undefined)[] =>
      steps
        .filter((step) => step.about === about)
        .flatMap(({ from }) => from.filter((one) => one.symbol === symbol))
        .map(({ origin }) => ('path' in origin ? origin.path : undefined));
    // One bar is the step of the gauge and of the manual; one kelvin the limit of the thermometer and its step.
    expect(pathsOf('gauge step', 'dp_step')).toEqual(['reading.gaugeStep']);
    expect(pathsOf('printed pressure', 'dp_step')).toEqual(['instruments.printed.pressure']);
    expect(pathsOf('thermometer', 'e')).toEqual(['instruments.thermometer.accuracy.limit']);
    expect(pathsOf('thermometer step', 'dT_step')).toEqual(['instruments.thermometer.step']);
    expect(pathsOf('shell to gas', 'e')).toEqual(['instruments.thermometer.shellToGas']);
    expect(pathsOf('barometer', 'e')).toEqual(['instruments.barometer.limit']);
  });

  test('adds up the contributions of an uncertainty to its standard uncertainty', () => {
    const given = { spec, reading, instruments: INSTRUMENTS };
    const { result, steps } = derivationOf(given, (g, trace) => uncertainty(g.spec, g.reading, g.instruments, trace));
    const [combined, expanded] = steps.filter(({ about }) => about === 'all contributions');
    if (!('standard' in result) || combined === undefined) return expect.fail('no budget');
    expect(combined.result.value).toBe(result.standard.pascals);
    expect(combined.from).toHaveLength(result.contributions.length);
    expect(combined.from.every(({ origin }) => origin.from === 'step')).toBe(true);
    expect(expanded?.result.value).toBe(result.gum.expanded.pascals);
    // The interval is that of the distribution, not k u: what is printed is what holds, whether the validation passes or not.
    const ends = steps.filter(({ about }) => about === 'interval');
    const { lower, upper } = result.interval;
    expect(ends.map((one) => one.result.value)).toEqual([lower.pascals, upper.pascals]);
    for (const { from } of ends)
      expect(from.map(({ symbol, origin }) => [symbol, origin.from])).toEqual([
        ['dp_off', 'step'],
        ['dp_half', 'calculation'],
      ]);
  });

  test('shows of a decision how far the reading lies beyond its guard band', () => {
    const rule = { acceptance: 'guarded both ways', risk: { below: 0.02, above: 0.05 } } as const;
    for (const p of [146, 150, 152, 156, 160]) {
      const given = { spec, read: { ...reading, pressure: bar(p) }, instruments: INSTRUMENTS };
      const { result, steps } = derivationOf(given, (g, trace) => decide(g.spec, g.read, g.instruments, rule, trace));
      const beyond = steps
        .filter(({ relation }) => relation.gives === 'dp_beyond')
        .map(({ result: { value } }) => value);
      expect(beyond).toHaveLength(2);
      expect(result.outcome === 'inconclusive').toBe(beyond.some((value) => value < 0));
    }
  });

  test('tells a step of the caller with symbols that every object has', () => {
    const relation = { from: ['constructor'], gives: 'valueOf', unit: 'Pa', formula: 'constructor', source: 'x' };
    const { steps } = derivationOf({ a: 1 }, (_, trace) => {
      trace({ relation, about: 'toString', values: [3], result: 3 });
    });
    expect(steps[0]?.from[0]).toMatchObject({ symbol: 'constructor', value: 3, origin: { from: 'calculation' } });
  });

  test('takes a value that two steps gave from the one that is about the same', () => {
    const rule = { acceptance: 'simple acceptance', risk: { below: 0.02, above: 0.05 } } as const;
    const read = { ...reading, pressure: target(spec, reading) };
    const { steps } = derivationOf({ spec, read, instruments: INSTRUMENTS }, (g, trace) =>
      decide(g.spec, g.read, g.instruments, rule, trace),
    );
    const margins = steps.filter(({ relation }) => relation.gives === 'dp_inside');
    const ratios = steps.filter(({ relation }) => relation.gives === 'r_margin');
    expect(new Set(margins.map(({ result }) => result.value)).size).toBe(1);
    expect(ratios.map(({ about }) => about)).toEqual(['lower limit', 'upper limit']);
    for (const ratio of ratios) {
      const [origin] = ratio.from.flatMap((one) => (one.symbol === 'dp_inside' ? [one.origin] : []));
      const own = margins.find(({ about }) => about === ratio.about);
      expect(origin).toEqual({ from: 'step', step: own?.number });
    }
  });

  test('names the rows of a table', () => {
    const table = tableOf([
      [127.3, 0],
      [140, 20],
      [152.6, 40],
    ]);
    const derived = derivationOf({ spec: specBy(table), reading }, (g, trace) => target(g.spec, g.reading, trace));
    const [read] = derived.steps;
    expect(read?.from.map(({ symbol, origin }) => [symbol, 'row' in origin ? origin.row : origin.from])).toEqual([
      ['p_1', 2],
      ['p_2', 3],
      ['T_1', 2],
      ['T_2', 3],
      ['T', 'given'],
    ]);
    expect(textOf(derived, 'steps')).toContain('row 3 of the table');
  });

  test('takes a reference state that was handed in for one, and normal conditions for published', () => {
    const given = { amount: amount(12, 'mol'), model: nitrogen, at: reference15C1bar };
    const derived = derivationOf(given, (g, trace) => normalVolume(g.amount, g.model, g.at, trace));
    expect(derived.steps[0]?.from.map(({ origin }) => origin)).toEqual([
      { from: 'given', path: 'at.temperature' },
      { from: 'given', path: 'at.pressure' },
    ]);
  });

  test('holds every rounding of its result', () => {
    expect(checked.roundings.map(({ of, toward, written }) => [of, toward, written])).toEqual([
      ['lower limit', 'up', expect.stringMatching(/^\d+ bar gauge$/)],
      ['upper limit', 'down', expect.stringMatching(/^\d+ bar gauge$/)],
      ['mass', 'up', expect.stringMatching(/ kg$/)],
      ['normal volume', 'up', expect.stringMatching(/ m3 at 0 °C and 101.325 kPa absolute$/)],
      ['stop', 'down', expect.stringMatching(/^\d+ bar gauge$/)],
    ]);
    for (const { value, toward, written, unit } of checked.roundings) {
      const number = Number.parseFloat(written) * (unit === 'Pa' ? 1e5 : 1);
      expect(toward === 'up' ? number - value : value - number).toBeGreaterThanOrEqual(0);
    }
  });

  test('reads its formulas alike where all objects inherit a field', () => {
    const pageOf = (): string => documentText(derivationDocument(checked, 'x', reader('steps')), { width: 100 });
    for (const name of ['', '(', ',', 'p_abs']) expect(inheriting(name, { toString: 1 }, pageOf)).toBe(pageOf());
  });

  test('tells chosen steps with their numbers in the whole, and only those', () => {
    const wanted = ({ relation }: DerivedStep) => relation.gives === 'p_g';
    const numbers = checked.steps.filter(wanted).map(({ number }) => number);
    const { blocks, title } = derivationExcerpt(checked, wanted, '<b>', { ...reader('everything'), detail: 'steps' });
    expect(title).toEqual([{ kind: 'given', text: '<b>' }]);
    expect(blocks.flatMap((block) => (block.kind === 'heading' ? [block.level] : []))).toEqual(numbers.map(() => 1));
    const page = documentText({ language: 'en', title, blocks }, { width: 100 });
    expect([...page.matchAll(/^(\d+)\. /gm)].map(([, number]) => Number(number))).toEqual(numbers);
    expect(numbers.length).toBeGreaterThan(1);
    expect(
      derivationExcerpt(checked, () => false, 'none', { ...reader('everything'), detail: 'steps' }).blocks,
    ).toEqual([]);
    expect(() => derivationExcerpt(checked, wanted, 'x', reader('answer') as never)).toThrow('reader.detail');
    expect(() => derivationExcerpt(checked, 3 as never, 'x', { ...reader('steps'), detail: 'steps' })).toThrow(
      'chosen',
    );
  });

  test('is refused as a copy, and so is a step that is none', () => {
    const copy = { ...checked } as Derivation;
    expect(() => derivationBlocks(copy, reader('steps'))).toThrow('derivation');
    const forged = { relation: { gives: '<b>' }, about: 'x', values: [], result: 1 } as unknown as Step;
    expect(() => derivationOf({}, (_, trace) => trace(forged))).toThrow('step');
    try {
      derivationOf({ p: bar(1), ambient: standardAtmosphere }, (g, trace) =>
        toAbsolute(g.ambient as never, g.ambient, trace),
      );
      expect.fail('the fault of the calculation passes through');
    } catch (error) {
      expect(isFault(error)).toBe(true);
    }
  });
});

describe('a state of the gas', () => {
  test.each([nitrogen, idealNitrogen, cubicNitrogen])('by $id is worked by hand, without the solver', (model) => {
    const given = { model, at: { temperature: temperature(250, 'K'), pressure: absolute(300, 'bar') } };
    const { steps } = derivationOf(given, (g, trace) => stateAt(g.model, g.at, trace));
    const state = steps[0]?.state;
    expect(Math.abs(state?.residual_Pa ?? Number.NaN)).toBeLessThan(1e-12 * 300e5);
    expect(state?.compressibility).toBeCloseTo(stateAt(model, given.at).compressibility, 12);
    expect(state?.terms).toHaveLength(model === nitrogen ? 72 : 0);
  });

  test('in the cold has bells in its terms that are seen', () => {
    const given = { model: nitrogen, at: { temperature: temperature(128, 'K'), pressure: absolute(36, 'bar') } };
    const { steps } = derivationOf(given, (g, trace) => stateAt(g.model, g.at, trace));
    const bells = (steps[0]?.state?.terms ?? []).filter(
      ({ about, relation }) => /3[3-6]/.test(about) && relation.gives === 'a_i',
    );
    expect(bells).toHaveLength(4);
    expect(Math.max(...bells.map(({ result }) => Math.abs(result)))).toBeGreaterThan(1e-5);
    expect(Math.abs(steps[0]?.state?.residual_Pa ?? Number.NaN)).toBeLessThan(1e-10 * 36e5);
  });

  test('is told by the model that it belongs to, where several are handed in', () => {
    const rows = [0, 1, 2].map((i) => [130 + 6.3 * i, 10 * i] as const);
    const table = { ...tableOf(rows), referenceTemperature: celsius(10) };
    const given = {
      models: [nitrogen, idealNitrogen],
      ambient: standardAtmosphere,
      printedIn: { pressure: 'bar' as const, temperature: '°C' as const },
      temperatureStep: 'exact' as const,
      equation: 'exact' as const,
    };
    const { steps } = derivationOf({ table, given }, (g, trace) => auditTable(g.table, g.given, trace));
    const states = steps.flatMap(({ state, result }) => (state === undefined ? [] : [{ ...state, result }]));
    expect(new Set(states.map(({ model }) => model))).toEqual(new Set(['nitrogen-span-2000', 'nitrogen-ideal']));
    for (const { residual_Pa, pressure_Pa } of states) expect(Math.abs(residual_Pa)).toBeLessThan(1e-11 * pressure_Pa);
  });
});

describe.each(CASES)('the derivation of %s', (_, derive) => {
  test('says of each step what it is about, and by what source', () => {
    const random = randomBy(13);
    for (let i = 0; i < 3; i += 1)
      for (const { about, relation } of derive(random).steps) {
        expect(about.split(', ').every((part) => part.trim().length > 2)).toBe(true);
        expect(relation.source).toMatch(/\S/);
      }
  });

  test('is LaTeX that KaTeX takes in strict mode, and plain in every other format', () => {
    const random = randomBy(12);
    const derivation = derive(random);
    for (const language of [english, german]) {
      const page = derivationDocument(derivation, 'x', reader('steps', language));
      const formulas = page.blocks.flatMap((block) => (block.kind === 'equation' ? block.sides : []));
      for (const side of new Set(formulas.map(expressionLatex)))
        expect(() => katex.renderToString(side, { strict: 'error', throwOnError: true }), side).not.toThrow();
      for (const written of [documentText(page, { width: 100 }), documentMarkdown(page), documentHtml(page)]) {
        expect(written).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
      }
    }
  });
});

test('the terms at everything add up to the compression factor, by mathjs', () => {
  const given = { model: nitrogen, at: { temperature: temperature(290, 'K'), pressure: absolute(180, 'bar') } };
  const { steps } = derivationOf(given, (g, trace) => stateAt(g.model, g.at, trace));
  let sum = 0;
  for (const { relation, values, result } of steps[0]?.state?.terms ?? []) {
    if (relation.gives !== 'a_i') continue;
    const scope = Object.fromEntries(relation.from.map((symbol, i) => [symbol, values[i]]));
    const term = Number(evaluate(relation.formula, scope));
    expect(Math.abs(term - result)).toBeLessThan(1e-14);
    sum += term;
  }
  expect(1 + sum).toBeCloseTo(stateAt(nitrogen, given.at).compressibility, 12);
});

test('a reader is read once: what is checked is what is used', () => {
  const running = (): Reader => {
    let left = 1;
    return { ...reader('steps', german), get language() { return left-- > 0 ? german : (undefined as never); } }; // prettier-ignore
  };
  expect(derivationDocument(checked, 'x', running())).toStrictEqual(
    derivationDocument(checked, 'x', reader('steps', german)),
  );
  expect(comparisonDocument(checked, checked, 'x', running()).language).toBe('de');
});

test('every term and every digit is LaTeX that KaTeX takes in strict mode', () => {
  const page = derivationDocument(checked, 'x', reader('everything', german));
  const lines = page.blocks.flatMap((block) => (block.kind === 'table' ? block.rows.flat() : []));
  const inLines = lines.flatMap((line) => (typeof line === 'string' ? [] : line));
  const formulas = [
    ...page.blocks.flatMap((block) => (block.kind === 'equation' ? block.sides : [])),
    ...inLines.flatMap((piece) => (typeof piece === 'object' && piece.kind === 'formula' ? [piece.expression] : [])),
  ];
  expect(formulas.length).toBeGreaterThan(500);
  for (const side of new Set(formulas.map(expressionLatex)))
    expect(() => katex.renderToString(side, { strict: 'error', throwOnError: true }), side).not.toThrow();
});

describe('levels', () => {
  test('answer tells the results alone, steps the steps, everything the terms', () => {
    const [answer, steps, everything] = (['answer', 'steps', 'everything'] as const).map((d) => textOf(checked, d));
    expect(answer).not.toContain('Step by step');
    expect(answer).toContain('add: stop pressure');
    // What the calculation gives is told, although later steps use it; what lies between is not.
    expect(answer).toMatch(/target: gauge pressure +p_g +[\d.]+ bar gauge/);
    expect(answer).toMatch(/lower limit +p_lower +[\d.]+ bar gauge/);
    expect(answer).not.toContain('molar density');
    expect(steps).toContain('p_abs = p_g + p_amb');
    expect(steps).toContain('By hand');
    expect(steps).not.toContain('n_i');
    expect(everything).toContain('n_i = 0.924803575275');
  });

  test('numbers are those of the language', () => {
    expect(textOf(checked, 'steps', german)).toMatch(/p_abs = \d+,\d+ bar absolut/);
    expect(textOf(checked, 'steps')).toMatch(/p_abs = \d+\.\d+ bar absolute/);
  });

  test('more digits are printed where a difference would have none', () => {
    const near = target(spec, reading).pascals / 1e5;
    const close = readingWith({ ...reading, pressure: bar(Number(near.toFixed(4))) });
    const derived = derivationOf({ spec, close }, (g, trace) => check(g.spec, g.close, trace));
    const off = derived.steps.find(({ relation }) => relation.gives === 'dp_off');
    expect(Math.abs(off?.result.value ?? Number.NaN)).toBeLessThan(5.1);
    const equation = equationsByStep(derivationBlocks(derived, reader('steps'))).get(off?.number ?? 0)?.[0];
    const printed = printedNumber(equation?.sides.at(-1) ?? { kind: 'number', text: '' });
    expect(printed.value).not.toBe(0);
    expect(Math.abs(printed.value) / printed.half).toBeGreaterThanOrEqual(20);
  });
});

describe('a comparison', () => {
  const by = (gas: GasModel): Derivation =>
    derivationOf({ spec: specOf(140, 20, { gas }), reading: readingWith() }, (g, trace) =>
      target(g.spec, g.reading, trace),
    );

  test('of the ideal-gas law with the reference equation: 3.0 bar at 40 °C, the difference of its columns', () => {
    const [table] = comparisonBlocks(by(nitrogen), by(idealNitrogen), reader('answer')).filter(
      (block) => block.kind === 'table',
    );
    const page = documentText({ language: 'en', title: 'x', blocks: table ? [table] : [] }, { width: 200 });
    expect(page).toMatch(/target: gauge pressure +152\.612 bar gauge +149\.621 bar gauge +−2\.991 bar/);
  });

  test('says when nothing comes out otherwise, and which step only one has', () => {
    const text = (one: Derivation, other: Derivation, detail: Reader['detail']): string =>
      documentText(
        { language: 'en', title: 'x', blocks: comparisonBlocks(one, other, reader(detail)) },
        { width: 200 },
      );
    expect(text(by(nitrogen), by(nitrogen), 'steps')).toContain('No step comes out otherwise.');
    const whole = derivationOf({ spec: specOf(140, 20), reading: readingWith() }, (g, trace) =>
      check(g.spec, g.reading, trace),
    );
    expect(text(by(nitrogen), whole, 'everything')).toContain('no such step');
  });
});
