import { describe, expect, test } from 'vitest';
import { reportRound, RoundReportShape, RoundShape } from 'isochore/record';

// An invented table of two columns, printed to 0.5 bar; only the shape of the job is real.
const gaugeBar = (value: number) => ({ value, unit: 'bar', basis: 'gauge' });
const celsius = (value: number) => ({ value, unit: '°C' });
const apart = (value: number) => ({ value, unit: 'bar', basis: 'difference' });
const ambient = { value: 1013.25, unit: 'hPa', basis: 'absolute' };

function table() {
  return {
    name: 'sheet 1',
    ambient,
    referenceTemperature: celsius(20),
    printedStep: apart(0.5),
    outside: 'refuse' as string,
    columns: ['type A', 'type B'],
    rows: [
      { temperature: celsius(0), pressures: [gaugeBar(127.5), gaugeBar(91)] },
      { temperature: celsius(20), pressures: [gaugeBar(140), gaugeBar(100)] },
      { temperature: celsius(40), pressures: [gaugeBar(152.5), gaugeBar(109)] },
    ],
  };
}

function reading(role: string, minute: number, bar: number, degrees: number, minutesAtRest = 30) {
  return {
    role,
    at: `2026-03-14T09:${String(minute).padStart(2, '0')}:00Z`,
    pressure: gaugeBar(bar),
    temperature: celsius(degrees),
    ambient,
    gaugeStep: apart(1),
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest,
  };
}

function specificationOf(column: string) {
  return {
    name: column,
    gas: 'nitrogen',
    precharge: { table: 'sheet 1', column } as Record<string, unknown>,
    ambient,
    tolerance: { plusMinus: apart(2), applies: 'at the measured temperature' } as Record<string, unknown>,
    separator: 'bladder',
    gasVolume: { value: 5, unit: 'L' },
    allowable: gaugeBar(210),
    settling: { allowance: apart(1.5), minutes: 5 },
  };
}

function round() {
  return {
    version: 1,
    tables: [table()],
    specifications: [specificationOf('type A'), specificationOf('type B')] as Record<string, unknown>[],
    groups: [
      {
        name: 'all',
        specification: 'type A',
        accumulators: [
          { name: '1', visit: [reading('as found', 10, 146, 30)] },
          { name: '2', specification: 'type B', visit: [reading('as found', 12, 104, 30)] },
        ] as { name: string; specification?: string; visit: unknown[] }[],
      },
    ],
  };
}

const rest = (json: unknown) => reportRound(json, { problems: 'report the rest' });
const said = (json: unknown) => rest(json).problems.map(({ code, path }) => `${code} ${path}`);
/** The same, with what was found and the values of what is wanted. */
const told = (json: unknown) =>
  rest(json).problems.map(({ code, path, found, values }) => `${code} ${path}: ${found} ${JSON.stringify(values)}`);

describe('a maker’s table in a document', () => {
  test('is the target, by the column that the specification names, linear between its rows', () => {
    const report = rest(round());
    expect(report.problems).toEqual([]);
    expect(RoundShape.safeParse(round()).success).toBe(true);
    expect(RoundReportShape.safeParse(report).error?.issues ?? []).toEqual([]);
    const [one, two] = report.accumulators;
    // Halfway between 140 and 152.5, and between 100 and 109.
    expect(one?.asFound.target).toEqual(gaugeBar(146.25));
    expect(two?.asFound.target).toEqual(gaugeBar(104.5));
  });

  test('an accumulator may follow another specification than its group, and the report says which', () => {
    expect(rest(round()).accumulators.map(({ specification }) => specification)).toEqual(['type A', 'type B']);
    const json = round();
    json.groups[0]?.accumulators.splice(1, 1, {
      name: '2',
      specification: 'type C',
      visit: [reading('as found', 12, 104, 30)],
    });
    expect(said(json)).toEqual(['unknown specification $.groups[0].accumulators[1].specification']);
  });

  test('the report names the rows that were used', () => {
    expect(rest(round()).accumulators[0]?.asFound.targetFrom).toEqual({
      by: 'table',
      rows: [
        { temperature: celsius(20), pressure: gaugeBar(140) },
        { temperature: celsius(40), pressure: gaugeBar(152.5) },
      ],
    });
  });

  test('beyond its rows it refuses, or follows constant density if it says so', () => {
    const beyond = (outside: string) => {
      const json = round();
      json.tables[0] = { ...table(), outside };
      json.groups[0]?.accumulators.splice(0, 2, { name: '1', visit: [reading('as found', 10, 160, 55)] });
      return rest(json);
    };
    expect(beyond('refuse').problems.map(({ code }) => code)).toEqual(['outside the table']);
    expect(beyond('refuse').complete).toBe('partial');
    expect(beyond('follow constant density').accumulators[0]?.asFound.targetFrom.by).toBe(
      'constant density from the nearest row',
    );
  });

  test('where it refuses the reading as left, the accumulator is not judged, and the place is that of the reading', () => {
    const json = round();
    json.groups[0]?.accumulators.splice(0, 2, {
      name: '1',
      visit: [reading('as found', 10, 146, 30), reading('settled', 20, 146, 30), reading('as left', 30, 160, 55)],
    });
    expect(said(json)).toEqual(['outside the table $.groups[0].accumulators[0].visit[2].temperature']);
    expect(rest(json)).toMatchObject({ accumulators: [], notJudged: [{ name: '1' }] });
  });

  test('limits may be columns, and the band after charging another one', () => {
    const json = round();
    const limits = {
      minimum: { pressure: gaugeBar(130), temperature: celsius(20) },
      maximum: { table: 'sheet 1', column: 'type A' },
    };
    json.specifications[0] = {
      ...specificationOf('type A'),
      tolerance: limits,
      toleranceAfterCharging: { plusMinus: apart(0.5), applies: 'at the measured temperature' },
    };
    json.groups[0]?.accumulators.splice(0, 2, {
      name: '1',
      visit: [
        reading('as found', 10, 120, 20),
        reading('after filling', 20, 142, 21, 1),
        reading('as left', 40, 138, 20, 20),
      ],
    });
    const report = rest(json);
    expect(report.problems).toEqual([]);
    const [one] = report.accumulators;
    expect(one?.asFound.band.upper).toEqual(gaugeBar(140));
    expect(one?.asFound.outcome).toBe('undercharged');
    // 138 bar would do in service; after charging 139.5 is the least.
    expect(one?.asLeft !== 'not read' && one?.asLeft.band.lower).toEqual(gaugeBar(139.5));
    expect(one?.asLeft !== 'not read' && one?.asLeft.outcome).toBe('undercharged');
  });

  test('the band after charging holds for a reading as left only where gas was missing, or was moved', () => {
    const visit = (...roles: (readonly [string, number])[]) => {
      const json = round();
      json.specifications[0] = {
        ...specificationOf('type A'),
        toleranceAfterCharging: { plusMinus: apart(0.5), applies: 'at the measured temperature' },
      };
      json.groups[0]?.accumulators.splice(0, 2, {
        name: '1',
        visit: roles.map(([role, bar], i) => reading(role, 10 + 20 * i, bar, 20, i === 0 ? 30 : 15)),
      });
      const [one] = rest(json).accumulators;
      return one?.asLeft === 'not read' ? undefined : one?.asLeft.band.lower;
    };
    expect(visit(['as found', 139], ['as left', 139])).toEqual(gaugeBar(138));
    expect(visit(['as found', 130], ['as left', 139])).toEqual(gaugeBar(139.5));
    expect(visit(['as found', 139], ['after filling', 141], ['as left', 140])).toEqual(gaugeBar(139.5));
  });

  test('gas that was missing and is there has moved: it cannot have rested longer than since; any other can', () => {
    const rested = (found: number, left: number, minutes: number) => {
      const json = round();
      json.groups[0]?.accumulators.splice(0, 2, {
        name: '1',
        visit: [reading('as found', 10, found, 20, 100), reading('as left', 30, left, 20, minutes)],
      });
      return told(json);
    };
    expect(rested(130, 140, 20)).toEqual([]);
    expect(rested(130, 140, 20.1)).toEqual([
      'rest contradicts readings $.groups[0].accumulators[0].visit[1].minutesAtRest: 20.1 min {"most":"20"}',
    ]);
    expect(rested(140, 140, 100)).toEqual([]);
    expect(rested(130, 130, 100)).toEqual([]);
    expect(rested(140, 130, 100)).toEqual([]);
  });

  test('a nominal point that disagrees with the table is a caution', () => {
    const json = round();
    json.specifications[0] = {
      ...specificationOf('type A'),
      nominal: { pressure: gaugeBar(150), temperature: celsius(20) },
    };
    expect(rest(json).accumulators[0]?.asFound.cautions).toContain('table and nominal point disagree');
  });
});

describe('what is wrong with a table is said once, with its place', () => {
  const broken = (change: (t: ReturnType<typeof table>) => void): string[] => {
    const json = round();
    const changed = table();
    change(changed);
    json.tables[0] = changed;
    return told(json);
  };
  test.each<[string, (t: ReturnType<typeof table>) => void, string]>([
    [
      'unsorted',
      (t) => t.rows.splice(0, 2, ...t.rows.slice(0, 2).reverse()),
      'rows out of order $.tables[0].rows[1].temperature: 0 °C after 20 °C {}',
    ],
    [
      'a temperature twice',
      (t) => (t.rows[1] = { ...t.rows[1], temperature: celsius(0), pressures: t.rows[1]?.pressures ?? [] }),
      'rows out of order $.tables[0].rows[1].temperature: 0 °C after 0 °C {}',
    ],
    [
      'a pressure that falls',
      (t) => (t.rows[2] = { temperature: celsius(40), pressures: [gaugeBar(139), gaugeBar(109)] }),
      'rows out of order $.tables[0].rows[2].pressures[0]: 139 bar gauge after 140 bar gauge {}',
    ],
    ['one row', (t) => t.rows.splice(1), 'too short $.tables[0].rows: an array {"least":"2","what":"entries"}'],
    [
      'mixed units',
      (t) => (t.rows[1] = { temperature: celsius(20), pressures: [{ ...gaugeBar(14), unit: 'MPa' }, gaugeBar(100)] }),
      'mixed units $.tables[0].rows[1].pressures[0].unit: "MPa" {"first":"\\"bar\\""}',
    ],
    [
      'a cell left out',
      (t) => t.rows[1]?.pressures.pop(),
      'cells left out $.tables[0].rows[1].pressures: 1 pressures {"count":"2","other":"column"}',
    ],
    [
      'two columns of one name',
      (t) => (t.columns = ['type A', 'type A']),
      'duplicate name $.tables[0].columns[1]: "type A" {"what":"column"}',
    ],
    [
      'a reference temperature outside',
      (t) => (t.referenceTemperature = celsius(50)),
      'reference outside the table $.tables[0].referenceTemperature: 50 °C {"first":"0 °C","last":"40 °C"}',
    ],
    [
      'a printed step of zero',
      (t) => (t.printedStep = apart(0)),
      'not positive $.tables[0].printedStep: 0 bar difference {}',
    ],
    ['a row that is none', (t) => t.rows.splice(1, 1, null as never), 'not an object $.tables[0].rows[1]: null {}'],
    [
      'a column whose name is none',
      (t) => t.columns.splice(1, 1, 5 as never),
      'not a text $.tables[0].columns[1]: 5 {}',
    ],
    ['no column', (t) => t.columns.splice(0), 'too short $.tables[0].columns: an array {"least":"1","what":"entry"}'],
    ['no row', (t) => t.rows.splice(0), 'too short $.tables[0].rows: an array {"least":"2","what":"entries"}'],
    [
      'a decimal comma in a temperature',
      (t) => t.rows[1]?.temperature && (t.rows[1].temperature.value = '20,5' as never),
      'not a decimal $.tables[0].rows[1].temperature.value: "20,5" {"most":"40"}',
    ],
    [
      'a decimal comma in a pressure',
      (t) => t.rows[1]?.pressures[1] && (t.rows[1].pressures[1].value = '100,5' as never),
      'not a decimal $.tables[0].rows[1].pressures[1].value: "100,5" {"most":"40"}',
    ],
    [
      'temperatures in two units',
      (t) => t.rows[2]?.temperature && (t.rows[2].temperature = { value: 313.15, unit: 'K' }),
      'mixed units $.tables[0].rows[2].temperature.unit: "K" {"first":"\\"°C\\""}',
    ],
    [
      'a pressure that falls in the twelfth row',
      (t) =>
        (t.rows = Array.from({ length: 12 }, (_, i) => ({
          temperature: celsius(10 * i),
          pressures: [gaugeBar(100 + i), gaugeBar(i === 11 ? 90 : 90 + i)],
        }))),
      'rows out of order $.tables[0].rows[11].pressures[1]: 90 bar gauge after 100 bar gauge {}',
    ],
    [
      'an unknown word for outside',
      (t) => (t.outside = 'clamp'),
      'unknown word $.tables[0].outside: "clamp" {"words":"\\"refuse\\" or \\"follow constant density\\""}',
    ],
  ])('%s', (_title, change, problem) => {
    expect(broken(change)).toEqual([problem]);
  });

  const point = { pressure: gaugeBar(140), temperature: celsius(20) };
  const column = { table: 'sheet 1', column: 'type A' };
  const applies = 'at the measured temperature';
  test.each<[string, Record<string, unknown>]>([
    ['its pre-charge', {}],
    ['its pre-charge, beside a nominal point', { nominal: point }],
    ['its nominal point', { precharge: { table: 'sheet 2', column: 'type A' }, nominal: column }],
    ['a limit', { precharge: point, tolerance: { minimum: column, maximum: point } }],
    ['both limits', { precharge: point, tolerance: { minimum: column, maximum: column } }],
    [
      'limits after charging',
      { precharge: point, tolerance: { plusMinus: apart(2), applies }, toleranceAfterCharging: { minimum: column, maximum: column } },
    ], // prettier-ignore
  ])('and no more of a specification that uses it for %s, of which no accumulator is judged', (_title, stated) => {
    const json = round();
    json.tables.push({ ...table(), name: 'sheet 2' });
    json.tables[0] = { ...table(), outside: 'clamp' };
    json.specifications = [
      { ...specificationOf('type A'), ...stated },
      { ...specificationOf('type B'), precharge: point },
    ];
    expect(said(json)).toEqual(['unknown word $.tables[0].outside']);
    expect(rest(json).notJudged.map(({ name }) => name)).toEqual(['1']);
    expect(rest(json).accumulators.map(({ name }) => name)).toEqual(['2']);
    expect(rest(json).complete).toBe('partial');
  });

  test.each([[5], [{}], [null], ['sheet 1']])(
    'nor of one that uses a table, where %j stands in place of all tables',
    (tables) => {
      const json = { ...round(), tables };
      expect(said(json)).toEqual(['not a list $.tables']);
      expect(rest(json).notJudged).toHaveLength(2);
    },
  );

  test('two things that are wrong with it as a whole are both said', () => {
    const json = round();
    json.tables[0] = { ...table(), printedStep: apart(0), referenceTemperature: celsius(50) };
    expect(said(json).sort()).toEqual([
      'not positive $.tables[0].printedStep',
      'reference outside the table $.tables[0].referenceTemperature',
    ]);
  });

  test('nor does it hide what else is wrong with a specification that uses it', () => {
    const json = round();
    json.tables[0] = { ...table(), outside: 'clamp' };
    json.specifications[0] = { ...specificationOf('type A'), gasVolume: { value: 0, unit: 'L' } };
    expect(said(json)).toEqual(['unknown word $.tables[0].outside', 'not positive $.specifications[0].gasVolume']);
  });

  test('nor is a name that two tables share unknown: each of the two is said to share it', () => {
    const json = round();
    json.tables.push(table());
    expect(said(json)).toEqual(['duplicate name $.tables[0].name', 'duplicate name $.tables[1].name']);
    expect(rest(json).problems.map(({ values }) => values['what'])).toEqual(['table', 'table']);
    expect(rest(json).notJudged).toHaveLength(2);
  });
});

describe('what a specification states is a point or a column', () => {
  test.each([
    [
      'a table without a column',
      { table: 'sheet 1' },
      'neither point nor table $.specifications[0].precharge: table {}',
    ],
    [
      'a point and a table',
      { pressure: gaugeBar(140), temperature: celsius(20), table: 'sheet 1', column: 'type A' },
      'neither point nor table $.specifications[0].precharge: pressure with temperature with table with column {}',
    ],
    ['nothing', {}, 'neither point nor table $.specifications[0].precharge: nothing {}'],
    [
      'a pressure alone',
      { pressure: gaugeBar(140) },
      'neither point nor table $.specifications[0].precharge: pressure {}',
    ],
    [
      'an unknown table',
      { table: 'sheet 2', column: 'type A' },
      'unknown table $.specifications[0].precharge.table: "sheet 2" {}',
    ],
    [
      'an unknown column',
      { table: 'sheet 1', column: 'type C' },
      'unknown column $.specifications[0].precharge.column: "type C" {"columns":"\\"type A\\", \\"type B\\""}',
    ],
  ])('%s', (_title, precharge, problem) => {
    const json = round();
    json.specifications[0] = { ...specificationOf('type A'), precharge };
    expect(told(json)).toEqual([problem]);
  });

  test('each limit by itself: two that are not sound are still limits, and no tolerance is asked for', () => {
    const json = round();
    const limit = { pressure: { ...gaugeBar(138), unit: 'barg' }, temperature: celsius(20) };
    json.specifications[0] = { ...specificationOf('type A'), tolerance: { minimum: limit, maximum: limit } };
    expect(said(json)).toEqual([
      'unknown unit $.specifications[0].tolerance.minimum.pressure.unit',
      'unknown unit $.specifications[0].tolerance.maximum.pressure.unit',
    ]);
  });

  test('whose printed step is that of its table, where it has one', () => {
    const printedAs = (pressure: unknown) => {
      const json = round();
      const ambientLimit = { value: 30, unit: 'hPa', basis: 'difference' };
      const temperature = { value: 0, unit: 'K', basis: 'difference' };
      json.specifications[0] = { ...specificationOf('type A'), printed: { pressure, temperature, ambientLimit } };
      return told(json);
    };
    expect(printedAs('as the table states')).toEqual([]);
    expect(printedAs(apart(0.5))).toEqual([
      `unknown word $.specifications[0].printed.pressure: an object {"words":"'as the table states'"}`,
    ]);
  });

  test('at one ambient with its table', () => {
    const json = round();
    json.specifications[0] = { ...specificationOf('type A'), ambient: { ...ambient, value: 1000 } };
    expect(told(json)).toEqual([
      'other ambient $.specifications[0].precharge.table: 1013.25 hPa absolute with table sheet 1 {"ambient":"1000"}',
    ]);
  });

  test('of an ambient that is not sound, nothing more is said', () => {
    const json = round();
    json.specifications[0] = { ...specificationOf('type A'), ambient: { ...ambient, unit: 'mbar' } };
    expect(said(json)).toEqual(['unknown unit $.specifications[0].ambient.unit']);
  });
});
