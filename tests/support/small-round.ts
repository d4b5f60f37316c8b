// A round that is small and has every field that a round may have: each way to state a specification, each kind of
// instrument with each way to state its accuracy, gas, rig and room, and visits of one and of two readings. For tests that
// change every place of a document in every way. Invented; a test in schema.test.ts holds that no field is lacking.
import type { Round } from 'isochore/record';

type Specification = Round['specifications'][number];
type Instrument = NonNullable<Round['instruments']>[number];
type Reading = Round['groups'][number]['accumulators'][number]['visit'][number];

const gauge = (value: number | string) => ({ value, unit: 'bar', basis: 'gauge' }) as const;
const apart = (value: number) => ({ value, unit: 'bar', basis: 'difference' }) as const;
const hPa = (value: number) => ({ value, unit: 'hPa', basis: 'absolute' }) as const;
const celsius = (value: number) => ({ value, unit: '°C' }) as const;
const kelvin = (value: number) => ({ value, unit: 'K', basis: 'difference' }) as const;
const litres = (value: number) => ({ value, unit: 'L' }) as const;

const MEASURED = 'at the measured temperature';
const sheet = { table: 'sheet', column: 'type A' } as const;

function specification(name: string, own: Pick<Specification, 'precharge' | 'tolerance'> & Partial<Specification>) {
  return {
    name,
    gas: 'nitrogen',
    ambient: hPa(1013.25),
    separator: 'diaphragm',
    gasVolume: litres(5),
    allowable: gauge(210),
    settling: { allowance: apart(1.5), minutes: 5 },
    ...own,
  } satisfies Specification;
}

const SPECIFICATIONS: readonly Specification[] = [
  specification('by a point', {
    precharge: { pressure: gauge(140), temperature: celsius(20) },
    tolerance: { plusMinus: apart(2), applies: MEASURED },
    printed: {
      pressure: apart(1),
      temperature: kelvin(0),
      ambientLimit: { value: 30, unit: 'hPa', basis: 'difference' },
    },
    vessel: {
      linearExpansion: { value: 1.2e-5, unit: '1/K' },
      limit: { value: 1e-6, unit: '1/K' },
      treated: 'as uncertainty',
    },
  }),
  specification('by a table', {
    precharge: sheet,
    nominal: { pressure: gauge(141), temperature: celsius(20) },
    tolerance: { plusMinusPercentOfGauge: 2, applies: MEASURED },
    printed: { pressure: 'as the table states', temperature: kelvin(1), ambientLimit: { value: 30, unit: 'hPa', basis: 'difference' } }, // prettier-ignore
  }),
  specification('two-sided', {
    precharge: { pressure: gauge('95'), temperature: celsius(20) },
    tolerance: { below: apart(1.5), above: apart(2.5), applies: 'at the reference temperature' },
    toleranceAfterCharging: { plusMinus: apart(1), applies: MEASURED },
  }),
  specification('by limits', {
    precharge: sheet,
    tolerance: { minimum: { pressure: gauge(135), temperature: celsius(20) }, maximum: { pressure: gauge(145), temperature: celsius(20) } }, // prettier-ignore
  }),
];

const INSTRUMENTS: readonly Instrument[] = [
  {
    name: 'certified gauge',
    kind: 'pressure gauge',
    certificate: 'C 1',
    due: '2026-11-30',
    characteristics: {
      type: 'digital gauge',
      fullScale: gauge(250),
      accuracy: { correction: apart(0), expandedUncertainty: apart(0.4), coverageFactor: 2 },
      temperatureInfluence: { from: celsius(20), percentOfSpanPerKelvin: 0.005 },
    },
  },
  {
    name: 'dial gauge',
    kind: 'pressure gauge',
    characteristics: { type: 'dial gauge', fullScale: gauge(160), accuracy: { accuracyClass: 0.6 }, zero: 'without stop pin' }, // prettier-ignore
  },
  {
    name: 'gauge by its limit',
    kind: 'pressure gauge',
    characteristics: { type: 'dial gauge', fullScale: gauge(250), accuracy: { limit: apart(1) }, zero: 'with stop pin' },
  },
  {
    name: 'digital gauge',
    kind: 'pressure gauge',
    characteristics: {
      type: 'digital gauge',
      fullScale: gauge(250),
      accuracy: { percentOfReading: 0.1, percentOfSpan: 0.1, digits: 1 },
      temperatureInfluence: 'not known',
    },
  },
  {
    name: 'contact thermometer',
    kind: 'thermometer',
    characteristics: { type: 'contact thermometer', accuracy: { limit: kelvin(0.5) }, step: kelvin(0.5), shellToGas: kelvin(1) },
  },
  {
    name: 'infrared thermometer',
    kind: 'thermometer',
    due: '2026-06-30',
    characteristics: {
      type: 'infrared thermometer',
      accuracy: { correction: kelvin(0.1), expandedUncertainty: kelvin(0.6), coverageFactor: 2 },
      step: kelvin(0.1),
      shellToGas: kelvin(1),
      emissivity: { assumed: 0.95, limit: 0.03 },
      surroundings: celsius(30),
    },
  },
]; // prettier-ignore

function reading(role: Reading['role'], at: string, bar: number | string, own: Partial<Reading> = {}): Reading {
  return {
    role,
    at: `2026-03-14T${at}:00+01:00`,
    pressure: gauge(bar),
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 30,
    ...own,
  };
}

const SMALL: Round = {
  version: 1,
  title: 'Small round (invented)',
  rule: { acceptance: 'guarded acceptance', risk: { below: 0.05, above: 0.1 } },
  modelErrorCorrelation: 0,
  instruments: [...INSTRUMENTS],
  tables: [
    {
      name: 'sheet',
      ambient: hPa(1013.25),
      referenceTemperature: celsius(20),
      printedStep: apart(0.5),
      outside: 'refuse',
      columns: ['type A'],
      rows: [
        { temperature: celsius(20), pressures: [gauge(140)] },
        { temperature: celsius(50), pressures: [gauge(158.5)] },
      ],
    },
  ],
  supply: {
    leastPurityPercent: 99.9,
    kit: { volume: { value: 30, unit: 'mL' }, rated: gauge(315), before: gauge(0) },
    regulator: { difference: apart(5), ratedInlet: gauge(300), ratedOutlet: gauge(250) },
    objectives: ['accumulators completed', 'bottles used', 'full bottles opened', 'connections', 'useful remainder'],
    computedStop: 'not permitted',
    exchange: { timeConstantMinutes: 4, movingMinutes: 2 },
    order: {
      waterVolume: litres(50),
      filling: gauge(200),
      labelAmbient: hPa(1013.25),
      residual: gauge(5),
      temperature: celsius(35),
      ambient: hPa(1013.25),
      reservePercent: 50,
    },
    bottles: [
      {
        name: 'bottle',
        waterVolume: litres(50),
        label: { gas: 'nitrogen', purityPercent: 99.99, filling: gauge(200), rated: gauge(200), ambient: hPa(1013.25) },
        pressure: gauge(180),
        temperature: celsius(32),
        ambient: hPa(1008),
        within: apart(4),
        residual: gauge(5),
      },
    ],
  },
  safety: {
    hottest: { temperature: celsius(55), ambient: hPa(1013.25) },
    room: {
      volume: { value: 900, unit: 'm3' },
      temperature: celsius(35),
      ambient: hPa(1013.25),
      minutes: 10,
      airChangesPerHour: 6,
      oxygenBefore: 0.209,
      limit: { fraction: 0.195, source: 'an entry procedure (invented)' },
    },
    inService: { systemPressure: gauge(200), temperature: celsius(55) },
    line: {
      bottle: { rating: gauge(300), pressure: gauge(200) },
      regulator: { inlet: gauge(300), outlet: gauge(250), setTo: gauge(170) },
      relief: { opens: gauge(190) },
      hose: { rating: gauge(315) },
      gauge: { fullScale: gauge(250) },
    },
    leakTest: {
      lossPerYear: apart(5),
      bubble: { value: 0.05, unit: 'mL' },
      patienceMinutes: 5,
      minutesBetween: 1440,
      gaugeStep: apart(1),
    },
    purge: {
      high: { value: 10, unit: 'bar', basis: 'absolute' },
      low: hPa(1013.25),
      temperature: celsius(32),
      before: 1,
      inSupply: 0.0001,
      wanted: 0.01,
    },
  },
  specifications: [...SPECIFICATIONS],
  groups: [
    {
      name: 'Port',
      specification: 'by a point',
      temperature: celsius(40),
      ambient: hPa(1008),
      gaugeStep: apart(1),
      gaugeTemperature: celsius(31),
      ambientLimit: { value: 2, unit: 'hPa', basis: 'difference' },
      readings: 1,
      unitServed: 'main engine',
      engineState: 'stopped',
      stoppedAt: '2026-03-14T07:30:00+01:00',
      drainedAt: '2026-03-14T08:20:00+01:00',
      readBy: 'second engineer',
      verifiedBy: 'chief engineer',
      temperaturePlace: 'shell',
      remarks: 'Ventilation running.',
      instruments: { pressure: 'certified gauge', temperature: 'contact thermometer' },
      accumulators: [
        {
          name: 'P 1',
          componentCode: 'P-01',
          position: 'platform',
          serial: 'N 1',
          runningHours: 8120,
          partsRenewed: ['gas valve core'],
          remarks: 'Gas valve leaked.',
          deviationPermit: 'D 1',
          unitServed: 'cylinder 1',
          engineState: 'turning gear engaged',
          stoppedAt: '2026-03-14T07:40:00+01:00',
          drainedAt: '2026-03-14T08:30:00+01:00',
          readBy: 'third engineer',
          verifiedBy: 'second engineer',
          temperaturePlace: 'gas end',
          visit: [
            reading('as found', '09:10', 152),
            reading('as left', '09:50', '153', {
              temperature: celsius(41),
              ambient: hPa(1009),
              gaugeStep: apart(0.5),
              gaugeTemperature: celsius(33),
              ambientLimit: { value: 3, unit: 'hPa', basis: 'difference' },
              readings: 2,
              instruments: { pressure: 'digital gauge', temperature: 'infrared thermometer' },
            }),
          ],
        },
        {
          name: 'P 2',
          specification: 'by a table',
          visit: [reading('as found', '09:20', 153, { oilSide: 'not drained', systemPressure: gauge(153) })],
        },
      ],
    },
    {
      name: 'Starboard',
      specification: 'two-sided',
      temperature: celsius(36),
      ambient: hPa(1008),
      gaugeStep: apart(1),
      instruments: { pressure: 'dial gauge' },
      accumulators: [
        {
          name: 'S 1',
          visit: [
            reading('as found', '10:05', 101, {
              emptyGasSide: 'investigated and cleared',
              possibleSlip: 'read again and ruled out',
            }),
          ],
        },
        {
          name: 'S 2',
          specification: 'by limits',
          visit: [reading('as found', '10:10', 142, { instruments: { pressure: 'gauge by its limit' } })],
        },
      ],
    },
  ],
};

const TEXT = JSON.stringify(SMALL);

/** The small round, a new copy each time. */
export function smallRound(): Round {
  return JSON.parse(TEXT) as Round;
}

/** Parts of a round that are changed together, and what else of the small round they need to say all that they can. */
const NEEDS = {
  supply: { parts: ['supply'], accumulators: ['S 2'] },
  safety: { parts: ['safety'], accumulators: ['S 2'] },
  instruments: { parts: ['rule', 'modelErrorCorrelation', 'instruments'], accumulators: ['P 1', 'S 2'] },
  specifications: { parts: ['tables', 'specifications'], accumulators: ['P 2', 'S 1', 'S 2'] },
  groups: { parts: ['version', 'title', 'groups'], accumulators: ['P 1', 'P 2', 'S 1', 'S 2'] },
} as const;

export const PARTS = Object.keys(NEEDS) as (keyof typeof NEEDS)[];

/**
 * The small round without most of what has no bearing on some parts of it, which makes a report several times as quick; and
 * which of its fields are these parts. The parts of all are all fields of the round.
 */
export function smallRoundFor(part: (typeof PARTS)[number]): {
  readonly round: Round;
  readonly fields: readonly string[];
} {
  const round = smallRound();
  const { parts, accumulators } = NEEDS[part];
  const has = (name: string): boolean => parts.some((one) => one === name);
  if (!has('supply')) delete round.supply;
  if (!has('safety')) delete round.safety;
  if (has('supply') || has('safety')) delete round.rule;
  for (const group of round.groups)
    group.accumulators = group.accumulators.filter(({ name }) => accumulators.some((one) => one === name));
  return { round, fields: parts };
}
