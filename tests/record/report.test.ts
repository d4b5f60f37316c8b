import { describe, expect, test } from 'vitest';
import {
  causeText,
  check,
  nitrogen,
  read,
  specification,
  valueIn,
  why,
  type GaugePressure,
  type Kind,
  type PressureDifference,
  type PressureUnit,
  type QuantityOf,
  type Reading,
  type Reason,
  type Specification,
  type SpecificationGiven,
} from 'isochore';
import { reportRound, RoundReportShape, type Round, type RoundReading, type RoundReport } from 'isochore/record';
import { exampleRound, expectSound, judgedOf, nodesOf, put, reportRest } from '../support/round.js';

type JudgedReading = RoundReport['accumulators'][number]['asFound'];

const report = reportRest(exampleRound());

function accumulator(name: string, from = report): RoundReport['accumulators'][number] {
  const found = from.accumulators.find((one) => one.name === name);
  if (found === undefined) throw new Error(`${name} is not in the report`);
  return found;
}

/** The group and the accumulator of a name in a round. */
function inRound(round: Round, name: string) {
  for (const group of round.groups) {
    const found = group.accumulators.find((one) => one.name === name);
    if (found !== undefined) return { group, accumulator: found, visit: found.visit };
  }
  throw new Error(`${name} is not in the round`);
}

function readingOf(round: Round, name: string, i: number): RoundReading {
  const reading = inRound(round, name).visit.at(i);
  if (reading === undefined) throw new Error(`${name} has no reading ${i}`);
  return reading;
}

/** The round of the examples with one thing changed. */
function changed(change: (round: Round) => unknown): RoundReport {
  const round = exampleRound();
  change(round);
  return reportRest(round);
}

describe('the round of the examples', () => {
  test('is complete, and every outcome occurs', () => {
    expect(report).toMatchObject({ version: 1, complete: 'complete', problemsFound: 0, problems: [], notJudged: [] });
    expect(report.title).toBe(exampleRound().title);
    expect(Object.keys(report.counts).sort()).toEqual([
      'gas not known',
      'gas side empty',
      'gauge too coarse',
      'not comparable',
      'overcharged',
      'undercharged',
      'within',
    ]);
    const outcomes = report.accumulators.map(({ asFound }) => asFound.outcome);
    for (const [outcome, count] of Object.entries(report.counts)) {
      expect(outcomes.filter((one) => one === outcome)).toHaveLength(count);
    }
  });

  test('its report is JSON data of the published shape, and comes back from JSON as it was', () => {
    expectSound(report);
    expect(JSON.parse(JSON.stringify(report))).toStrictEqual(report);
    expect(RoundReportShape.parse(report)).toStrictEqual(report);
  });

  test('accumulators stand in the order of the round, with their group and specification', () => {
    const listed = report.accumulators.map(({ group, name, specification }) => [group, name, specification]);
    const given = exampleRound().groups.flatMap(({ name, specification, accumulators }) =>
      accumulators.map((one) => [name, one.name, specification]),
    );
    expect(listed).toEqual(given);
  });

  test('is not refused', () => {
    expect(reportRound(exampleRound(), { problems: 'refuse the round' })).toStrictEqual(report);
  });

  test('names its gas model and the source of it', () => {
    expect(report.models).toEqual([{ id: nitrogen.id, ...nitrogen.source }]);
  });
});

// The core, called by hand with what the round says.
interface Measured {
  readonly value: number | string;
  readonly unit: string;
  readonly basis?: 'gauge' | 'absolute' | 'difference';
}
const quantity = <K extends Kind>(kind: K, { value, unit, basis }: Measured): QuantityOf<K> =>
  read(kind, `${value} ${unit} ${basis ?? ''}`);
const difference = (json: Measured): PressureDifference => quantity('pressure difference', json);

function specificationOf(json: Round['specifications'][number]): Specification {
  const { plusMinus, below, above } = json.tolerance;
  const applies = json.tolerance.applies ?? 'at the measured temperature';
  const tolerance =
    plusMinus !== undefined
      ? { plusMinus: difference(plusMinus), applies }
      : { below: difference(below as Measured), above: difference(above as Measured), applies };
  return specification({
    gas: nitrogen,
    precharge: {
      pressure: quantity('gauge pressure', json.precharge.pressure as Measured),
      temperature: quantity('temperature', json.precharge.temperature as Measured),
    },
    ambient: quantity('absolute pressure', json.ambient),
    tolerance,
    separator: json.separator,
    gasVolume: quantity('volume', json.gasVolume),
    allowable: quantity('gauge pressure', json.allowable),
    settling: { allowance: difference(json.settling.allowance), minutes: json.settling.minutes },
  } satisfies SpecificationGiven);
}

function byHand(round: Round, name: string, i: number): [Specification, Reading] {
  const { group } = inRound(round, name);
  const json = { ...group, ...readingOf(round, name, i) };
  const spec = round.specifications.find((one) => one.name === group.specification);
  const { systemPressure, emptyGasSide, gaugeStep, instruments } = json;
  const { characteristics } = round.instruments?.find((one) => one.name === instruments?.pressure) ?? {};
  const fullScale = characteristics && 'fullScale' in characteristics ? characteristics.fullScale : undefined;
  const reading = {
    pressure: quantity('gauge pressure', json.pressure),
    temperature: quantity('temperature', json.temperature as Measured),
    ambient: quantity('absolute pressure', json.ambient as Measured),
    gaugeStep: { step: Number(gaugeStep?.value), unit: gaugeStep?.unit as PressureUnit },
    oilSide: json.oilSide,
    gasInside: json.gasInside,
    minutesAtRest: json.minutesAtRest,
    ...(fullScale && { fullScale: quantity('gauge pressure', fullScale) }),
    ...(systemPressure && { systemPressure: quantity('gauge pressure', systemPressure) }),
    ...(emptyGasSide && { emptyGasSide }),
  } satisfies Reading;
  return [specificationOf(spec as Round['specifications'][number]), reading];
}

function expectSame(json: JudgedReading, spec: Specification, reading: Reading): void {
  const { verdict, charge, cautions } = check(spec, reading);
  const say = (result: { because: readonly Reason[] }) => why(spec, reading, result);
  const unit = json.reading.gaugeStep.unit;
  const gauge = (p: GaugePressure) => ({ value: valueIn(p, unit), unit, basis: 'gauge' });
  const off = (p: PressureDifference) => ({ value: valueIn(p, unit), unit, basis: 'difference' });

  expect(json).toMatchObject({ outcome: verdict.outcome, because: verdict.because, why: say(verdict) });
  expect(json.target).toEqual(gauge(verdict.target));
  expect(json.band.lower).toEqual(gauge(verdict.band.lower));
  expect(json.band.upper).toEqual(gauge(verdict.band.upper));
  const { onGauge } = verdict.band;
  const mark = (value: string) => ({ value, unit, basis: 'gauge' });
  expect(json.band.onGauge).toEqual(
    typeof onGauge === 'string' ? onGauge : { lower: mark(onGauge.lower), upper: mark(onGauge.upper) },
  );
  expect(json.offTarget).toEqual('offTarget' in verdict ? off(verdict.offTarget) : undefined);
  expect(json.insideBandBy).toEqual('insideBandBy' in verdict ? off(verdict.insideBandBy) : undefined);
  expect(json.referred).toEqual('referred' in verdict ? gauge(verdict.referred) : undefined);
  const causes = 'causes' in verdict ? verdict.causes.map((code) => ({ code, text: causeText(code) })) : undefined;
  expect(json.causes).toEqual(causes);
  expect(json.stepNeeded).toEqual(
    'stepNeeded' in verdict
      ? { value: verdict.stepNeeded.step, unit: verdict.stepNeeded.unit, basis: 'difference' }
      : undefined,
  );
  const degrees = json.reading.temperature.unit;
  const explaining = 'explainingTemperature' in verdict ? verdict.explainingTemperature : undefined;
  expect(json.explainingTemperature).toEqual(
    typeof explaining === 'object' ? { value: valueIn(explaining, degrees), unit: degrees } : explaining,
  );

  expect(json.charge.action).toBe(charge.action);
  if ('because' in charge) expect(json.charge).toMatchObject({ because: charge.because, why: say(charge) });
  if ('gas' in charge) {
    const { amount, mass, normalVolume, rounded } = charge.gas;
    const { settleMinutes, then, stop } = charge;
    expect(json.charge).toMatchObject({
      gas: {
        amount: { value: amount.moles, unit: 'mol' },
        mass: { value: mass.kilograms, unit: 'kg' },
        normalVolume: {
          value: normalVolume.cubicMetres,
          unit: 'm3',
          at: {
            pressure: { value: 101.325, unit: 'kPa', basis: 'absolute' },
            temperature: { value: 0, unit: '°C' },
          },
        },
        rounded,
      },
      settleMinutes,
      then,
    });
    const stopJson =
      stop.action === 'withheld'
        ? { ...stop, why: say(stop) }
        : {
            action: 'stop',
            pressure: gauge(stop.pressure),
            mark: typeof stop.mark === 'string' ? stop.mark : mark(stop.mark.value),
          };
    expect('stop' in json.charge && json.charge.stop).toEqual(stopJson);
  }
  const usual = report.cautions.slice(-5).map(({ code }) => code);
  expect([...json.cautions, ...usual]).toEqual(cautions.map(({ code }) => code));
}

// With a rule it is `assess` that is asked: tests/record/certainty.test.ts.
// Of a reading that may be a slip the record says more: tests/record/certainty.test.ts.
const withoutRule = changed((round) => {
  delete round.rule;
  for (const { accumulators } of round.groups)
    for (const { visit } of accumulators) for (const one of visit) one.possibleSlip = 'read again and ruled out';
});

describe('says what the core says, in the unit of the gauge', () => {
  const readings = exampleRound().groups.flatMap(({ accumulators }) =>
    accumulators.flatMap(({ name, visit }) =>
      visit.flatMap(({ role }, i) => (role === 'as found' || role === 'as left' ? [[name, role, i] as const] : [])),
    ),
  );

  test('of every reading as found or as left', () => {
    expect(readings).toHaveLength(17);
  });

  test.each(readings)('%s, %s', (name, role, i) => {
    const { asFound, asLeft } = accumulator(name, withoutRule);
    const json = role === 'as found' ? asFound : (asLeft as JudgedReading);
    expectSame(json, ...byHand(exampleRound(), name, i));
  });

  test.each([
    [
      'the stop pressure is above the allowable pressure',
      { stop: { action: 'withheld' } },
      (round: Round) => put(round, ['specifications', 0, 'allowable', 'value'], 153),
    ],
    [
      'the gauge has no mark to stop at',
      { stop: { mark: 'no mark of the gauge to stop at' } },
      (round: Round) => put(round, ['groups', 0, 'gaugeStep', 'value'], 5.15),
    ],
    [
      'the target is above the allowable pressure',
      { action: 'withheld' },
      (round: Round) => put(round, ['specifications', 0, 'allowable', 'value'], 145),
    ],
    [
      'the step of the gauge is in another unit than the reading: its unit counts',
      { stop: { mark: { unit: 'psi' } } },
      (round: Round) => put(round, ['groups', 0, 'gaugeStep'], { value: 20, unit: 'psi', basis: 'difference' }),
    ],
    [
      'no temperature explains the reading',
      { action: 'add' },
      (round: Round) => put(round, ['groups', 0, 'accumulators', 1, 'visit', 0, 'pressure', 'value'], 40),
    ],
  ])('where %s', (_title, charge, change) => {
    const round = exampleRound();
    delete round.rule;
    change(round);
    const { asFound } = accumulator('EV 2', reportRest(round));
    expect(asFound.charge).toMatchObject(charge);
    expectSame(asFound, ...byHand(round, 'EV 2', 0));
  });

  test('which takes every action', () => {
    const actions = report.accumulators.map(({ asFound }) => asFound.charge.action);
    expect(new Set(actions)).toEqual(new Set(['add', 'vent', 'none', 'withheld']));
  });
});

describe('work needed and work done', () => {
  test('work needed is judged on the reading as found, work done on the one as left', () => {
    const { asFound, asLeft, state } = accumulator('EV 2');
    expect(asFound).toMatchObject({ at: '2026-03-14T09:16:00+01:00', outcome: 'undercharged' });
    expect(asFound.reading.pressure.value).toBe(143);
    expect(asLeft).toMatchObject({ at: '2026-03-14T09:52:00+01:00', outcome: 'within' });
    expect(state).toBe('in order');
  });

  test('work that ends without a reading as left is to be read again', () => {
    const after = changed((round) => inRound(round, 'EV 2').visit.pop());
    expect(accumulator('EV 2', after)).toMatchObject({ asLeft: 'not read', state: 'read again' });
    for (const one of report.accumulators) if (one.name !== 'EV 2') expect(one.asLeft).toBe('not read');
  });

  test.each([
    [false, 'work needed'],
    [true, 'in order'],
  ])('an empty gas side that was filled, its cause cleared: %s', (cleared, state) => {
    const filled = changed((round) => {
      inRound(round, 'EV 5').visit.push({
        ...readingOf(round, 'EV 5', 0),
        role: 'as left',
        at: '2026-03-14T10:28:00+01:00',
        pressure: { value: 152, unit: 'bar', basis: 'gauge' },
        minutesAtRest: 10,
        ...(cleared && { emptyGasSide: 'investigated and cleared' }),
      });
    });
    const { asFound, asLeft } = accumulator('EV 5', filled);
    expect([asFound.outcome, (asLeft as JudgedReading).outcome]).toEqual(['gas side empty', 'within']);
    expect(accumulator('EV 5', filled).state).toBe(state);
  });

  test('a reading within its band but above the allowable pressure is not in order', () => {
    const high = changed((round) => put(round, ['specifications', 0, 'allowable', 'value'], 151));
    expect(accumulator('EV 1', high)).toMatchObject({ asFound: { outcome: 'within' }, state: 'work needed' });
  });

  test('readings between do not count', () => {
    const other = changed((round) => {
      readingOf(round, 'EV 2', 1).pressure.value = 10;
      readingOf(round, 'EV 2', 1).gasInside = 'not known';
    });
    expect(judgedOf(other)).toStrictEqual(judgedOf(report));
  });

  test.each([
    ['EV 1', 'within', 'in order'],
    ['FI 2', 'undercharged', 'work needed'],
    ['EV 3', 'overcharged', 'work needed'],
    ['EV 5', 'gas side empty', 'work needed'],
    ['EV 6', 'gas not known', 'read again'],
    ['EV 8', 'not comparable', 'read again'],
    ['FI 4', 'gauge too coarse', 'read again'],
  ])('%s, found %s: %s', (name, outcome, state) => {
    expect(accumulator(name)).toMatchObject({ asFound: { outcome }, state });
  });

  test('a bad reading as left is not excused by a good one as found', () => {
    const other = changed((round) => {
      readingOf(round, 'EV 2', 0).pressure.value = 152.5;
      readingOf(round, 'EV 2', -1).pressure.value = 143;
    });
    expect(accumulator('EV 2', other)).toMatchObject({
      asFound: { outcome: 'within' },
      asLeft: { outcome: 'undercharged' },
      state: 'work needed',
    });
  });
});

describe('gas to add', () => {
  const adding = report.accumulators.filter(({ asFound }) => asFound.charge.action === 'add');
  const moles = adding.map(({ asFound: { charge } }) => ('gas' in charge ? charge.gas.amount.value : Number.NaN));
  const sum = moles.reduce((a, b) => a + b);

  test('as found is the sum over the accumulators found short of gas', () => {
    expect(adding.length).toBeGreaterThan(2);
    expect(report.gasToAdd.asFound.accumulators).toBe(adding.length);
    expect(report.gasToAdd.asFound.gas?.amount).toEqual({ value: sum, unit: 'mol' });
  });

  test('still to add leaves out what was filled since', () => {
    const still = moles.filter((_, i) => adding[i]?.name !== 'EV 2');
    expect(still).toHaveLength(moles.length - 1);
    const { accumulators, gas } = report.gasToAdd.stillToAdd;
    expect(accumulators).toBe(still.length);
    expect(gas?.amount).toEqual({ value: still.reduce((a, b) => a + b), unit: 'mol' });
  });

  test('in mass, by the molar mass of nitrogen', () => {
    // 2 · 14.0067 g/mol, the abridged standard atomic weight 14.007 of nitrogen (IUPAC 2021; from memory).
    expect(report.gasToAdd.asFound.gas?.mass.value).toBeCloseTo(sum * 2 * 14.007e-3, 4);
  });

  test('is rounded up as a whole, for the order', () => {
    const { mass, normalVolume, rounded } = report.gasToAdd.asFound.gas ?? expect.fail('no gas');
    for (const [exact, text] of [
      [mass.value, rounded.mass],
      [normalVolume.value, rounded.normalVolume],
    ] as const) {
      const people = Number.parseFloat(text);
      expect(people).toBeGreaterThanOrEqual(exact);
      expect(people).toBeLessThan(exact + 0.001);
    }
  });

  test('is none where none is short', () => {
    const none = changed((round) => {
      for (const group of round.groups) {
        group.accumulators = group.accumulators.filter(({ name }) => !adding.some((one) => one.name === name));
      }
    });
    expect(none.gasToAdd).toStrictEqual({ asFound: { accumulators: 0 }, stillToAdd: { accumulators: 0 } });
  });
});

describe('what a group states once', () => {
  test('holds for the readings that do not state their own, and the report says so', () => {
    const forGroup = 'for the group';
    const forReading = 'for the reading';
    expect(accumulator('FI 1').asFound.reading).toMatchObject({
      temperature: { value: 36, unit: '°C' },
      ambient: { value: 1008, unit: 'hPa', basis: 'absolute' },
      gaugeStep: { value: '0.1', unit: 'MPa', basis: 'difference' },
      stated: { temperature: forGroup, ambient: forGroup, gaugeStep: forGroup },
    });
    expect(accumulator('FI 3').asFound.reading).toMatchObject({
      temperature: { value: 37 },
      stated: { temperature: forReading, ambient: forGroup, gaugeStep: forGroup },
    });
    expect(accumulator('EV 7').asFound.reading).toMatchObject({
      gaugeStep: { value: 20, unit: 'psi' },
      stated: { temperature: forReading, ambient: forGroup, gaugeStep: forReading },
    });
  });

  test('means the same as if every reading stated it', () => {
    const once = exampleRound();
    for (const group of once.groups) {
      const { temperature, ambient, gaugeStep, accumulators } = group;
      for (const reading of accumulators.flatMap(({ visit }) => visit)) {
        if (temperature !== undefined) reading.temperature ??= temperature;
        if (ambient !== undefined) reading.ambient ??= ambient;
        if (gaugeStep !== undefined) reading.gaugeStep ??= gaugeStep;
      }
    }
    const each = reportRest(once);
    expect(each).not.toEqual(report);
    expect(withoutStated(each)).toEqual(withoutStated(report));
  });

  test('a reading’s own ambient counts for that reading, as left or as found', () => {
    const other = changed((round) => {
      readingOf(round, 'EV 2', -1).ambient = { value: 980, unit: 'hPa', basis: 'absolute' };
    });
    const [before, after] = [accumulator('EV 2'), accumulator('EV 2', other)];
    expect(after.asFound).toEqual(before.asFound);
    // 28 hPa less ambient: the gauge shows 0.028 bar more.
    const target = ({ asLeft }: typeof before) => Number((asLeft as JudgedReading).target.value);
    expect(target(after) - target(before)).toBeCloseTo(0.028, 9);
  });
});

function withoutStated(from: RoundReport): unknown {
  return JSON.parse(JSON.stringify(judgedOf(from), (key, value: unknown) => (key === 'stated' ? undefined : value)));
}

describe('spelling and order of the input', () => {
  /** A copy with every decimal as text, or as a number where that is the same decimal. */
  const spelt = (json: unknown, as: (value: unknown) => unknown): unknown =>
    JSON.parse(JSON.stringify(json, (key, value: unknown) => (key === 'value' ? as(value) : value)));

  test('numbers and decimal texts give the same report', () => {
    const texts = reportRest(spelt(exampleRound(), String));
    const numbers = reportRest(spelt(exampleRound(), Number));
    // The reading itself goes out as it was given.
    expect(accumulator('FI 1', texts).asFound.reading.pressure.value).toBe('10.1');
    expect(accumulator('FI 1', numbers).asFound.reading.pressure.value).toBe(10.1);
    expect(spelt(judgedOf(texts), Number)).toEqual(spelt(judgedOf(numbers), Number));
    expect(spelt(judgedOf(texts), Number)).toEqual(spelt(judgedOf(report), Number));
    expect(texts.digest).not.toBe(numbers.digest);
  });

  test('a number of which no double holds the pascals is named where it stands, with its unit', () => {
    const tooLarge = changed((round) => {
      put(round, ['groups', 0, 'accumulators', 0, 'visit', 0, 'pressure', 'value'], 1e308);
      put(round, ['groups', 0, 'accumulators', 6, 'visit', 0, 'gaugeStep', 'value'], 1e308);
      put(round, ['safety', 'leakTest', 'gaugeStep', 'value'], 1e308);
    });
    expect(tooLarge.problems.map(({ code, path, found }) => [code, path, found])).toEqual([
      ['beyond double', '$.safety.leakTest.gaugeStep.value', '1e+308 bar'],
      ['beyond double', '$.groups[0].accumulators[0].visit[0].pressure.value', '1e+308 bar'],
      ['beyond double', '$.groups[0].accumulators[6].visit[0].gaugeStep.value', '1e+308 psi'],
    ]);
  });

  test('the order of properties says nothing', () => {
    const turned = (json: unknown): unknown => {
      if (Array.isArray(json)) return json.map(turned);
      if (typeof json !== 'object' || json === null) return json;
      return Object.fromEntries(
        Object.entries(json)
          .reverse()
          .map(([key, value]) => [key, turned(value)]),
      );
    };
    expect(reportRest(turned(exampleRound()))).toEqual(report);
  });

  test('the input is left as it was, and may be frozen', () => {
    const round = exampleRound();
    for (const { value } of nodesOf(round)) Object.freeze(value);
    expect(reportRest(round)).toEqual(report);
    const thawed = exampleRound();
    reportRest(thawed);
    expect(thawed).toStrictEqual(exampleRound());
  });

  test('a title is not needed', () => {
    const untitled = changed((round) => {
      delete round.title;
    });
    expect(Object.hasOwn(untitled, 'title')).toBe(false);
    expect(untitled.complete).toBe('complete');
  });

  test('a round of nothing is complete and empty', () => {
    const empty = reportRest({ version: 1, specifications: [], groups: [] });
    expectSound(empty);
    expect(empty).toMatchObject({ complete: 'complete', accumulators: [], counts: {} });
    expect(empty.gasToAdd).toStrictEqual({ asFound: { accumulators: 0 }, stillToAdd: { accumulators: 0 } });
    expect(empty.cautions).toHaveLength(5);
  });
});

describe('cautions', () => {
  const codes = (from: RoundReport): string[] => from.cautions.map(({ code }) => code);

  test('the usual ones stand in every report, with their words', () => {
    expect(codes(report).slice(-5)).toEqual([
      'secure and drain',
      'nitrogen only',
      'stored pressure',
      'asphyxiation',
      'maker decides',
    ]);
    for (const { text } of report.cautions) expect(text.length).toBeGreaterThan(40);
  });

  test('those of single accumulators are named there and spelt out once', () => {
    const named = report.accumulators.flatMap(({ asFound, asLeft }) =>
      asLeft === 'not read' ? asFound.cautions : [...asFound.cautions, ...asLeft.cautions],
    );
    expect(named).toContain('empty gas side');
    expect(named.filter((code) => code === 'not comparable').length).toBeGreaterThan(1);
    const alone = changed((round) => {
      delete round.supply;
      delete round.safety;
    });
    expect(codes(alone).slice(0, -5).sort()).toEqual([...new Set(named)].sort());
    expect(codes(report)).toEqual(expect.arrayContaining(codes(alone)));
  });

  test('a danger found only in the reading as left is spelt out too', () => {
    // Alone, so that no other has it.
    const high = changed((round) => {
      readingOf(round, 'EV 2', -1).pressure.value = 211;
      const [group] = round.groups;
      round.groups = group === undefined ? [] : [{ ...group, accumulators: [inRound(round, 'EV 2').accumulator] }];
    });
    const danger = 'reading above the allowable pressure';
    expect(accumulator('EV 2').asFound.cautions).not.toContain(danger);
    expect((accumulator('EV 2', high).asLeft as JudgedReading).cautions).toContain(danger);
    expect(high.cautions.find(({ code }) => code === danger)?.severity).toBe('danger');
  });
});

test('a round without a rule has no decisions, and no terms to explain', () => {
  const bare = changed((round) => {
    delete round.rule;
  });
  expect(['rule', 'decisions', 'terms'].filter((field) => Object.hasOwn(bare, field))).toEqual([]);
  expect(['rule', 'decisions', 'terms'].filter((field) => Object.hasOwn(report, field))).toHaveLength(3);
});

test('that one gauge reads all of it off is a caution of the round', () => {
  const off = changed((round) => {
    const [group] = round.groups;
    const one = inRound(round, 'EV 1').accumulator;
    const reading = readingOf(round, 'EV 1', 0);
    const of = (bar: number, i: number) => {
      const pressure = { ...reading.pressure, value: bar };
      return { ...one, name: `EV ${i}`, visit: [{ ...reading, pressure }] };
    };
    const accumulators = [155, 156, 155, 156, 156, 155, 155, 156, 155, 156].map(of);
    round.groups = group === undefined ? [] : [{ ...group, accumulators }];
  });
  expect(off.together?.map(({ outcome }) => outcome)).toEqual(['common shift']);
  const cautions = ({ cautions }: RoundReport) => cautions.map(({ code }) => code);
  expect(cautions(off)).toContain('common shift');
  expect(cautions(report)).not.toContain('common shift');
});

const COUNTS = [
  ...['version', 'problemsFound', 'accumulators', 'readings', 'leftOut', 'needed', 'explains'],
  ...['reached', 'bound', 'gap', 'order'],
];
// The number that somebody wrote down, with both units that it may have, beside it.
const SLIPPED = 'number';
const BARE = ['coverage', 'share', 'accuracyClass', 'coverageFactor', 'percentOfSpanPerKelvin', 'fraction'];

test('every pressure in the report carries value, unit and basis', () => {
  const pressureUnits = ['Pa', 'hPa', 'kPa', 'MPa', 'bar', 'psi', 'kgf/cm2'];
  const pressures = nodesOf(report).filter(
    ({ value }) =>
      typeof value === 'object' && value !== null && 'unit' in value && pressureUnits.includes(String(value.unit)),
  );
  expect(pressures.length).toBeGreaterThan(100);
  for (const { value } of pressures) {
    expect(Object.keys(value as object).sort()).toEqual(['basis', 'unit', 'value']);
    expect(['gauge', 'absolute', 'difference']).toContain((value as { basis: unknown }).basis);
  }
  // And no number stands without a unit beside it, but for counts, the version and minutes.
  for (const { keys, value } of nodesOf(judgedOf(report))) {
    if (typeof value !== 'number') continue;
    const last = String(keys.at(-1));
    const isCount = ['counts', 'decisions'].includes(String(keys[0])) || COUNTS.includes(last);
    // A probability, a share of a variance, a fraction left, a class and a per cent have no unit.
    const isBare =
      ['probability', 'adjusting', 'risk', 'left'].includes(String(keys.at(-2))) || [...BARE, SLIPPED].includes(last);
    if (!isCount && !isBare)
      expect([
        'value',
        'minutesAtRest',
        'settleMinutes',
        'runningHours',
        'minutesToLimit',
        'minutesApart',
        'fillings',
      ]).toContain(last);
  }
});

test('a tolerance as a percentage is taken', () => {
  const percent = changed((round) => {
    put(round, ['specifications', 0, 'tolerance'], {
      plusMinusPercentOfGauge: 10,
      applies: 'at the measured temperature',
    });
  });
  expect(percent.problems).toEqual([]);
  const { target, band } = accumulator('EV 1', percent).asFound;
  expect(Number(band.upper.value) / Number(target.value)).toBeCloseTo(1.1, 9);
  expect(Number(band.lower.value) / Number(target.value)).toBeCloseTo(0.9, 9);
});
