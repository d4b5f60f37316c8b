import { absolute, Fault, gauge, isFault, temperature, type Problem, type Reading } from 'isochore';
import { describe, expect, test } from 'vitest';
import { ACCURACY_CLASSES, gaugeLimit, gaugeTemperatureLimit, notCovered } from '../../src/reading/gauge.js';
import { instrumentCautions, needInstruments, type Instruments } from '../../src/reading/instruments.js';
import { bar, barOf, celsius, reads, readingWith } from '../support/accumulator.js';
import { CONTACT, DIAL, dialWith, inBar, inK, INSTRUMENTS, instrumentsWith } from '../support/instruments.js';

/** All that is wrong with instruments, whatever their types say. */
function problemsOf(given: unknown, reading: Reading = readingWith(), byTable = false): readonly Problem[] {
  try {
    needInstruments(given as Instruments, reading, byTable);
  } catch (error) {
    if (isFault(error)) return error.problems;
    throw error;
  }
  return [];
}

const found = (given: unknown, byTable = false): string[] =>
  problemsOf(given, readingWith(), byTable).map(({ code, path }) => `${path}: ${code}`);

const CERTIFICATE = { correction: barOf(0.2), expandedUncertainty: barOf(0.5), coverageFactor: 2, due: '2026-06-30' };
const DIGITAL = {
  type: 'digital gauge',
  fullScale: bar(400),
  accuracy: { percentOfReading: 0.25, percentOfSpan: 0.05, digits: 1 },
  temperature: { is: celsius(35), from: celsius(23), percentOfSpanPerKelvin: 0.01 },
} as const;
const INFRARED = {
  ...CONTACT,
  type: 'infrared thermometer',
  emissivity: { assumed: 0.95, limit: 0.03 },
  surroundings: celsius(25),
} as const;

test('sound instruments are taken', () => {
  for (const thermometer of [
    CONTACT,
    INFRARED,
    { ...CONTACT, accuracy: { certificate: { ...CERTIFICATE, correction: inK(0), expandedUncertainty: inK(1) } } },
  ])
    expect(found(instrumentsWith({ thermometer }))).toEqual([]);
  for (const own of [
    DIAL,
    { ...DIAL, accuracy: { limit: inBar(3) } },
    { ...DIAL, accuracy: { certificate: CERTIFICATE } },
    DIGITAL,
  ])
    expect(found(instrumentsWith({ gauge: own }))).toEqual([]);
  expect(
    found(instrumentsWith({ gauge: { ...DIGITAL, accuracy: { certificate: CERTIFICATE }, temperature: 'not known' } })),
  ).toEqual([]);
});

// EN 837-1, from memory: the classes, and per class the limit of error of a gauge of 0 to 250 bar by hand.
test.each([
  [0.1, 0.25],
  [0.25, 0.625],
  [0.6, 1.5],
  [1, 2.5],
  [1.6, 4],
  [2.5, 6.25],
  [4, 10],
] as const)('class %d of 250 bar is ± %d bar', (accuracyClass, limit) => {
  const accuracy = { accuracyClass };
  const instruments = dialWith({ accuracy });
  expect(gaugeLimit(instruments.gauge, accuracy, reads(150))).toBeCloseTo(limit * 1e5, 8);
  expect(found(instruments)).toEqual([]);
  expect(ACCURACY_CLASSES).toContain(accuracyClass);
});

test('the limit of a digital gauge is the sum of its three parts', () => {
  // 0.25 % of 200 bar, 0.05 % of 400 bar, one count of 0.1 bar.
  const reading = reads(200, { gaugeStep: { step: 0.1, unit: 'bar' } });
  expect(gaugeLimit(DIGITAL, DIGITAL.accuracy, reading)).toBeCloseTo(80_000, 6);
});

test('temperature moves a gauge by 0.04 % of its span for every kelvin from 20 °C, to either side (EN 837-1)', () => {
  for (const [t, limit] of [
    [20, 0],
    [45, 2.5],
    [-5, 2.5],
  ] as const)
    expect(gaugeTemperatureLimit(dialWith({ temperature: celsius(t) }).gauge)).toBeCloseTo(limit * 1e5, 6);
  expect(gaugeTemperatureLimit(dialWith({ temperature: 'not known' }).gauge)).toBe('not known');
  expect(gaugeTemperatureLimit(instrumentsWith({ gauge: DIGITAL }).gauge)).toBeCloseTo(0.48e5, 8);
});

describe('where a gauge is accurate', () => {
  const stop = dialWith({ zero: 'with stop pin' });
  test('with a stop pin from a tenth of its scale up', () => {
    expect(notCovered(stop.gauge, reads(24.99))).toBe('reading in the first tenth of a scale with stop pin');
    expect(notCovered(stop.gauge, reads(25))).toBeUndefined();
    expect(notCovered(INSTRUMENTS.gauge, reads(1))).toBeUndefined();
    expect(notCovered(instrumentsWith({ gauge: DIGITAL }).gauge, reads(1))).toBeUndefined();
  });
  test('not below zero', () => {
    expect(notCovered(INSTRUMENTS.gauge, reads(-0.5))).toBe('reading below zero');
    expect(notCovered(INSTRUMENTS.gauge, reads(0))).toBeUndefined();
  });
  test('not above its end', () => {
    expect(notCovered(INSTRUMENTS.gauge, reads(250.1))).toBe('reading above full scale');
    expect(notCovered(INSTRUMENTS.gauge, reads(250))).toBeUndefined();
  });
});

describe('cautions', () => {
  const on = (date: string, gauge: Instruments['gauge'] = { ...DIAL, accuracy: { certificate: CERTIFICATE } }) =>
    instrumentCautions(instrumentsWith({ on: date, gauge }), reads(150));

  test('a certificate past due on the day of the reading, no earlier', () => {
    expect(on('2026-06-30')).toEqual([]);
    expect(on('2026-07-01')).toEqual(['certificate past due']);
    expect(on('2099-01-01', DIAL)).toEqual([]);
  });

  test('that of the thermometer too', () => {
    const certificate = { ...CERTIFICATE, correction: inK(0), expandedUncertainty: inK(1) };
    const thermometer = { ...CONTACT, accuracy: { certificate } };
    expect(instrumentCautions(instrumentsWith({ thermometer, on: '2026-07-01' }), reads(150))).toEqual([
      'certificate past due',
    ]);
  });

  test('a reading above three quarters of the scale of a dial gauge (EN 837-2, from memory)', () => {
    expect(instrumentCautions(INSTRUMENTS, reads(187.5))).toEqual([]);
    expect(instrumentCautions(INSTRUMENTS, reads(187.6))).toEqual(['reading high on the scale']);
    expect(instrumentCautions(instrumentsWith({ gauge: DIGITAL }), reads(399))).toEqual([]);
  });
});

describe('bad input', () => {
  const withGauge = (changed: object) => ({ ...INSTRUMENTS, gauge: { ...DIAL, ...changed } });
  const withDigital = (changed: object) => ({ ...INSTRUMENTS, gauge: { ...DIGITAL, ...changed } });
  const withThermometer = (changed: object) => ({ ...INSTRUMENTS, thermometer: { ...CONTACT, ...changed } });
  const withInfrared = (changed: object) => ({ ...INSTRUMENTS, thermometer: { ...INFRARED, ...changed } });
  const certified = (changed: object) => withGauge({ accuracy: { certificate: { ...CERTIFICATE, ...changed } } });
  const vessel = (changed: object) => ({ ...INSTRUMENTS, vessel: { ...INSTRUMENTS.vessel, ...changed } });
  const printed = (changed: object) => ({ ...INSTRUMENTS, printed: { ...INSTRUMENTS.printed, ...changed } });

  test.each<[string, unknown, string]>([
    [
      'a class that is none',
      withGauge({ accuracy: { accuracyClass: 0.5 } }),
      'gauge.accuracy.accuracyClass: not an accuracy class',
    ],
    [
      'a class as a text',
      withGauge({ accuracy: { accuracyClass: '1' } }),
      'gauge.accuracy.accuracyClass: not an accuracy class',
    ],
    [
      'class and limit',
      withGauge({ accuracy: { accuracyClass: 1, limit: inBar(2) } }),
      'gauge.accuracy: not one of several',
    ],
    ['neither', withGauge({ accuracy: {} }), 'gauge.accuracy: not one of several'],
    ['a limit of zero', withGauge({ accuracy: { limit: inBar(0) } }), 'gauge.accuracy.limit: not positive'],
    [
      'a limit of the wrong kind',
      withGauge({ accuracy: { limit: gauge(2, 'bar') } }),
      'gauge.accuracy.limit: wrong kind',
    ],
    ['no scale', withGauge({ fullScale: gauge(0, 'bar') }), 'gauge.fullScale: not positive'],
    ['an absolute scale', withGauge({ fullScale: absolute(250, 'bar') }), 'gauge.fullScale: absolute for gauge'],
    ['another type', withGauge({ type: 'test gauge' }), 'gauge.type: unknown word'],
    ['a zero that is not said', withGauge({ zero: undefined }), 'gauge.zero: unknown word'],
    ['a temperature left out', withGauge({ temperature: undefined }), 'gauge.temperature: wrong kind'],
    ['no gauge', { ...INSTRUMENTS, gauge: undefined }, 'gauge: wrong kind'],
    [
      'a coverage factor of zero',
      certified({ coverageFactor: 0 }),
      'gauge.accuracy.certificate.coverageFactor: not positive',
    ],
    ['one below', certified({ coverageFactor: -2 }), 'gauge.accuracy.certificate.coverageFactor: not positive'],
    ['none', certified({ coverageFactor: Number.NaN }), 'gauge.accuracy.certificate.coverageFactor: not a number'],
    [
      'no uncertainty',
      certified({ expandedUncertainty: barOf(0) }),
      'gauge.accuracy.certificate.expandedUncertainty: not positive',
    ],
    ['a correction in kelvins', certified({ correction: inK(1) }), 'gauge.accuracy.certificate.correction: wrong kind'],
    ['a day that there is not', certified({ due: '2026-02-29' }), 'gauge.accuracy.certificate.due: not a date'],
    ['a day of another form', certified({ due: '30.06.2026' }), 'gauge.accuracy.certificate.due: not a date'],
    [
      'a digital gauge without error',
      withDigital({ accuracy: { percentOfReading: 0, percentOfSpan: 0, digits: 0 } }),
      'gauge.accuracy: not positive',
    ],
    [
      'half a digit',
      withDigital({ accuracy: { ...DIGITAL.accuracy, digits: 0.5 } }),
      'gauge.accuracy.digits: not a count',
    ],
    [
      'less than nothing',
      withDigital({ accuracy: { ...DIGITAL.accuracy, percentOfSpan: -1 } }),
      'gauge.accuracy.percentOfSpan: outside bounds',
    ],
    [
      'a percentage left out',
      withDigital({ accuracy: { percentOfSpan: 1, digits: 0 } }),
      'gauge.accuracy.percentOfReading: not a number',
    ],
    [
      'both ways',
      withDigital({ accuracy: { ...DIGITAL.accuracy, certificate: CERTIFICATE } }),
      'gauge.accuracy: not one of several',
    ],
    ['a bare temperature', withDigital({ temperature: celsius(20) }), 'gauge.temperature: wrong kind'],
    ['a thermometer of no kind', withThermometer({ type: 'thermometer' }), 'thermometer.type: unknown word'],
    ['no limit', withThermometer({ accuracy: { limit: inK(0) } }), 'thermometer.accuracy.limit: not positive'],
    ['a step below zero', withThermometer({ step: inK(-1) }), 'thermometer.step: outside bounds'],
    ['shell to gas left out', withThermometer({ shellToGas: undefined }), 'thermometer.shellToGas: wrong kind'],
    [
      'a temperature for a difference',
      withThermometer({ shellToGas: temperature(2, 'K') }),
      'thermometer.shellToGas: wrong kind',
    ],
    [
      'an emissivity above 1',
      withInfrared({ emissivity: { assumed: 1.05, limit: 0 } }),
      'thermometer.emissivity.assumed: outside bounds',
    ],
    [
      'one that may be anything',
      withInfrared({ emissivity: { assumed: 0.6, limit: 0.4 } }),
      'thermometer.emissivity.limit: outside bounds',
    ],
    ['no surroundings', withInfrared({ surroundings: undefined }), 'thermometer.surroundings: wrong kind'],
    ['a barometer below zero', { ...INSTRUMENTS, barometer: { limit: barOf(-1) } }, 'barometer.limit: negative'],
    ['a correlation above 1', { ...INSTRUMENTS, modelErrorCorrelation: 1.01 }, 'modelErrorCorrelation: outside bounds'],
    ['below −1', { ...INSTRUMENTS, modelErrorCorrelation: -1.01 }, 'modelErrorCorrelation: outside bounds'],
    ['none', { ...INSTRUMENTS, modelErrorCorrelation: undefined }, 'modelErrorCorrelation: not a number'],
    ['a vessel of rubber', vessel({ linearExpansion_per_K: 2e-4 }), 'vessel.linearExpansion_per_K: outside bounds'],
    ['a coefficient less known than its size', vessel({ limit_per_K: 2e-5 }), 'vessel.limit_per_K: outside bounds'],
    ['treated as one likes', vessel({ treated: 'ignored' }), 'vessel.treated: unknown word'],
    ['no readings', { ...INSTRUMENTS, readings: 0 }, 'readings: not a count'],
    ['half a reading', { ...INSTRUMENTS, readings: 1.5 }, 'readings: not a count'],
    ['no day', { ...INSTRUMENTS, on: '2026-13-01' }, 'on: not a date'],
    ['a time', { ...INSTRUMENTS, on: '2026-03-14T09:00:00Z' }, 'on: not a date'],
    [
      'a step that the table states, without one',
      printed({ pressure: 'as the table states' }),
      'printed.pressure: unknown word',
    ],
    ['a step below zero', printed({ pressure: barOf(-1) }), 'printed.pressure: negative'],
  ])('%s', (_, given, wanted) => {
    expect(found(given)).toEqual([`instruments.${wanted}`]);
  });

  test('a step of its own beside that of a table', () => {
    expect(found(INSTRUMENTS, true)).toEqual(['instruments.printed.pressure: unknown word']);
    expect(found(printed({ pressure: 'as the table states' }), true)).toEqual([]);
  });

  test('everything at once is told at once', () => {
    const given = {
      ...INSTRUMENTS,
      gauge: { ...DIAL, fullScale: barOf(1), accuracy: { accuracyClass: 3 } },
      readings: -1,
      on: '',
    };
    expect(found(given)).toEqual([
      'instruments.gauge.fullScale: wrong kind',
      'instruments.gauge.accuracy.accuracyClass: not an accuracy class',
      'instruments.readings: not a count',
      'instruments.on: not a date',
    ]);
  });

  test.each([undefined, null, 'class 1', 7, []])('instruments that are %o', (given) => {
    expect(() => needInstruments(given as unknown as Instruments, readingWith(), false)).toThrow(Fault);
  });

  test('a leap day is a day', () => {
    expect(found({ ...INSTRUMENTS, on: '2028-02-29' })).toEqual([]);
    expect(found({ ...INSTRUMENTS, on: '2100-02-29' })).toEqual(['instruments.on: not a date']);
  });
});
