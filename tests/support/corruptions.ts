// One thing wrong with the round of the examples, and what must be said about it.
import type { ProblemCode } from 'isochore';
import { NOTHING } from './round.js';

/** What a problem says, but for its words. */
export interface Said {
  readonly code: ProblemCode;
  readonly path: string;
  readonly about?: string;
}

export interface Corruption {
  readonly title: string;
  /** What is put in which place. */
  readonly puts: readonly (readonly [path: string, value: unknown])[];
  readonly said: readonly Said[];
  /** Paths of the accumulators that cannot be judged any more: these and no others. */
  readonly notJudged: readonly string[];
}

/** Path of the n-th accumulator of the exhaust valves, counted from 1 as in its name. */
export const ev = (n: number): string => `$.groups[0].accumulators[${n - 1}]`;
/** Path of the n-th accumulator of the fuel injection. */
export const fi = (n: number): string => `$.groups[1].accumulators[${n - 1}]`;

const EIGHT = [1, 2, 3, 4, 5, 6, 7, 8];
export const EVERY_EV = EIGHT.map(ev);
export const EVERY_FI = EIGHT.map(fi);
const DRIVE = 'exhaust valve drive';
const INJECTION = 'fuel injection drive';
const EVS = 'Exhaust valves';
const FIS = 'Fuel injection';
/** Which injection accumulators take temperature, or gauge step, from their group: the others state their own. */
const FI_GROUP_TEMPERATURE = [1, 2, 5, 6, 8];
const FI_GROUP_STEP = [1, 2, 3, 6, 7, 8];

const withUnit = (value: unknown, unit: string, basis?: string): unknown => ({ value, unit, ...(basis && { basis }) });

/** Something wrong with one place of the reading as found of an accumulator: it alone is not judged. */
function reading(
  title: string,
  which: 'EV' | 'FI',
  n: number,
  place: string,
  value: unknown,
  code: ProblemCode,
  said = place,
): Corruption {
  const path = which === 'EV' ? ev(n) : fi(n);
  return {
    title,
    puts: [[`${path}.visit[0].${place}`, value]],
    said: [{ code, path: `${path}.visit[0].${said}`, about: `${which} ${n}` }],
    notJudged: [path],
  };
}

/** Something wrong with one place of a specification: no accumulator of it is judged. */
function spec(title: string, i: 0 | 1, place: string, value: unknown, code: ProblemCode, said = place): Corruption {
  return {
    title,
    puts: [[`$.specifications[${i}].${place}`, value]],
    said: [{ code, path: `$.specifications[${i}].${said}`, about: i === 0 ? DRIVE : INJECTION }],
    notJudged: i === 0 ? EVERY_EV : EVERY_FI,
  };
}

/** Something wrong with one place of a group, said once, with the group. */
function group(
  title: string,
  i: 0 | 1,
  place: string,
  value: unknown,
  code: ProblemCode,
  notJudged: readonly string[],
  said = place,
): Corruption {
  return {
    title,
    puts: [[`$.groups[${i}].${place}`, value]],
    said: [{ code, path: `$.groups[${i}].${said}`, about: i === 0 ? EVS : FIS }],
    notJudged,
  };
}

function visit(
  title: string,
  puts: Corruption['puts'],
  ...said: readonly (readonly [ProblemCode, string])[]
): Corruption {
  return {
    title,
    puts: puts.map(([place, value]) => [`${ev(2)}.visit${place}`, value]),
    said: said.map(([code, place]) => ({ code, path: `${ev(2)}.visit${place}`, about: 'EV 2' })),
    notJudged: [ev(2)],
  };
}

const BASIS: readonly Corruption[] = [
  reading('reading without basis', 'EV', 1, 'pressure.basis', NOTHING, 'basis missing'),
  reading('reading said to be absolute', 'FI', 1, 'pressure.basis', 'absolute', 'wrong basis'),
  reading('system pressure said to be a difference', 'EV', 4, 'systemPressure.basis', 'difference', 'wrong basis'),
  spec('tolerance without basis', 0, 'tolerance.plusMinus.basis', NOTHING, 'basis missing'),
  spec('tolerance said to be a gauge pressure', 1, 'tolerance.above.basis', 'gauge', 'wrong basis'),
  group('ambient without basis', 0, 'ambient.basis', NOTHING, 'basis missing', EVERY_EV),
  group('ambient said to be a gauge pressure', 1, 'ambient.basis', 'gauge', 'wrong basis', EVERY_FI),
  reading('a basis on a temperature', 'EV', 3, 'temperature.basis', 'absolute', 'unknown field'),
];

const UNITS: readonly Corruption[] = [
  reading('unit with its basis in it', 'EV', 5, 'pressure.unit', 'barg', 'unknown unit'),
  reading('unit in capitals', 'FI', 2, 'pressure.unit', 'MPA', 'unknown unit'),
  reading('temperature unit without its degree', 'EV', 6, 'temperature.unit', 'C', 'unknown unit'),
  spec('litre in small letters', 0, 'gasVolume.unit', 'l', 'unknown unit'),
  spec('unit of another quantity', 1, 'precharge.pressure.unit', 'K', 'unknown unit'),
  group('unit of the group’s gauge step', 1, 'gaugeStep.unit', 'Bar', 'unknown unit', FI_GROUP_STEP.map(fi)),
  group('unit that is no text', 1, 'temperature.unit', 36, 'unknown unit', FI_GROUP_TEMPERATURE.map(fi)),
  {
    title: 'unit missing',
    puts: [[`${ev(8)}.visit[0].pressure.unit`, NOTHING]],
    said: [{ code: 'missing', path: `${ev(8)}.visit[0].pressure.unit`, about: 'EV 8' }],
    notJudged: [ev(8)],
  },
];

const DECIMALS: readonly Corruption[] = [
  ...['141,3', '', 'NaN', 'Infinity', '0x10', ' 1 ', '.5', '5.', '1_000', '1.413.0', '１４１', '+-1', '1e', 'text'].map(
    (text) => reading(`the text ${JSON.stringify(text)}`, 'EV', 1, 'pressure.value', text, 'not a decimal'),
  ),
  reading('a text beyond every double', 'EV', 1, 'pressure.value', '1e999', 'beyond double'),
  reading('a text too long to be a reading', 'FI', 7, 'temperature.value', '1'.repeat(41), 'not a decimal'),
  group('decimal comma in a group', 1, 'temperature.value', '36,5', 'not a decimal', FI_GROUP_TEMPERATURE.map(fi)),
  group('decimal comma in a gauge step', 1, 'gaugeStep.value', '0,1', 'not a decimal', FI_GROUP_STEP.map(fi)),
  spec('decimal comma in a volume', 1, 'gasVolume.value', '1,6', 'not a decimal'),
  ...[Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY].flatMap((value) => [
    reading(`the number ${value}`, 'EV', 3, 'pressure.value', value, 'not a number'),
    reading(`${value} minutes at rest`, 'EV', 3, 'minutesAtRest', value, 'not a number'),
    spec(`the number ${value} in a specification`, 0, 'allowable.value', value, 'not a number'),
    spec(`${value} minutes of settling`, 0, 'settling.minutes', value, 'not a number'),
    group(`the number ${value} in a group`, 0, 'gaugeStep.value', value, 'not a number', [1, 2, 3, 4, 5, 6, 8].map(ev)),
  ]),
  reading('a value that is a boolean', 'EV', 6, 'pressure.value', true, 'wrong shape'),
];

const PHYSICS: readonly Corruption[] = [
  reading('below absolute zero', 'EV', 1, 'temperature.value', -273.16, 'below absolute zero', 'temperature.value'),
  reading('below absolute zero, in °F', 'EV', 7, 'temperature.value', '-459.68', 'below absolute zero'),
  group('below absolute zero, once', 1, 'temperature.value', -300, 'below absolute zero', FI_GROUP_TEMPERATURE.map(fi)),
  reading(
    'gauge pressure below minus the ambient',
    'EV',
    3,
    'pressure.value',
    -1.009,
    'gauge below vacuum',
    'pressure',
  ),
  reading('negative ambient', 'EV', 5, 'ambient', withUnit(-1, 'hPa', 'absolute'), 'below vacuum', 'ambient.value'),
  reading('colder than the model', 'EV', 1, 'temperature.value', -215, 'outside the model', 'temperature'),
  group(
    'colder than the model, once',
    1,
    'temperature.value',
    -215,
    'outside the model',
    FI_GROUP_TEMPERATURE.map(fi),
    'temperature',
  ),
  spec(
    'reference point colder than the model',
    0,
    'precharge.temperature.value',
    -215,
    'outside the model',
    'precharge',
  ),
  reading('so cold that nitrogen is liquid', 'EV', 1, 'temperature.value', -150, 'liquid', 'pressure'),
  reading(
    'ambient in the wrong unit',
    'EV',
    2,
    'ambient',
    withUnit(1008, 'kPa', 'absolute'),
    'not an ambient pressure',
    'ambient',
  ),
  group('ambient in the wrong unit, once', 0, 'ambient.unit', 'kPa', 'not an ambient pressure', EVERY_EV, 'ambient'),
  spec('ambient of the manual in the wrong unit', 1, 'ambient.unit', 'bar', 'not an ambient pressure', 'ambient'),
  spec('reference pressure above the allowable', 0, 'allowable.value', 139.9, 'above allowable', 'precharge.pressure'),
  spec('no volume', 0, 'gasVolume.value', 0, 'not positive', 'gasVolume'),
  spec('negative volume', 1, 'gasVolume.value', -1.6, 'negative'),
  spec('no settling time', 1, 'settling.minutes', 0, 'not positive'),
  spec('negative allowance', 0, 'settling.allowance.value', -1.5, 'negative', 'settling.allowance'),
  reading('negative rest', 'EV', 6, 'minutesAtRest', -1, 'not minutes at rest'),
  reading('gauge step of zero', 'EV', 7, 'gaugeStep.value', 0, 'not a step'),
  reading('gauge step far too fine', 'FI', 4, 'gaugeStep.value', 1e-12, 'step too fine'),
  group('gauge step of zero, once', 1, 'gaugeStep.value', 0, 'not a step', FI_GROUP_STEP.map(fi)),
];

const BANDS: readonly Corruption[] = [
  spec('signed lower limit (swapped band)', 1, 'tolerance.below.value', '-0.15', 'negative', 'tolerance.below'),
  spec('negative plus-minus', 0, 'tolerance.plusMinus.value', -2, 'negative', 'tolerance.plusMinus'),
  spec('band without width', 0, 'tolerance.plusMinus.value', 0, 'band without width', 'tolerance.plusMinus'),
  {
    title: 'band without width to either side',
    puts: [
      ['$.specifications[1].tolerance.below.value', '0'],
      ['$.specifications[1].tolerance.above.value', 0],
    ],
    said: [{ code: 'band without width', path: '$.specifications[1].tolerance', about: INJECTION }],
    notJudged: EVERY_FI,
  },
  spec('band that reaches zero', 0, 'tolerance.plusMinus.value', 140, 'band reaches zero', 'tolerance'),
  spec('two tolerances', 0, 'tolerance.plusMinusPercentOfGauge', 2, 'not a tolerance', 'tolerance'),
  spec('one side of a tolerance', 1, 'tolerance.above', NOTHING, 'not a tolerance', 'tolerance'),
  spec('unknown place of the band', 1, 'tolerance.applies', 'always', 'unknown word'),
];

const NAMES: readonly Corruption[] = [
  {
    title: 'two accumulators of one name in a group',
    puts: [[`${ev(3)}.name`, 'EV 2']],
    said: [2, 3].map((n) => ({ code: 'duplicate name', path: `${ev(n)}.name`, about: 'EV 2' })),
    notJudged: [ev(2), ev(3)],
  },
  {
    title: 'two groups of one name',
    puts: [['$.groups[1].name', EVS]],
    said: [0, 1].map((i) => ({ code: 'duplicate name', path: `$.groups[${i}].name`, about: EVS })),
    notJudged: [...EVERY_EV, ...EVERY_FI],
  },
  {
    title: 'two specifications of one name',
    puts: [
      ['$.specifications[1].name', DRIVE],
      ['$.groups[1].specification', DRIVE],
    ],
    said: [0, 1].map((i) => ({ code: 'duplicate name', path: `$.specifications[${i}].name`, about: DRIVE })),
    notJudged: [...EVERY_EV, ...EVERY_FI],
  },
  group('unknown specification', 1, 'specification', 'fuel  injection drive', 'unknown specification', EVERY_FI),
  group(
    'specification named after what objects inherit',
    1,
    'specification',
    'toString',
    'unknown specification',
    EVERY_FI,
  ),
  {
    title: 'group with an empty name',
    puts: [['$.groups[0].name', '']],
    said: [{ code: 'too short', path: '$.groups[0].name', about: '' }],
    notJudged: EVERY_EV,
  },
  {
    title: 'accumulator with a number for its name',
    puts: [[`${fi(2)}.name`, 2]],
    said: [{ code: 'not a text', path: `${fi(2)}.name` }],
    notJudged: [fi(2)],
  },
  {
    title: 'name too long',
    puts: [[`${fi(2)}.name`, 'n'.repeat(201)]],
    said: [{ code: 'too long', path: `${fi(2)}.name`, about: `${'n'.repeat(80)}…` }],
    notJudged: [fi(2)],
  },
];

const FIELDS: readonly Corruption[] = [
  reading('unknown field of a reading', 'EV', 1, 'tempreature', withUnit(40, '°C'), 'unknown field'),
  reading('__proto__ in a reading', 'EV', 1, '__proto__', { gasInside: 'nitrogen' }, 'forbidden key'),
  reading('constructor in a pressure', 'EV', 1, 'pressure.constructor', 'Object', 'unknown field'),
  reading('__proto__ in a pressure', 'EV', 1, 'pressure.__proto__', null, 'forbidden key'),
  spec('unknown field of a specification', 0, 'maker', 'none', 'unknown field'),
  spec('__proto__ in a tolerance', 1, 'tolerance.__proto__', {}, 'forbidden key'),
  spec('another gas', 0, 'gas', 'helium', 'unknown word'),
  ...(
    [
      ['unknown field', 'note'],
      ['forbidden key', '__proto__'],
      ['unknown field', 'constructor'],
    ] as const
  ).map(([code, key]) => ({
    title: `${key} in an accumulator`,
    puts: [[`${fi(1)}.${key}`, {}]] as const,
    said: [{ code, path: `${fi(1)}.${key}`, about: 'FI 1' }],
    notJudged: [fi(1)],
  })),
  spec('no reference point', 0, 'precharge', NOTHING, 'missing'),
  spec('settling that is no object', 1, 'settling', null, 'not an object'),
  reading('pressure as a bare text', 'FI', 3, 'pressure', '10.2 MPa', 'not an object'),
  group('gauge step as a bare number', 0, 'gaugeStep', 1, 'not an object', [1, 2, 3, 4, 5, 6, 8].map(ev)),
  reading('unknown word for the oil side', 'FI', 3, 'oilSide', 'drained', 'unknown word'),
  reading('evidence left out', 'FI', 3, 'gasInside', NOTHING, 'missing'),
  reading('unknown role', 'EV', 1, 'role', 'as seen', 'unknown word'),
  reading('no role', 'EV', 1, 'role', NOTHING, 'missing'),
];

/** Said of the document or a group without keeping any accumulator from being judged. */
const HARMLESS: readonly Corruption[] = [
  {
    title: 'unknown field of the round',
    puts: [['$.note', 1]],
    said: [{ code: 'unknown field', path: '$.note' }],
    notJudged: [],
  },
  {
    title: '__proto__ in the round',
    puts: [['$.__proto__', {}]],
    said: [{ code: 'forbidden key', path: '$.__proto__' }],
    notJudged: [],
  },
  {
    title: 'title that is no text',
    puts: [['$.title', 1]],
    said: [{ code: 'not a text', path: '$.title' }],
    notJudged: [],
  },
];

const STATED_NOWHERE: readonly Corruption[] = (
  [
    [0, 'ambient', EIGHT],
    [0, 'gaugeStep', [1, 2, 3, 4, 5, 6, 8]],
    [1, 'temperature', FI_GROUP_TEMPERATURE],
  ] as const
).map(([i, field, dependents]) => {
  const [path, name] = i === 0 ? [ev, 'EV'] : [fi, 'FI'];
  const readings = dependents.flatMap((n) => (i === 0 && n === 2 ? [0, 1, 2] : [0]).map((k) => [n, k] as const));
  return {
    title: `${field} stated nowhere`,
    puts: [[`$.groups[${i}].${field}`, NOTHING]],
    said: readings.map(([n, k]) => ({
      code: 'stated nowhere',
      path: `${path(n)}.visit[${k}].${field}`,
      about: `${name} ${n}`,
    })),
    notJudged: dependents.map(path),
  };
});

const VISITS: readonly Corruption[] = [
  visit('visit that begins with another role', [['[0].role', 'settled']], ['order of readings', '[0].role']),
  visit('second reading as found', [['[1].role', 'as found']], ['order of readings', '[1].role']),
  visit('reading as left before the last', [['[1].role', 'as left']], ['order of readings', '[1].role']),
  ...[
    ['times that run backwards', '2026-03-14T09:15:59+01:00'],
    ['times that run backwards by their offsets', '2026-03-14T10:15:59+02:00'],
  ].map(([title = '', time]) => {
    const puts = [['[1].role', 'settled'], ['[1].at', time]] as const; // prettier-ignore
    return visit(title, puts, ['times run backwards', '[1].at']);
  }),
  visit(
    'more rest than the clock allows',
    [['[2].minutesAtRest', 22.1]],
    ['rest contradicts readings', '[2].minutesAtRest'],
  ),
  visit(
    'more rest than since the filling',
    [['[1].minutesAtRest', 15.1]],
    ['rest contradicts readings', '[1].minutesAtRest'],
  ),
  visit(
    'more rest than since the venting',
    [
      ['[1].role', 'after venting'],
      ['[1].minutesAtRest', 15.1],
    ],
    ['rest contradicts readings', '[1].minutesAtRest'],
  ),
  visit(
    'gas that moved while it is said to have been at rest',
    [
      ['[1].role', 'settled'],
      ['[1].minutesAtRest', 'not known'],
      ['[2].minutesAtRest', 36.1],
    ],
    ['rest contradicts readings', '[2].minutesAtRest'],
  ),
  visit('empty visit', [['', []]], ['too short', '']),
  visit('more than a hundred readings', [['', Array.from({ length: 101 }, () => null)]], ['too long', '']),
  ...[
    '2026-02-29T09:10:00+01:00',
    '2026-03-14T25:00:00Z',
    '2026-03-14T09:10:00',
    '2026-03-14T09:10+01:00',
    '14 March 2026',
  ].map((time) => reading(`the time ${time}`, 'EV', 1, 'at', time, 'not a time')),
];

const used = (n: number): Corruption => ({
  title: `instrument that is not listed, named by a reading (EV ${n})`,
  puts: [[`${ev(n)}.visit[0].instruments`, { pressure: 'gauge D' }]],
  said: [{ code: 'unknown instrument', path: `${ev(n)}.visit[0].instruments.pressure`, about: `EV ${n}` }],
  notJudged: [ev(n)],
});

/** Which exhaust accumulators are read by the gauge of their group: one names another. */
const EV_BY_GROUP_GAUGE = [1, 2, 3, 4, 5, 6, 8].map(ev);

/** Something wrong with an instrument: what was read by it is not judged. */
function instrument(title: string, place: string, value: unknown, code: ProblemCode): Corruption {
  const path = `$.instruments[2].${place}`;
  return { title, puts: [[path, value]], said: [{ code, path, about: 'gauge C' }], notJudged: [ev(7)] };
}

/** Something wrong with what is carried of an accumulator. */
function carried(title: string, place: string, value: unknown, code: ProblemCode): Corruption {
  return {
    title,
    puts: [[`${ev(2)}.${place}`, value]],
    said: [{ code, path: `${ev(2)}.${place}`, about: 'EV 2' }],
    notJudged: [ev(2)],
  };
}

/** Something wrong with what uncertainty rests on, said once where it stands. */
function doubt(
  title: string,
  place: string,
  value: unknown,
  code: ProblemCode,
  notJudged: readonly string[],
  { about, said = place }: { about?: string; said?: string } = {},
): Corruption {
  const path = `$.${said}`;
  return {
    title,
    puts: [[`$.${place}`, value]],
    said: [about === undefined ? { code, path } : { code, path, about }],
    notJudged,
  };
}

const EVERY = [...EVERY_EV, ...EVERY_FI];
const ofA = { about: 'gauge A' };
const CHARACTER = 'characteristics';
const GAUGE_A = `instruments[0].${CHARACTER}`;
const GAUGE_B = `instruments[1].${CHARACTER}`;
const SHELL = `instruments[3].${CHARACTER}`;
const UNCERTAINTY: readonly Corruption[] = [
  doubt('a kind of gauge that there is not', `${GAUGE_A}.type`, 'needle', 'unknown word', EV_BY_GROUP_GAUGE, ofA),
  doubt('a gauge without full scale', `${GAUGE_A}.fullScale`, NOTHING, 'missing', EV_BY_GROUP_GAUGE, ofA),
  doubt('a full scale of zero', `${GAUGE_A}.fullScale.value`, 0, 'not positive', EV_BY_GROUP_GAUGE, {
    ...ofA,
    said: `${GAUGE_A}.fullScale`,
  }),
  doubt(
    'an accuracy in two ways',
    `${GAUGE_B}.accuracy.limit`,
    withUnit(1, 'bar', 'difference'),
    'not one of several',
    EVERY_FI,
    {
      about: 'gauge B',
      said: `${GAUGE_B}.accuracy`,
    },
  ),
  doubt('a class that EN 837-1 has not', `${GAUGE_B}.accuracy.accuracyClass`, 1.5, 'not an accuracy class', EVERY_FI, {
    about: 'gauge B',
  }),
  doubt('a coverage factor of zero', `${GAUGE_A}.accuracy.coverageFactor`, 0, 'not positive', EV_BY_GROUP_GAUGE, ofA),
  doubt('half a certificate', `${GAUGE_A}.accuracy.coverageFactor`, NOTHING, 'not one of several', EV_BY_GROUP_GAUGE, {
    ...ofA,
    said: `${GAUGE_A}.accuracy`,
  }),
  doubt('a certificate without due date', 'instruments[0].due', NOTHING, 'missing', EV_BY_GROUP_GAUGE, ofA),
  doubt('a gauge that warmth moves too much', `${GAUGE_A}.temperatureInfluence.percentOfSpanPerKelvin`, 2, 'outside bounds', EV_BY_GROUP_GAUGE, ofA), // prettier-ignore
  doubt('a thermometer without error', `${SHELL}.accuracy.limit.value`, 0, 'not positive', EVERY, {
    about: 'thermometer 1',
    said: `${SHELL}.accuracy.limit`,
  }),
  doubt(
    'a gas that differs from its shell by less than nothing',
    `${SHELL}.shellToGas.value`,
    -1,
    'outside bounds',
    EVERY,
    {
      about: 'thermometer 1',
      said: `${SHELL}.shellToGas`,
    },
  ),
  doubt('no accuracy', `${GAUGE_B}.accuracy`, {}, 'not one of several', EVERY_FI, { about: 'gauge B' }),
  group('a gauge that reads temperature', 0, 'instruments.temperature', 'gauge A', 'instrument of another kind', EVERY_EV), // prettier-ignore
  spec('a decimal comma in an expansion', 0, 'vessel.linearExpansion.value', '1,2e-5', 'not a decimal'),
  spec('a decimal comma in the limit of an expansion', 0, 'vessel.limit.value', '1,2e-6', 'not a decimal'),
  spec('a decimal comma in a printed step', 0, 'printed.pressure.value', '0,5', 'not a decimal'),
  spec('a decimal comma in a printed step of temperature', 0, 'printed.temperature.value', '0,5', 'not a decimal'),
  spec('a decimal comma in a limit of the ambient', 0, 'printed.ambientLimit.value', '0,5', 'not a decimal'),
  spec('a printed step of temperature below zero', 0, 'printed.temperature.value', -1, 'outside bounds', 'printed.temperature'), // prettier-ignore
  group('a thermometer that reads pressure', 0, 'instruments.pressure', 'thermometer 1', 'instrument of another kind', EV_BY_GROUP_GAUGE), // prettier-ignore
  spec(
    'a printed step that a table states, where there is none',
    0,
    'printed.pressure',
    'as the table states',
    'unknown word',
  ),
  spec(
    'an ambient that is off by less than nothing',
    0,
    'printed.ambientLimit.value',
    -1,
    'negative',
    'printed.ambientLimit',
  ),
  spec('a vessel that doubles', 0, 'vessel.linearExpansion.value', 1, 'outside bounds'),
  spec('a vessel of which less than nothing is known', 0, 'vessel.limit.value', 1, 'outside bounds'),
  spec('a vessel in another unit', 0, 'vessel.limit.unit', 'K', 'unknown unit'),
  doubt('a risk of one half', 'rule.risk.below', 0.5, 'outside bounds', EVERY),
  doubt('a rule that there is not', 'rule.acceptance', 'as usual', 'unknown word', EVERY),
  doubt('a correlation beyond one', 'modelErrorCorrelation', 1.5, 'outside bounds', EVERY),
  group('a gauge as warm as a pressure', 0, 'gaugeTemperature', withUnit(31, 'bar'), 'wrong shape', EVERY_EV),
  group('an ambient limit below zero', 0, 'ambientLimit.value', -1, 'negative', EVERY_EV, 'ambientLimit'),
  group('the mean of no readings', 0, 'readings', 0, 'not a count', EVERY_EV),
  reading('the mean of too many readings', 'EV', 1, 'readings', 101, 'not a count'),
];

const CARRIED: readonly Corruption[] = [
  {
    title: 'instrument that is no text',
    puts: [[`${ev(4)}.visit[0].instruments`, { pressure: 5 }]],
    said: [{ code: 'not a text', path: `${ev(4)}.visit[0].instruments.pressure`, about: 'EV 4' }],
    notJudged: [ev(4)],
  },
  used(1),
  used(7),
  group('instrument that is not listed, named by a group', 0, 'instruments.pressure', 'gauge D', 'unknown instrument', EV_BY_GROUP_GAUGE), // prettier-ignore
  group('instrument named like what objects inherit', 0, 'instruments.pressure', 'toString', 'unknown instrument', EV_BY_GROUP_GAUGE), // prettier-ignore
  group('instrument for an unknown quantity', 0, 'instruments.volume', 'gauge A', 'unknown field', []),
  group('instruments that are no object', 0, 'instruments', 'gauge A', 'not an object', EVERY_EV),
  instrument('day that is not in the calendar', 'due', '2026-02-29', 'not a date'),
  instrument('due date with a time', 'due', '2026-02-28T00:00:00Z', 'not a date'),
  instrument('certificate that is no text', 'certificate', 117, 'not a text'),
  instrument('instrument without kind', 'kind', NOTHING, 'missing'),
  instrument('unknown field of an instrument', 'range', '0 to 10 bar', 'unknown field'),
  {
    title: 'two instruments of one name: what was read by either is not judged',
    puts: [['$.instruments[1].name', 'gauge C']],
    said: [
      ...[1, 2].map((i) => ({ code: 'duplicate name' as const, path: `$.instruments[${i}].name`, about: 'gauge C' })),
      { code: 'unknown instrument', path: '$.groups[1].instruments.pressure', about: FIS },
    ],
    notJudged: [ev(7), ...EVERY_FI],
  },
  {
    title: 'specifications that are no list: no group is said to follow an unknown one',
    puts: [['$.specifications', {}]],
    said: [{ code: 'not a list', path: '$.specifications' }],
    notJudged: [...EVERY_EV, ...EVERY_FI],
  },
  {
    title: 'instruments that are no list',
    puts: [['$.instruments', {}]],
    said: [{ code: 'not a list', path: '$.instruments' }],
    notJudged: [...EVERY_EV, ...EVERY_FI],
  },
  carried('serial that is a number', 'serial', 2041, 'not a text'),
  carried('component code that is empty', 'componentCode', '', 'too short'),
  carried('position too long', 'position', 'p'.repeat(201), 'too long'),
  carried('remarks too long', 'remarks', 'r'.repeat(2001), 'too long'),
  carried('half a surrogate pair in the remarks', 'remarks', 'valve \uD83D leaks', 'not a text'),
  carried('negative running hours', 'runningHours', -1, 'negative'),
  carried('running hours that are no number', 'runningHours', Number.NaN, 'not a number'),
  carried('running hours as text', 'runningHours', '8120', 'not a number'),
  carried('a part renewed that is no text', 'partsRenewed[1]', {}, 'not a text'),
  carried(
    'more than a hundred parts renewed',
    'partsRenewed',
    Array.from({ length: 101 }, () => 'cap'),
    'too long',
  ),
  carried('time of stop without offset', 'stoppedAt', '2026-03-14T07:30:00', 'not a time'),
  carried('permit that is no text', 'deviationPermit', true, 'not a text'),
  group('half a surrogate pair in the unit served', 1, 'unitServed', '\uDE00', 'not a text', []),
  group('remarks of a group that are too long', 1, 'remarks', 'r'.repeat(2001), 'too long', []),
  carried('time of draining that is a date', 'drainedAt', '2026-03-14', 'not a time'),
  carried('reader without a name', 'readBy', '', 'too short'),
  {
    title: 'half a surrogate pair in the title',
    puts: [['$.title', 'Quarterly \uD83D check']],
    said: [{ code: 'not a text', path: '$.title' }],
    notJudged: [],
  },
  {
    title: 'half a surrogate pair in a name',
    puts: [[`${ev(3)}.name`, 'EV \uD83D']],
    said: [{ code: 'not a text', path: `${ev(3)}.name`, about: 'EV \uFFFD' }],
    notJudged: [ev(3)],
  },
];

/** One corruption each; all but the document's version, which stops the reading of it. */
export const CORRUPTIONS: readonly Corruption[] = [
  ...BASIS,
  ...UNITS,
  ...DECIMALS,
  ...PHYSICS,
  ...BANDS,
  ...NAMES,
  ...FIELDS,
  ...HARMLESS,
  ...STATED_NOWHERE,
  ...VISITS,
  ...CARRIED,
  ...UNCERTAINTY,
];
