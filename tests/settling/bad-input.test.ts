// What is refused, and by which name: a fault for an input that is none, never a number made of it.
import {
  amount,
  bleeding,
  cubicNitrogen,
  draining,
  filling,
  fitTimeConstant,
  gauge,
  nitrogen,
  settlingCurve,
  settlingEvidence,
  settlingText,
  temperature,
  valueIn,
  volume,
  type FillingGiven,
  type GaugePressure,
  type SettlingCode,
  type TimedGiven,
  type TimedReading,
} from 'isochore';
import { isFault } from 'isochore';
import { describe, expect, test } from 'vitest';
import { bar, barOf, celsius, hPa } from '../support/accumulator.js';
import { fills } from '../support/fills.js';
import { problemOf } from '../support/problem.js';

const vessel = { gas: nitrogen, gasVolume: volume(5, 'L') };
const before = { pressure: bar(120), temperature: celsius(40), ambient: hPa(1008) };
const supply = { pressure: bar(200), temperature: celsius(20) };
const given: FillingGiven = { supply, until: { stop: bar(150) } };
const exchange = { timeConstantMinutes: 4, movingMinutes: 3 };
const fillWith = (changed: object) => problemOf(() => filling(vessel, before, { ...given, ...changed }));

describe('filling', () => {
  test.each<[string, object, string, string]>([
    ['a stop below the reading', { until: { stop: bar(119) } }, 'stop not beyond', 'given.until.stop'],
    ['a stop at the reading', { until: { stop: bar(120) } }, 'stop not beyond', 'given.until.stop'],
    ['to settle below the reading', { until: { settled: bar(100) } }, 'stop not beyond', 'given.until.settled'],
    ['two limits', { until: { stop: bar(150), settled: bar(140) } }, 'not one of several', 'given.until'],
    ['no limit', { until: {} }, 'not one of several', 'given.until'],
    ['no gas', { until: { gas: amount(0, 'mol') } }, 'not positive', 'given.until.gas'],
    ['gas beyond the model', { until: { gas: amount(1e6, 'mol') } }, 'outside the model', 'given.until.gas'],
    ['an absolute stop', { until: { stop: hPa(1008) } }, 'absolute for gauge', 'given.until.stop'],
    ['a bottle without volume', { supply: { ...supply, volume: volume(0, 'L') } }, 'not positive', 'given.supply.volume'],
    ['a supply without temperature', { supply: { pressure: bar(200) } }, 'wrong kind', 'given.supply.temperature'],
    ['no supply', { supply: null }, 'wrong kind', 'given.supply'],
    ['a supply of liquid', { supply: { pressure: bar(30), temperature: temperature(80, 'K') } }, 'liquid', 'given.supply.pressure'],
    ['no time constant', { exchange: { ...exchange, timeConstantMinutes: 0 } }, 'not positive', 'given.exchange.timeConstantMinutes'],
    ['a negative time constant', { exchange: { ...exchange, timeConstantMinutes: -4 } }, 'not positive', 'given.exchange.timeConstantMinutes'],
    ['a time constant that is no number', { exchange: { ...exchange, timeConstantMinutes: '4' } }, 'not a number', 'given.exchange.timeConstantMinutes'],
    ['a filling without end', { exchange: { ...exchange, movingMinutes: 401 } }, 'outside bounds', 'given.exchange.movingMinutes'],
    ['no exchange', { exchange: null }, 'wrong kind', 'given.exchange'],
  ])('%s', (_, changed, code, path) => {
    expect(fillWith(changed)).toMatchObject({ code, path });
  }); // prettier-ignore

  test.each<[string, object, (number | string)[]]>([
    ['a stop above the supply, by any way', { until: { stop: bar(201) } }, [200, 200]],
    ['to settle where only the warm gas is above the supply', { until: { settled: bar(195) } }, ['reached', 200]],
    [
      'a bottle that empties',
      { supply: { ...supply, volume: volume(0.5, 'L') } },
      ['empties before', 'empties before'],
    ],
  ])('%s: each bound is an outcome of its own', (_, changed, found) => {
    const { isothermal, adiabatic } = filling(vessel, before, { ...given, ...changed });
    expect(
      [isothermal, adiabatic].map((end) =>
        end.outcome === 'reached' ? end.outcome : typeof end.found === 'string' ? end.found : valueIn(end.found, 'bar'),
      ),
    ).toEqual(found);
  });

  test('a supply too low is below what is needed, which is above what the gas settles at', () => {
    const small = { ...supply, volume: volume(20, 'L') };
    const { isothermal, adiabatic } = filling(vessel, before, { supply: small, until: { settled: bar(188) } });
    if (isothermal.outcome === 'reached' || adiabatic.outcome === 'reached') throw new Error('reached');
    const [warm, cold] = [adiabatic, isothermal].map(({ needed }) => valueIn(needed, 'bar'));
    expect(cold).toBeCloseTo(188, 9);
    expect(warm).toBeGreaterThan(193);
    // It cools while it feeds, and has less than it would have warm.
    const [colder, warmer] = [adiabatic, isothermal].map(({ found }) => (found as GaugePressure).pascals);
    expect(colder).toBeLessThan(Number(warmer));
    expect(warmer).toBeLessThan(188e5);
  });

  test('all that is wrong with vessel and reading is listed at once', () => {
    try {
      filling({ gas: { ...nitrogen }, gasVolume: volume(0, 'L') }, { ...before, temperature: 40 as never }, given);
    } catch (error) {
      if (!isFault(error)) throw error;
      expect(error.problems.map(({ path }) => path)).toEqual(['vessel.gas', 'vessel.gasVolume', 'before.temperature']);
      return;
    }
    throw new Error('not refused');
  });

  test('an empty vessel, and one below vacuum', () => {
    const vacuum = { ...before, pressure: gauge(-1008, 'hPa') };
    expect(problemOf(() => filling(vessel, vacuum, given))).toMatchObject({ code: 'empty space' });
    const below = { ...before, pressure: bar(-1.1) };
    expect(problemOf(() => filling(vessel, below, given))).toMatchObject({ code: 'gauge below vacuum' });
  });

  test('what the gas has nowhere to go: hotter than the model', () => {
    const hot = { pressure: bar(200), temperature: temperature(590, 'K') };
    const cubic = { gas: cubicNitrogen, gasVolume: volume(5, 'L') };
    const hotter = { ...hot, temperature: temperature(990, 'K') };
    const empty = { ...before, pressure: bar(0) };
    const problem = problemOf(() => filling(cubic, empty, { supply: hotter, until: { stop: bar(150) } }));
    expect(problem).toMatchObject({ code: 'leaves the model' });
    const { adiabatic } = fills(cubic, empty, { supply: hot, until: { stop: bar(150) } });
    expect(adiabatic.temperature.kelvins).toBeGreaterThan(700);
  });
});

describe('bleeding', () => {
  test.each<[string, object, string]>([
    ['upwards', { stop: bar(121) }, 'stop not beyond'],
    ['more than there is', { gas: amount(1000, 'mol') }, 'more than there is'],
    ['below vacuum', { stop: bar(-2) }, 'gauge below vacuum'],
    ['to vacuum', { stop: gauge(-1008, 'hPa') }, 'empty space'],
    ['so far that what remains condenses', { stop: bar(-1) }, 'leaves the model'],
  ])('%s', (_, until, code) => {
    expect(problemOf(() => bleeding(vessel, before, { until: until as never }))).toMatchObject({ code });
  });
});

describe('draining', () => {
  const sound = { systemPressure: bar(200), minutesSince: 3, timeConstantMinutes: 4 };
  test.each<[string, object, string, string]>([
    ['a system below the gas', { systemPressure: bar(119) }, 'stop not beyond', 'given.systemPressure'],
    ['a system at the gas', { systemPressure: bar(120) }, 'stop not beyond', 'given.systemPressure'],
    ['minutes below zero', { minutesSince: -1 }, 'not minutes at rest', 'given.minutesSince'],
    ['no time constant', { timeConstantMinutes: 0 }, 'not positive', 'given.timeConstantMinutes'],
    ['a time constant left out', { timeConstantMinutes: undefined }, 'not a number', 'given.timeConstantMinutes'],
  ])('%s', (_, changed, code, path) => {
    expect(problemOf(() => draining(vessel, before, { ...sound, ...changed }))).toMatchObject({ code, path });
  });
});

describe('the curve of settling', () => {
  const sound = { shell: celsius(20), timeConstantMinutes: 4, minutes: [0, 1], within: barOf(0.5) };
  test.each<[string, object, string, string]>([
    ['a time constant below zero', { timeConstantMinutes: -1 }, 'not positive', 'given.timeConstantMinutes'],
    ['minutes below zero', { minutes: [0, -1] }, 'negative', 'given.minutes[1]'],
    ['minutes that are no number', { minutes: [Number.NaN] }, 'not a number', 'given.minutes[0]'],
    ['too many minutes', { minutes: Array.from({ length: 1001 }, (_, i) => i) }, 'too long', 'given.minutes'],
    ['minutes that are no list', { minutes: 5 }, 'wrong kind', 'given.minutes'],
    ['no difference', { within: barOf(0) }, 'outside bounds', 'given.within'],
    ['a shell that is none', { shell: 20 }, 'wrong kind', 'given.shell'],
  ])('%s', (_, changed, code, path) => {
    expect(problemOf(() => settlingCurve(vessel, before, { ...sound, ...changed }))).toMatchObject({
      code,
      path,
    });
  });
});

describe('timed readings', () => {
  const at = (...pairs: [number, number][]): TimedReading[] =>
    pairs.map(([minutes, p]) => ({ minutes, pressure: bar(p) }));
  const stated: TimedGiven = { gaugeStep: { step: 0.5, unit: 'bar' }, after: 'filling' };
  const sound = at([0, 140], [5, 138], [10, 137]);
  test.each<[string, unknown, object, string, string]>([
    ['out of order', at([0, 140], [5, 138], [4, 137]), {}, 'minutes out of order', 'readings[2].minutes'],
    ['two at one time', at([0, 140], [5, 138], [5, 137]), {}, 'minutes out of order', 'readings[2].minutes'],
    ['before the gas stopped', at([-1, 140], [5, 138], [6, 137]), {}, 'negative', 'readings[0].minutes'],
    ['years later', at([0, 140], [5, 138], [1e7, 137]), {}, 'outside bounds', 'readings[2].minutes'],
    ['without a time', [{ pressure: bar(1) }, ...at([5, 138], [6, 137])], {}, 'not a number', 'readings[0].minutes'],
    ['without a pressure', [{ minutes: 0 }, ...at([5, 138], [6, 137])], {}, 'wrong kind', 'readings[0].pressure'],
    ['one that is none', [null, ...at([5, 138], [6, 137])], {}, 'wrong kind', 'readings[0]'],
    ['no list', 'readings', {}, 'wrong kind', 'readings'],
    ['too many', Array.from({ length: 61 }, (_, i) => ({ minutes: i, pressure: bar(1) })), {}, 'too long', 'readings'],
    ['a step that is none', sound, { gaugeStep: { step: 0, unit: 'bar' } }, 'not a step', 'given.gaugeStep.step'],
    ['a unit that is none', sound, { gaugeStep: { step: 1, unit: 'barg' } }, 'unknown unit', 'given.gaugeStep.unit'],
    ['after nothing', sound, { after: 'reading' }, 'unknown word', 'given.after'],
  ])('%s', (_, readings, changed, code, path) => {
    for (const call of [settlingEvidence, fitTimeConstant])
      expect(problemOf(() => call(readings as TimedReading[], { ...stated, ...changed }))).toMatchObject({
        code,
        path,
      });
  });

  test('too few for what is asked', () => {
    expect(problemOf(() => settlingEvidence(sound.slice(0, 1), stated))).toMatchObject({ code: 'too few readings' });
    expect(problemOf(() => fitTimeConstant(sound.slice(0, 2), stated))).toMatchObject({
      code: 'too few readings',
      wanted: '3 readings or more',
    });
  });

  test('what is stated beside them', () => {
    const evidence = (changed: object) => problemOf(() => settlingEvidence(sound, { ...stated, ...changed }));
    expect(evidence({ timeConstantMinutes: 0 })).toMatchObject({
      code: 'not positive',
      path: 'given.timeConstantMinutes',
    });
    expect(evidence({ mostByCooling: barOf(-1) })).toMatchObject({ code: 'negative', path: 'given.mostByCooling' });
    expect(problemOf(() => settlingEvidence(sound, null as never))).toMatchObject({
      code: 'wrong kind',
      path: 'given',
    });
  });

  test('a code that is none has no words', () => {
    expect(problemOf(() => settlingText('settled' as SettlingCode))).toMatchObject({ code: 'unknown word' });
  });
});
