// Every calculation that shows its steps, with invented inputs by the thousand.
import {
  absolute,
  adjustmentTable,
  afterCharging,
  amount,
  assess,
  auditTable,
  band,
  beforeCheck,
  bleeding,
  bottleState,
  charge,
  check,
  checkLoss,
  decide,
  draining,
  explainingTemperature,
  filling,
  fillingPlan,
  gauge,
  idealNitrogen,
  isentropicExpansion,
  judge,
  leakTest,
  massOfGas,
  nitrogen,
  normalConditions,
  normalVolume,
  normalVolumeAsIdealGas,
  OBJECTIVES,
  oxygenAfterRelease,
  oxygenInDryAir,
  pressureDifference,
  pressureWhenHot,
  purge,
  ratings,
  reference15C1bar,
  referred,
  saturationAt,
  serves,
  settlingCurve,
  standardAtmosphere,
  stateAt,
  storedEnergy,
  target,
  temperature,
  temperatureDifference,
  toAbsolute,
  toFill,
  toGauge,
  uncertainty,
  volume,
  whereToStop,
  type Instruments,
  type Bottle,
  type HowFar,
  type Reading,
  type Rig,
  type Specification,
  type Allowed,
} from 'isochore';
import { derivationOf, type Derivation } from 'isochore/worked';
import { bar, barOf, celsius, hPa, readingWith, specBy, specOf, tableOf } from '../support/accumulator.js';
import { CONTACT, DIAL, inK, INSTRUMENTS } from '../support/instruments.js';
import type { Random } from '../support/random.js';

/** A calculation by its name, with inputs drawn. */
export type Case = readonly [name: string, derive: (random: Random) => Derivation];

const anyTolerance = (r: Random): Allowed => ({
  ...r.pick<{ plusMinus: ReturnType<typeof barOf> } | { plusMinusPercentOfGauge: number }>(
    { plusMinus: barOf(r.between(0.5, 6)) },
    { plusMinusPercentOfGauge: r.between(0.5, 6) },
  ),
  applies: r.pick('at the measured temperature' as const, 'at the reference temperature' as const),
});

const anyAmbient = (r: Random): ReturnType<typeof hPa> => r.pick(standardAtmosphere, hPa(r.between(940, 1060)));

function bySpec(r: Random, most_bar = 220): Specification {
  return specOf(r.between(60, most_bar, r.pick(0, 1)), r.pick(0, 15, 20, 25, 40), {
    ambient: anyAmbient(r),
    tolerance: anyTolerance(r),
    gasVolume: volume(r.between(0.5, 60), 'L'),
    allowable: bar(600),
  });
}

/** A table of nitrogen at constant density, printed to a tenth of a bar. */
function byTable(r: Random): Specification {
  const line = specOf(r.between(80, 200), 20, { allowable: bar(600) });
  const rows = [5, 20, 35, 50].map((t_C) => {
    const { pascals } = target(line, { temperature: celsius(t_C), ambient: standardAtmosphere });
    return [Number((pascals / 1e5).toFixed(1)), t_C] as const;
  });
  return specBy(tableOf(rows, { outside: 'follow constant density' }), {
    tolerance: anyTolerance(r),
    allowable: bar(600),
  });
}

const anySpec = (r: Random): Specification => (r.pick('point', 'table') === 'point' ? bySpec(r) : byTable(r));

function readingOf(r: Random, spec: Specification): Reading {
  const at = { temperature: celsius(r.between(5, 50)), ambient: anyAmbient(r) };
  const share = r.pick(r.between(0.6, 1.3, 3), r.between(0.98, 1.02, 4));
  return readingWith({ ...at, pressure: bar(Number(((target(spec, at).pascals / 1e5) * share).toFixed(1))) });
}

const bySpecAndReading =
  (calculate: (given: { spec: Specification; reading: Reading }, trace: Parameters<typeof check>[2]) => unknown) =>
  (r: Random): Derivation => {
    const spec = anySpec(r);
    return derivationOf({ spec, reading: readingOf(r, spec) }, calculate);
  };

/** Instruments with certificates, and a vessel whose expansion is corrected. */
function certified(r: Random): Instruments {
  const certificate = <Q>(correction: Q, expandedUncertainty: Q) => ({
    certificate: { correction, expandedUncertainty, coverageFactor: 2, due: '2027-01-10' },
  });
  return {
    ...INSTRUMENTS,
    gauge: { ...DIAL, accuracy: certificate(barOf(r.between(-1, 1)), barOf(r.between(0.2, 1, 2))) },
    thermometer: { ...CONTACT, accuracy: certificate(inK(r.between(-1, 1)), inK(r.between(0.2, 1, 2))) },
    vessel: { linearExpansion_per_K: 12e-6, limit_per_K: 1e-6, treated: r.pick('corrected', 'as uncertainty') },
    readings: r.pick(1, 3),
  };
}

const rule = { acceptance: 'guarded acceptance', risk: { below: 0.025, above: 0.025 } } as const;

const anyBottle = (r: Random, p_bar: number): Bottle => ({
  name: 'N2-1',
  waterVolume: volume(r.pick(10, 20, 50), 'L'),
  label: {
    gas: 'nitrogen',
    purityPercent: 99.99,
    filling: gauge(200, 'bar'),
    rated: gauge(200, 'bar'),
    ambient: standardAtmosphere,
  },
  read: { pressure: bar(p_bar), temperature: celsius(r.between(0, 45)), ambient: anyAmbient(r) },
  within: pressureDifference(4, 'bar'),
  residual: gauge(5, 'bar'),
});

export const CASES: readonly Case[] = [
  [
    'toAbsolute',
    (r) =>
      derivationOf({ pressure: bar(r.between(0, 300, 2)), ambient: anyAmbient(r) }, ({ pressure, ambient }, trace) =>
        toAbsolute(pressure, ambient, trace),
      ),
  ],
  [
    'toGauge',
    (r) =>
      derivationOf({ pressure: absolute(r.between(5, 300, 3), 'bar'), ambient: anyAmbient(r) }, (given, trace) =>
        toGauge(given.pressure, given.ambient, trace),
      ),
  ],
  [
    'stateAt',
    (r) => {
      const T = temperature(r.between(-60, 150), '°C');
      const given = r.pick(
        { temperature: T, pressure: absolute(r.between(1, 400, 2), 'bar') },
        { temperature: T, density_mol_m3: r.between(40, 9000, 2) },
        { pressure: absolute(r.between(1, 200), 'bar'), entropy_J_molK: r.between(155, 172) },
      );
      return derivationOf({ model: nitrogen, given }, ({ model, given }, trace) => stateAt(model, given, trace));
    },
  ],
  [
    'isentropicExpansion',
    (r) =>
      derivationOf(
        {
          model: nitrogen,
          from: { pressure: absolute(r.between(20, 250), 'bar'), temperature: celsius(r.between(0, 60)) },
          to: standardAtmosphere,
        },
        ({ model, from, to }, trace) => isentropicExpansion(model, from, to, trace),
      ),
  ],
  ['target', bySpecAndReading(({ spec, reading }, trace) => target(spec, reading, trace))],
  ['band', bySpecAndReading(({ spec, reading }, trace) => band(spec, reading, reading.gaugeStep, trace))],
  ['referred', bySpecAndReading(({ spec, reading }, trace) => referred(spec, reading, trace))],
  [
    'explainingTemperature',
    bySpecAndReading(({ spec, reading }, trace) => explainingTemperature(spec, reading, trace)),
  ],
  ['judge', bySpecAndReading(({ spec, reading }, trace) => judge(spec, reading, trace))],
  ['charge', bySpecAndReading(({ spec, reading }, trace) => charge(spec, reading, trace))],
  ['check', bySpecAndReading(({ spec, reading }, trace) => check(spec, reading, trace))],
  ['check after charging', bySpecAndReading(({ spec, reading }, trace) => check(afterCharging(spec), reading, trace))],
  [
    'check by the ideal-gas law',
    (r) => {
      const spec = specOf(r.between(60, 220), 20, { gas: idealNitrogen, allowable: bar(600) });
      return derivationOf({ spec, reading: readingOf(r, spec) }, (g, trace) => check(g.spec, g.reading, trace));
    },
  ],
  [
    'adjustmentTable',
    (r) => {
      const given = {
        from: celsius(r.between(0, 10, 0)),
        to: celsius(r.between(20, 40, 0)),
        every: temperatureDifference(r.pick(5, 10), 'K'),
        temperatureStep: { step: 1, unit: '°C' as const },
        ambient: anyAmbient(r),
        gaugeStep: { step: 1, unit: 'bar' as const },
      };
      return derivationOf({ spec: anySpec(r), given }, ({ spec, given }, trace) => adjustmentTable(spec, given, trace));
    },
  ],
  [
    'uncertainty',
    (r) => {
      const spec = bySpec(r, 150);
      const given = { spec, reading: readingOf(r, spec), instruments: INSTRUMENTS };
      return derivationOf(given, ({ spec, reading, instruments }, trace) =>
        uncertainty(spec, reading, instruments, trace),
      );
    },
  ],
  [
    'uncertainty by certificates, of a corrected vessel and of several readings',
    (r) => {
      const spec = bySpec(r, 150);
      const given = { spec, reading: readingOf(r, spec), instruments: certified(r) };
      return derivationOf(given, ({ spec, reading, instruments }, trace) =>
        uncertainty(spec, reading, instruments, trace),
      );
    },
  ],
  [
    'decide',
    (r) => {
      const spec = bySpec(r, 150);
      const given = { spec, reading: readingOf(r, spec), instruments: r.pick(INSTRUMENTS, certified(r)) };
      const acceptance = r.pick('simple acceptance', 'guarded acceptance', 'guarded both ways');
      return derivationOf(given, ({ spec, reading, instruments }, trace) =>
        decide(spec, reading, instruments, { ...rule, acceptance }, trace),
      );
    },
  ],
  [
    'saturationAt',
    (r) =>
      derivationOf({ model: nitrogen, temperature: temperature(r.between(64, 125), 'K') }, (given, trace) =>
        saturationAt(given.model, given.temperature, trace),
      ),
  ],
  [
    'assess',
    (r) => {
      const spec = bySpec(r, 150);
      const given = { spec, reading: readingOf(r, spec), instruments: INSTRUMENTS };
      return derivationOf(given, ({ spec, reading, instruments }, trace) =>
        assess(spec, reading, instruments, rule, trace),
      );
    },
  ],
  [
    'normalVolume',
    (r) =>
      derivationOf(
        {
          amount: amount(r.between(0.1, 900, 2), 'mol'),
          model: nitrogen,
          at: r.pick(normalConditions, reference15C1bar),
        },
        ({ amount, model, at }, trace) => normalVolume(amount, model, at, trace),
      ),
  ],
  [
    'normalVolumeAsIdealGas',
    (r) =>
      derivationOf({ amount: amount(r.between(0.1, 900, 2), 'mol'), at: normalConditions }, (given, trace) =>
        normalVolumeAsIdealGas(given.amount, given.at, trace),
      ),
  ],
  [
    'massOfGas',
    (r) =>
      derivationOf({ amount: amount(r.between(0.1, 900, 2), 'mol'), model: nitrogen }, (given, trace) =>
        massOfGas(given.amount, given.model, trace),
      ),
  ],
  [
    'bottleState',
    (r) => {
      const bottle = anyBottle(r, r.between(40, 190));
      return derivationOf({ gas: nitrogen, bottle }, (given, trace) =>
        bottleState(given.gas, given.bottle, 99.9, trace),
      );
    },
  ],
  [
    'checkLoss',
    (r) => {
      const read = {
        pressure: bar(r.between(40, 190)),
        temperature: celsius(r.between(0, 45)),
        ambient: anyAmbient(r),
      };
      const given = {
        gas: nitrogen,
        held: { gasVolume: volume(r.between(0.5, 20), 'L'), read },
        kit: volume(r.between(10, 80, 0), 'mL'),
        before: bar(0),
      };
      return derivationOf(given, (g, trace) => checkLoss(g.gas, g.held, g.kit, g.before, trace));
    },
  ],
  [
    'beforeCheck',
    (r) => {
      const read = {
        pressure: bar(r.between(40, 190)),
        temperature: celsius(r.between(0, 45)),
        ambient: anyAmbient(r),
      };
      const given = {
        gas: nitrogen,
        held: { gasVolume: volume(r.between(0.5, 20), 'L'), read },
        kit: volume(r.between(10, 80, 0), 'mL'),
        before: bar(0),
      };
      return derivationOf(given, (g, trace) => beforeCheck(g.gas, g.held, g.kit, g.before, trace));
    },
  ],
  [
    'serves',
    (r) => {
      const ambient = anyAmbient(r);
      const from = r.between(60, 120);
      const given = {
        gas: nitrogen,
        bottle: anyBottle(r, r.between(155, 190)),
        accumulator: {
          name: 'EV 1',
          gasVolume: volume(r.between(0.5, 20), 'L'),
          read: { pressure: bar(from), temperature: celsius(r.between(5, 45)), ambient },
          to: bar(from + r.between(3, 30)),
          allowable: bar(210),
        },
        rig: {
          kit: { volume: volume(r.between(10, 80, 0), 'mL'), rated: bar(300) },
          regulator: r.pick<Rig['regulator']>('none', {
            difference: barOf(r.between(1, 7)),
            ratedInlet: bar(300),
            ratedOutlet: bar(250),
          }),
        },
      };
      return derivationOf(given, (g, trace) => serves(g.gas, g.bottle, g.accumulator, g.rig, trace));
    },
  ],
  [
    'fillingPlan',
    (r) => {
      const ambient = anyAmbient(r);
      const to = r.between(120, 150);
      const accumulators = ['EV 1', 'EV 2'].map((name) => ({
        name,
        gasVolume: volume(r.between(2, 8), 'L'),
        read: { pressure: bar(r.between(30, 60)), temperature: celsius(r.between(5, 45)), ambient },
        to: bar(to),
        allowable: bar(210),
      }));
      const bottles = [
        { ...anyBottle(r, r.between(90, 110)), waterVolume: volume(10, 'L') },
        // It completes one, and is not above its rating at 15 °C: else the plan is to leave both bottles as they are.
        { ...anyBottle(r, r.between(165, 178)), name: 'N2-2', waterVolume: volume(r.between(50, 60), 'L') },
      ];
      const given = {
        gas: nitrogen,
        leastPurityPercent: 99,
        accumulators,
        bottles,
        rig: {
          kit: { volume: volume(r.between(10, 80, 0), 'mL'), rated: bar(300) },
          regulator: { difference: barOf(r.between(0, 7)), ratedInlet: bar(300), ratedOutlet: bar(250) },
        },
        // The low bottle first, so that some steps end by equalisation.
        objectives: ['accumulators completed', 'useful remainder', ...OBJECTIVES.slice(1, 4)] as const,
      };
      return derivationOf({ given }, (g, trace) => fillingPlan(g.given, trace));
    },
  ],
  ['toFill', bySpecAndReading(({ spec, reading }, trace) => toFill('EV 1', spec, reading, trace))],
  [
    'filling',
    (r) => {
      const from = r.between(60, 120);
      const given = {
        spec: bySpec(r),
        read: { pressure: bar(from), temperature: celsius(r.between(5, 45)), ambient: anyAmbient(r) },
        how: {
          supply: {
            pressure: bar(r.between(190, 220)),
            temperature: celsius(r.between(5, 45)),
            ...r.pick({}, { volume: volume(2000, 'L') }),
          },
          until: r.pick<HowFar>(
            { stop: bar(from + r.between(10, 50)) },
            { settled: bar(from + r.between(10, 30)) },
            { gas: amount(r.between(0.05, 0.4, 2), 'mol') },
          ),
        },
      };
      return derivationOf(given, (g, trace) => filling(g.spec, g.read, g.how, trace));
    },
  ],
  [
    'bleeding',
    (r) => {
      const from = r.between(120, 220);
      const given = {
        spec: bySpec(r),
        read: { pressure: bar(from), temperature: celsius(r.between(5, 45)), ambient: anyAmbient(r) },
        how: {
          until: r.pick<HowFar>(
            { stop: bar(from - r.between(5, 40)) },
            { settled: bar(from - r.between(5, 40)) },
            { gas: amount(r.between(0.05, 0.4, 2), 'mol') },
          ),
        },
      };
      return derivationOf(given, (g, trace) => bleeding(g.spec, g.read, g.how, trace));
    },
  ],
  [
    'draining',
    (r) => {
      const given = {
        spec: bySpec(r),
        read: { pressure: bar(r.between(90, 150)), temperature: celsius(r.between(15, 45)), ambient: anyAmbient(r) },
        how: {
          systemPressure: bar(r.between(170, 250)),
          minutesSince: r.between(0, 20),
          timeConstantMinutes: r.pick<number | 'not known'>(4, 'not known'),
        },
      };
      return derivationOf(given, (g, trace) => draining(g.spec, g.read, g.how, trace));
    },
  ],
  [
    'settlingCurve',
    (r) => {
      const given = {
        spec: bySpec(r),
        read: { pressure: bar(r.between(90, 200)), temperature: celsius(r.between(46, 60)), ambient: anyAmbient(r) },
        how: {
          shell: celsius(r.between(10, 44)),
          timeConstantMinutes: r.between(2, 9),
          minutes: [0, 5, 10],
          within: barOf(0.5),
        },
      };
      return derivationOf(given, (g, trace) => settlingCurve(g.spec, g.read, g.how, trace));
    },
  ],
  [
    'whereToStop',
    (r) => {
      const spec = specOf(r.between(100, 150), 20, { allowable: bar(300) });
      const at = { temperature: celsius(r.between(10, 40)), ambient: anyAmbient(r) };
      const reading = readingWith({ ...at, pressure: bar(r.between(60, 90)) });
      const how = {
        supply: { pressure: bar(230), temperature: celsius(r.between(10, 40)) },
        computedStop: 'not permitted' as const,
      };
      return derivationOf({ spec, reading, how }, (g, trace) => whereToStop(g.spec, g.reading, g.how, trace));
    },
  ],
  [
    'pressureWhenHot',
    (r) =>
      derivationOf(
        { spec: bySpec(r), hottest: { temperature: celsius(r.between(50, 90)), ambient: anyAmbient(r) } },
        (g, trace) => pressureWhenHot(g.spec, 'upper limit', g.hottest, trace),
      ),
  ],
  [
    'oxygenAfterRelease',
    (r) => {
      const release = {
        room: volume(r.between(10, 300), 'm3'),
        conditions: { temperature: celsius(r.between(5, 45)), ambient: anyAmbient(r) },
        gas: nitrogen,
        released: amount(r.between(10, 900), 'mol'),
        minutes: r.pick<number | 'at once'>('at once', r.between(1, 60)),
        ventilation: { airChangesPerHour: r.between(1, 20) },
        oxygenBefore: oxygenInDryAir,
        limit: { fraction: 0.19, source: 'invented' },
      };
      return derivationOf({ release }, (g, trace) => oxygenAfterRelease(g.release, trace));
    },
  ],
  [
    'storedEnergy',
    (r) => {
      const given = {
        spec: bySpec(r),
        read: { pressure: bar(r.between(60, 180)), temperature: celsius(r.between(0, 45)), ambient: anyAmbient(r) },
        system: { systemPressure: bar(r.between(200, 280)), temperature: celsius(r.between(20, 60)) },
      };
      return derivationOf(given, (g, trace) => storedEnergy(g.spec, g.read, g.system, trace));
    },
  ],
  [
    'purge',
    (r) => {
      const given = {
        gas: nitrogen,
        gasVolume: volume(r.between(0.5, 60), 'L'),
        temperature: celsius(r.between(0, 45)),
        high: absolute(r.between(5, 20), 'bar'),
        low: absolute(r.between(1, 1.1, 3), 'bar'),
        before: r.between(0.1, 0.21, 3),
        inSupply: 0.00001,
        wanted: 0.001,
      };
      return derivationOf({ given }, (g, trace) => purge(g.given, trace));
    },
  ],
  [
    'leakTest',
    (r) => {
      const test = {
        lossPerYear: barOf(r.between(1, 20)),
        bubble: volume(r.between(0.02, 0.1, 3), 'mL'),
        patienceMinutes: 5,
        minutesBetween: 1440,
        gaugeStep: { step: 1, unit: 'bar' as const },
      };
      const read = {
        pressure: bar(r.between(60, 180)),
        temperature: celsius(r.between(0, 45)),
        ambient: anyAmbient(r),
      };
      return derivationOf({ spec: bySpec(r), read, test }, (g, trace) => leakTest(g.spec, g.read, g.test, trace));
    },
  ],
  [
    'ratings',
    (r) => {
      const line = {
        bottle: { rating: bar(300), pressure: bar(r.between(100, 220)) },
        regulator: { inlet: bar(300), outlet: bar(200), setTo: bar(154) },
        relief: { opens: bar(205) },
        hose: { rating: bar(400) },
        gauge: { fullScale: bar(r.pick(250, 315, 400)) },
        vessel: { allowable: bar(210), pressure: bar(154) },
      } as const;
      return derivationOf({ line }, (g, trace) => ratings(g.line, trace));
    },
  ],
  [
    'auditTable',
    (r) => {
      const from = r.between(80, 200, 0);
      const table = {
        ...tableOf([0, 1, 2].map((i) => [from + i * r.between(6, 9), 10 * i] as const)),
        referenceTemperature: celsius(10),
      };
      const given = {
        models: [nitrogen, idealNitrogen],
        ambient: standardAtmosphere,
        printedIn: { pressure: 'bar' as const, temperature: '°C' as const },
        temperatureStep: 'exact' as const,
        equation: r.pick('exact' as const, 'within its stated uncertainty' as const),
      };
      return derivationOf({ table, given }, (g, trace) => auditTable(g.table, g.given, trace));
    },
  ],
];
