// Rounds and reports: the doors at which nothing is trusted.
import { isFault } from 'isochore';
import { canonicalJson, reportRound, reverify, RoundReportShape } from 'isochore/record';
import fc from 'fast-check';
import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import {
  anyNumber,
  anyText,
  call,
  fields,
  junk,
  listOf,
  maybe,
  one,
  orNothing,
  plain,
  steps,
  value,
} from '../draw.mjs';
import { wrongWithProblem } from '../holds.mjs';
import { build, ENCODED, fromJson, Live } from '../recipe.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { Change, Recalled, Reverified, RoundReport, UnitServed, StoredOrder } from 'isochore/record' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Holds, Subject } from './subject.mjs' */

/** @param {string} basis @param {readonly (readonly [unit: string, min: number, max: number])[]} ranges @returns {Arbitrary<Recipe>} */
const measured = (basis, ...ranges) =>
  fc.oneof(
    ...ranges.map(([unit, min, max]) =>
      fields({
        value: fc.oneof(plain(steps(min, max)), plain(steps(min, max).map(String))),
        unit: one(unit),
        ...(basis === '' ? {} : { basis: one(basis) }),
      }),
    ),
  );
const gauge = measured('gauge', ['bar', 100, 180], ['bar', -1, 300], ['MPa', 9, 18], ['psi', 1400, 2600]);
const ambient = measured('absolute', ['hPa', 900, 1085], ['kPa', 90, 108], ['mmHg', 700, 800]);
const size = measured('difference', ['bar', 0.1, 5], ['psi', 1, 60], ['MPa', 0.1, 0.5]);
const temperature = measured('', ['°C', -20, 80], ['K', 260, 350], ['°F', 0, 170]);

const spot = fields({ pressure: measured('gauge', ['bar', 120, 150]), temperature: measured('', ['°C', 15, 25]) });
const column = fields({ table: one('T'), column: one('A', 'B') });
const applies = one('at the measured temperature', 'at the reference temperature');
const tolerance = fc.oneof(
  fields({ plusMinus: size, applies }),
  fields({ below: size, above: size, applies }),
  fields({ plusMinusPercentOfGauge: plain(steps(0.5, 10)), applies }),
);

const degree = fields({ value: plain(steps(0.1, 3)), unit: one('K', '°C'), basis: one('difference') });
const characteristics = fields({
  type: one('dial gauge'),
  fullScale: measured('gauge', ['bar', 150, 400]),
  accuracy: fc.oneof(fields({ accuracyClass: one(0.6, 1, 1.6) }), fields({ limit: size })),
  zero: one('with stop pin', 'without stop pin'),
});
const shellThermometer = fields({
  type: one('contact thermometer'),
  accuracy: fields({ limit: degree }),
  step: degree,
  shellToGas: degree,
});
/** @param {string} name @param {Arbitrary<Recipe>} of */
const instrument = (name, of) =>
  fields({
    name: one(name),
    kind: one('instrument'),
    due: maybe(one('2026-01-31', '2026-11-30')),
    characteristics: maybe(of),
  });
const rule = fields({
  acceptance: one('simple acceptance', 'guarded acceptance', 'guarded rejection', 'guarded both ways'),
  risk: fields({ below: one(0.01, 0.05), above: one(0.05, 0.2) }),
});
const printed = fields({ pressure: size, temperature: degree, ambientLimit: measured('difference', ['hPa', 0, 50]) });
/** @param {readonly number[]} values */
const perKelvin = (...values) => fields({ value: one(...values), unit: one('1/K') });
const vessel = fields({
  linearExpansion: perKelvin(1.2e-5),
  limit: perKelvin(0, 1e-6),
  treated: one('corrected', 'as uncertainty'),
});

const NAMES = ['S', 'P'];
const specification = fields({
  name: one(...NAMES),
  gas: one('nitrogen'),
  precharge: fc.oneof({ weight: 4, arbitrary: spot }, { weight: 1, arbitrary: column }),
  nominal: maybe(one(undefined)),
  ambient: fc.constant(fromJson({ value: 1013.25, unit: 'hPa', basis: 'absolute' })),
  tolerance,
  toleranceAfterCharging: maybe(tolerance),
  separator: one('diaphragm', 'bladder', 'piston'),
  gasVolume: measured('', ['L', 0.5, 50]),
  allowable: measured('gauge', ['bar', 200, 400]),
  settling: fields({ allowance: size, minutes: plain(steps(1, 30)) }),
  printed: maybe(printed),
  vessel: maybe(vessel),
});

const table = fc.constant(
  fromJson({
    name: 'T',
    ambient: { value: 1013.25, unit: 'hPa', basis: 'absolute' },
    referenceTemperature: { value: 20, unit: '°C' },
    printedStep: { value: 0.5, unit: 'bar', basis: 'difference' },
    outside: 'follow constant density',
    columns: ['A', 'B'],
    rows: [0, 20, 40].map((t) => ({
      temperature: { value: t, unit: '°C' },
      pressures: [130, 140].map((p) => ({ value: p + t / 2, unit: 'bar', basis: 'gauge' })),
    })),
  }),
);

const minutes = fc.nat(59).map((n) => String(n).padStart(2, '0'));
/** @param {string} role @param {number} hour */
const reading = (role, hour) =>
  fields({
    role: one(role),
    at: plain(minutes.map((mm) => `2026-03-14T${String(hour).padStart(2, '0')}:${mm}:00+01:00`)),
    pressure: gauge,
    temperature: maybe(temperature),
    ambient: maybe(ambient),
    gaugeStep: maybe(fc.constant(fromJson({ value: 1, unit: 'bar', basis: 'difference' }))),
    oilSide: one('drained, zero verified', 'drained, zero verified', 'not drained', 'not known'),
    systemPressure: maybe(gauge),
    gasInside: one('nitrogen', 'nitrogen', 'nitrogen', 'not known'),
    minutesAtRest: one(0, 5, 10, 30, 60, 'not known'),
    emptyGasSide: maybe(one('investigated and cleared')),
    possibleSlip: maybe(one('read again and ruled out')),
    readings: maybe(one(1, 3)),
    instruments: maybe(fields({ pressure: maybe(one('g1', 'g2')) })),
  });
const visit = fc
  .oneof(
    fc.tuple(reading('as found', 9)),
    fc.tuple(reading('as found', 9), reading('after filling', 10), reading('as left', 12)),
    fc.tuple(reading('as found', 9), reading('as left', 12)),
  )
  .map((of) => /** @type {Recipe} */ ({ t: 'list', of }));

const text = one('1', 'cyl 2', 'main engine');
const group = fields({
  name: one('G', 'H'),
  specification: one(...NAMES),
  temperature,
  ambient,
  gaugeStep: fc.constant(fromJson({ value: 1, unit: 'bar', basis: 'difference' })),
  gaugeTemperature: fc.oneof(temperature, one('not known')),
  ambientLimit: maybe(measured('difference', ['hPa', 0, 20])),
  readings: one(1, 2),
  instruments: maybe(fields({ pressure: one('g1'), temperature: maybe(one('t1')) })),
  unitServed: maybe(text),
  remarks: maybe(text),
  accumulators: listOf(
    fields({
      name: one('a', 'b', 'c'),
      specification: maybe(one(...NAMES)),
      visit,
      unitServed: maybe(text),
      runningHours: maybe(plain(fc.nat(9999))),
      partsRenewed: maybe(listOf(text, 0, 2)),
    }),
    1,
    3,
  ),
});
const standard = fc.constant(fromJson({ value: 1013.25, unit: 'hPa', basis: 'absolute' }));
const bars = (/** @type {number} */ least, /** @type {number} */ most) => measured('gauge', ['bar', least, most]);
/** @param {string} name */
const bottle = (name) =>
  fields({
    name: one(name),
    waterVolume: measured('', ['L', 5, 50]),
    label: fields({
      gas: one('nitrogen', 'nitrogen', 'argon'),
      purityPercent: one(99.99, 99.5, 'not stated'),
      filling: bars(150, 300),
      rated: bars(200, 300),
      ambient: standard,
    }),
    pressure: bars(0, 300),
    temperature,
    ambient,
    within: size,
    residual: bars(0, 20),
  });
const OBJECTIVES = ['accumulators completed', 'full bottles opened', 'bottles used', 'connections', 'useful remainder'];
const supply = fields({
  leastPurityPercent: one(99.9, 'not demanded'),
  kit: fields({ volume: measured('', ['mL', 0, 200]), rated: bars(100, 400) }),
  regulator: fc.oneof(
    one('none'),
    fields({ difference: size, ratedInlet: bars(200, 400), ratedOutlet: bars(100, 400) }),
  ),
  objectives: fc.constant(fromJson(OBJECTIVES)),
  computedStop: one('permitted by the specification', 'not permitted'),
  exchange: maybe(fields({ timeConstantMinutes: plain(steps(1, 10)), movingMinutes: plain(steps(1, 5)) })),
  order: maybe(
    fields({
      waterVolume: measured('', ['L', 5, 50]),
      filling: bars(150, 300),
      labelAmbient: standard,
      residual: bars(0, 20),
      temperature,
      ambient,
      reservePercent: one(0, 50),
    }),
  ),
  bottles: fc.tuple(bottle('N2-1'), bottle('N2-2')).map((of) => /** @type {Recipe} */ ({ t: 'list', of })),
});
const safety = fields({
  hottest: maybe(fields({ temperature, ambient })),
  room: maybe(
    fields({
      volume: measured('', ['m3', 5, 500]),
      temperature,
      ambient,
      minutes: one('at once', 5),
      airChangesPerHour: one('none', 6),
      oxygenBefore: one(0.209),
      limit: fields({ fraction: one(0.195), source: one('a rule') }),
    }),
  ),
  inService: maybe(fields({ systemPressure: bars(100, 300), temperature })),
  line: maybe(
    fields({
      bottle: fields({ rating: bars(200, 400), pressure: bars(100, 300) }),
      regulator: fc.oneof(
        one('none'),
        fields({ inlet: bars(200, 400), outlet: bars(100, 300), setTo: bars(100, 200) }),
      ),
      relief: fc.oneof(one('none'), fields({ opens: bars(100, 300) })),
      hose: fields({ rating: bars(100, 400) }),
      gauge: fields({ fullScale: bars(100, 400) }),
    }),
  ),
});

/** @type {Arbitrary<Recipe>} */
const small = fields({
  version: one(1),
  title: maybe(text),
  rule: maybe(rule),
  modelErrorCorrelation: maybe(one(0, 0.5, 1)),
  instruments: fc
    .tuple(instrument('g1', characteristics), instrument('g2', characteristics), instrument('t1', shellThermometer))
    .map((of) => /** @type {Recipe} */ ({ t: 'list', of })),
  tables: listOf(table, 1, 1),
  supply: maybe(supply),
  safety: maybe(safety),
  specifications: listOf(specification, 1, 2),
  groups: listOf(group, 1, 2),
});
const example = fromJson(JSON.parse(readFileSync(new URL('../../examples/round.json', import.meta.url), 'utf8')));
/** @type {Arbitrary<Recipe>} */
export const round = fc.oneof({ weight: 19, arbitrary: small }, { weight: 1, arbitrary: fc.constant(example) });

const words = fields({ cautions: maybe(fields({ 'nitrogen only': text, 'maker decides': maybe(text) })) });
const when = fields({ problems: one('report the rest', 'report the rest', 'refuse the round'), words: maybe(words) });

// Reports to begin from: the same whatever the seed.
const REPORTS = fc
  .sample(small, { numRuns: 40, seed: 20260101 })
  .concat(example)
  .map((recipe) => fromJson(reportRound(build(recipe, new Live()), { problems: 'report the rest' })));
/** @type {Arbitrary<Recipe>} */
export const report = fc.oneof(
  { weight: 30, arbitrary: fc.constantFrom(...REPORTS.slice(0, -1)) },
  { weight: 1, arbitrary: fc.constantFrom(...REPORTS) },
);

const AS_MADE = new Set(REPORTS.map((recipe) => canonicalJson(build(recipe, new Live()))));

/** Whether this is one of the reports as it was made, with its input. @param {unknown} report */
function isUntouched(report) {
  try {
    return (
      typeof report === 'object' &&
      report !== null &&
      Object.hasOwn(report, 'input') &&
      AS_MADE.has(canonicalJson(report))
    );
  } catch (error) {
    if (isFault(error)) return false; // no JSON data
    throw error;
  }
}

/** @param {unknown} json @param {Set<object>} into */
function objectsIn(json, into) {
  const open = [json];
  while (open.length > 0 && into.size < 5000) {
    const one = open.pop();
    if (typeof one !== 'object' || one === null || into.has(one)) continue;
    into.add(one);
    for (const own of Object.values(Object.getOwnPropertyDescriptors(one))) open.push(own.value);
  }
  return into;
}

/** @type {Holds} */
const reportHolds = (answer, [input]) => {
  const made = /** @type {RoundReport} */ (answer);
  const { error } = RoundReportShape.safeParse(made);
  if (error !== undefined) return `a report not of its shape: ${error.issues[0]?.path.join('.') ?? ''}`;
  const { outcome } = reverify(made);
  const expected = Object.hasOwn(made, 'input') ? ['same', 'changed'] : ['cannot be judged again'];
  if (!expected.includes(outcome)) return `a report that is ${outcome}`;
  if (made.complete === 'complete' && made.problemsFound > 0) return 'complete in spite of problems';
  if (made.complete === 'partial' && made.problems.length === 0) return 'partial without a problem';
  const wrong = made.problems
    .slice(0, 50)
    .map(wrongWithProblem)
    .find((one) => one !== undefined);
  if (wrong !== undefined) return wrong;
  for (const { asFound } of made.accumulators) {
    if (!(Number(asFound.band.lower.value) <= Number(asFound.band.upper.value))) return 'limits crossed';
  }
  const own = objectsIn(input, new Set());
  for (const one of objectsIn(made, new Set())) if (own.has(one)) return "an object of the caller's in the report";
  return undefined;
};

/** @type {Arbitrary<readonly { at: number, out: number, in: string }[]>} */
const edits = fc.array(
  fc.record({
    at: fc.nat(30_000),
    out: fc.constantFrom(0, 0, 0, 1, 1, 2, 5, 30, 1000),
    in: fc.oneof(
      anyText,
      anyNumber.map(String),
      fc.constantFrom(
        '"',
        '\\',
        '{',
        '}',
        '[',
        ']',
        ',',
        ':',
        '\\u',
        '\\ud800',
        '\\u0022',
        '/*',
        '//',
        '\n',
        '\u0000',
        '\ufeff',
        '1e',
        '-',
        '00',
        '"__proto__":{},',
        '"\ud800":1,',
        '"title":"\udc00",',
        '"modelErrorCorrelation":1e999,',
        '"modelErrorCorrelation":-1e-400,',
        '1E+0000000400',
        `0.${'0'.repeat(300)}1e301`,
        '1'.repeat(400),
        '"name":"x","name":"y",',
        '"version":1,',
        '"version":1,"version":1,',
        'null',
        '[[[[',
        '{"a":{"a":',
      ),
    ),
  }),
  { maxLength: 3 },
);

/** @type {Arbitrary<Recipe>} */
const data = fc.oneof(
  round,
  report,
  fc.json({ maxDepth: 4 }).map((json) => fromJson(JSON.parse(json))),
  junk,
);

/** What is wrong with a round stands in it; anything else has lost the rest of its report. @param {string} path */
const ofRound = (path) => /^(?:\$|when\b)/.test(path);

/** @type {readonly Subject[]} */
export const RECORD = [
  { name: 'reportRound', args: fc.tuple(round, when), holds: reportHolds, blames: ofRound },
  {
    name: 'reportRoundText',
    args: fc.tuple(
      fc.oneof(
        fc
          .tuple(
            fc.oneof({ weight: 4, arbitrary: round }, { weight: 1, arbitrary: data }),
            edits,
            fc.oneof(
              { weight: 9, arbitrary: fc.constant(undefined) },
              { weight: 1, arbitrary: fc.constantFrom(...ENCODED) },
            ),
          )
          .map(([of, some, encoding]) => /** @type {Recipe} */ ({ t: 'text', of, edits: some, encoding })),
        plain(anyText),
      ),
      when,
    ),
    holds: reportHolds,
    blames: ofRound,
    weight: 2,
  },
  {
    name: 'reverify',
    args: fc.tuple(
      fc.oneof(
        report,
        report.map((of) => /** @type {Recipe} */ ({ t: 'wrap', how: 'sealed', of })),
      ),
    ),
    holds: (answer, [of], isPolluted = false) => {
      const { outcome, because, changesFound, changes, why } = /** @type {Reverified} */ (answer);
      if ((outcome === 'same') !== (because.length === 0) || (why === '') !== (because.length === 0))
        return 'an outcome without its reason';
      if (changesFound < changes.length || changes.some((one) => longest(one) > 4000))
        return 'changes that do not add up';
      // Where all objects inherit a field, zod finds it in each part of the report.
      return outcome !== 'same' && !isPolluted && isUntouched(of)
        ? `a report as it was made, found ${outcome}`
        : undefined;
    },
  },
  {
    name: 'orderFor',
    args: fc.tuple(
      report,
      fields({ group: one('G', 'H', 'Exhaust valves'), name: one('a', 'b', 'c', 'EV 1', 'EV 2') }),
      orNothing(fields({ charge: one('bis {stop}', 'ein Text') })),
    ),
    holds: (answer) => {
      const { steps, numbers } = /** @type {StoredOrder} */ (answer);
      if (steps.length < 10) return 'steps lost';
      return Object.values(numbers).includes('') ? 'a number without text' : undefined;
    },
  },
  {
    name: 'recall',
    args: fc.tuple(
      listOf(report, 0, 2),
      fields({
        instrument: one('g1', 'g2', 't1', 'gauge A', 'thermometer 1'),
        from: one('2026-03-01', '2026-03-14'),
        to: one('2026-03-14', '2026-12-31'),
        correction: fc.oneof(
          call('pressureDifference', plain(steps(-5, 5)), one('bar', 'psi')),
          call('temperatureDifference', plain(steps(-5, 5)), one('K', '°F')),
        ),
      }),
      orNothing(words),
    ),
    holds: (answer) => {
      const { changes, judgedAgain, notJudgedAgain, problems } = /** @type {Recalled} */ (answer);
      if (changes.length > judgedAgain) return 'more changes than visits';
      if (changes.some(({ before, after }) => JSON.stringify(before) === JSON.stringify(after))) return 'no change';
      if (problems.some(({ because, why }) => because.length === 0 || why === '')) return 'a problem without reason';
      const wrong = notJudgedAgain.flatMap((one) => one.problems).map(wrongWithProblem);
      return wrong.find((one) => one !== undefined);
    },
  },
  {
    name: 'readReport',
    args: fc.tuple(report),
    holds: (answer, [of], isPolluted = false) => {
      if (answer === of) return "the caller's own report";
      if (isPolluted || !isUntouched(of)) return undefined;
      return canonicalJson(answer) === canonicalJson(of) ? undefined : 'another report than the one as it was made';
    },
  },
  {
    name: 'worstFirst',
    args: fc.tuple(report),
    holds: (answer, [of]) => {
      const units = /** @type {UnitServed[]} */ (answer);
      const ranked = units.reduce((sum, unit) => sum + unit.accumulators.length, 0);
      const { accumulators, notJudged } = /** @type {RoundReport} */ (of);
      if (ranked !== accumulators.length + notJudged.length) return 'not all of them ranked';
      return units.every((unit) => unit.accumulators.every(({ outsideBy }) => outsideBy >= 0))
        ? undefined
        : 'outside by less than nothing';
    },
  },
  {
    name: 'canonicalJson',
    args: fc.tuple(data),
    holds: (answer) => {
      if (typeof answer !== 'string') return 'no text';
      return canonicalJson(JSON.parse(answer)) === answer ? undefined : 'a text that is not its own canonical text';
    },
  },
  {
    name: 'sha256',
    args: fc.tuple(
      fc.oneof(
        plain(fc.string({ unit: 'binary', maxLength: 300 })),
        plain(anyText),
        fc.nat(300).map((n) => value('é'.repeat(n))),
      ),
    ),
    holds: (answer, [of]) =>
      answer === createHash('sha256').update(String(of), 'utf8').digest('hex')
        ? undefined
        : 'another digest than that of node:crypto',
  },
  { name: 'roundJsonSchema', args: fc.constant([]), weight: 0.05 },
  { name: 'reportJsonSchema', args: fc.constant([]), weight: 0.05 },
];

/** @param {Change} change */
function longest({ path, from, to }) {
  return Math.max(path.length, from.length, to.length);
}
