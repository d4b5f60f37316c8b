// What must hold whatever the vessel, the supply and the time constant.
import fc from 'fast-check';
import {
  amount,
  bleeding,
  draining,
  nitrogen,
  settlingCurve,
  toAbsolute,
  volume,
  whereToStop,
  type FillingSupply,
  type Read,
  type Step,
} from 'isochore';
import { describe, expect, test, vi } from 'vitest';
import { bar, barOf, celsius, hPa, reads, specWith } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { fills } from '../support/fills.js';
import { relativeError } from '../support/reference.js';

// Hundreds of integrations.
vi.setConfig({ testTimeout: 60_000 });

const vessel = { gas: nitrogen, gasVolume: volume(5, 'L') };
const ambient = hPa(1008);
const at = (p_bar: number, t_C = 40): Read => ({ pressure: bar(p_bar), temperature: celsius(t_C), ambient });

const anySupply: fc.Arbitrary<FillingSupply> = fc
  .tuple(evenly(220, 300), evenly(10, 45), fc.option(evenly(40, 60), { nil: undefined }))
  .map(([p, t, litres]) => ({
    pressure: bar(p),
    temperature: celsius(t),
    ...(litres === undefined ? {} : { volume: volume(litres, 'L') }),
  }));
const anyCase = fc.record({
  before: evenly(5, 150),
  rise: evenly(1, 50),
  supply: anySupply,
  tau: evenly(0.5, 20),
  minutes: evenly(0.5, 20),
});

describe('filling', () => {
  test('what happens lies between the bounds: warmer gas, and less of it, settles lower', () => {
    fc.assert(
      fc.property(anyCase, ({ before, rise, supply, tau, minutes }) => {
        const exchange = { timeConstantMinutes: tau, movingMinutes: minutes };
        const until = { stop: bar(before + rise) };
        const { isothermal, adiabatic, inTime = isothermal } = fills(vessel, at(before), { supply, until, exchange });
        expect(adiabatic.temperature.kelvins).toBeGreaterThan(inTime.temperature.kelvins);
        expect(inTime.temperature.kelvins).toBeGreaterThan(isothermal.temperature.kelvins);
        expect(adiabatic.settled.pascals).toBeLessThan(inTime.settled.pascals);
        expect(inTime.settled.pascals).toBeLessThan(isothermal.settled.pascals);
        expect(relativeError(isothermal.settled.pascals, until.stop.pascals)).toBeLessThan(1e-12);
        for (const one of [isothermal, adiabatic, inTime]) expect(one.pressure).toEqual(until.stop);
      }),
      { numRuns: 10 },
    );
  });

  test('a longer time constant leaves it warmer at the stop', () => {
    fc.assert(
      fc.property(anyCase, ({ before, rise, supply, tau, minutes }) => {
        const stopAt = (timeConstantMinutes: number): number => {
          const exchange = { timeConstantMinutes, movingMinutes: minutes };
          return (
            fills(vessel, at(before), { supply, until: { settled: bar(before + rise) }, exchange }).inTime?.pressure
              .pascals ?? Number.NaN
          );
        };
        expect(stopAt(1.1 * tau)).toBeGreaterThan(stopAt(tau));
      }),
      { numRuns: 6 },
    );
  });

  test('the settled pressure depends on the gas added alone, not on the way', () => {
    fc.assert(
      fc.property(anyCase, ({ before, rise, supply, tau, minutes }) => {
        const exchange = { timeConstantMinutes: tau, movingMinutes: minutes };
        const once = fills(vessel, at(before), { supply, until: { settled: bar(before + rise) }, exchange });
        const { isothermal, adiabatic, inTime = isothermal } = once;
        expect(adiabatic.gas).toEqual(isothermal.gas);
        expect(inTime.gas).toEqual(isothermal.gas);
        expect(adiabatic.settled).toEqual(isothermal.settled);
        // In two halves, settling between, and with another supply for the second.
        const half = amount(isothermal.gas.amount.moles / 2, 'mol');
        const first = fills(vessel, at(before), { supply, until: { gas: half } });
        const second = fills(
          vessel,
          { ...at(0), pressure: first.adiabatic.settled },
          { supply: { pressure: bar(300), temperature: celsius(0) }, until: { gas: half } },
        );
        expect(relativeError(second.adiabatic.settled.pascals, isothermal.settled.pascals)).toBeLessThan(1e-11);
      }),
      { numRuns: 6 },
    );
  });

  test('the stop that settles on a pressure settles there', () => {
    fc.assert(
      fc.property(anyCase, ({ before, rise, supply, tau, minutes }) => {
        const exchange = { timeConstantMinutes: tau, movingMinutes: minutes };
        const settled = bar(before + rise);
        const stops = fills(vessel, at(before), { supply, until: { settled }, exchange });
        for (const way of ['isothermal', 'adiabatic', 'inTime'] as const) {
          const stop = stops[way]?.pressure ?? settled;
          const again = fills(vessel, at(before), { supply, until: { stop }, exchange })[way];
          expect(relativeError(again?.settled.pascals ?? 0, settled.pascals)).toBeLessThan(1e-9);
          // And from there it cools to it.
          const curve = settlingCurve(
            vessel,
            { pressure: stop, temperature: again?.temperature ?? celsius(40), ambient },
            { shell: celsius(40), timeConstantMinutes: tau, minutes: [60 * tau], within: barOf(0.1) },
          );
          expect(relativeError(curve.settled.pascals, settled.pascals)).toBeLessThan(1e-9);
          expect(relativeError(curve.points[0]?.pressure.pascals ?? 0, settled.pascals)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 6 },
    );
  });

  test('gas is neither made nor lost between bottle and vessel', () => {
    fc.assert(
      fc.property(anyCase, evenly(45, 60), ({ before, rise, supply }, litres) => {
        const bottle = { ...supply, volume: volume(litres, 'L') };
        const { adiabatic } = fills(vessel, at(before), { supply: bottle, until: { stop: bar(before + rise) } });
        const after = adiabatic.supplyAfter ?? bottle;
        const held = (p: FillingSupply): number =>
          nitrogen['~kernel'].density(p.temperature.kelvins, toAbsolute(p.pressure, ambient).pascals) * (litres / 1000);
        expect(relativeError(held(bottle) - held(after), adiabatic.gas.amount.moles)).toBeLessThan(1e-9);
        expect(after.temperature.kelvins).toBeLessThan(bottle.temperature.kelvins);
      }),
      { numRuns: 7 },
    );
  });
});

describe('bleeding', () => {
  const anyFall = fc.record({
    before: evenly(60, 250),
    share: evenly(0.5, 0.98),
    tau: evenly(0.5, 20),
    minutes: evenly(0.5, 20),
  });

  test('what happens lies between the bounds: colder gas, and more of it, settles higher', () => {
    fc.assert(
      fc.property(anyFall, ({ before, share, tau, minutes }) => {
        const exchange = { timeConstantMinutes: tau, movingMinutes: minutes };
        const until = { stop: bar(before * share) };
        const { isothermal, adiabatic, inTime = isothermal } = bleeding(vessel, at(before), { until, exchange });
        expect(adiabatic.temperature.kelvins).toBeLessThan(inTime.temperature.kelvins);
        expect(inTime.temperature.kelvins).toBeLessThan(isothermal.temperature.kelvins);
        expect(adiabatic.settled.pascals).toBeGreaterThan(inTime.settled.pascals);
        expect(inTime.settled.pascals).toBeGreaterThan(isothermal.settled.pascals);
        expect(relativeError(isothermal.settled.pascals, until.stop.pascals)).toBeLessThan(1e-12);
      }),
      { numRuns: 10 },
    );
  });

  test('the stop that settles on a pressure settles there, and the gas let out is that between the two', () => {
    fc.assert(
      fc.property(anyFall, ({ before, share, tau, minutes }) => {
        const exchange = { timeConstantMinutes: tau, movingMinutes: minutes };
        const settled = bar(before * share);
        const stops = bleeding(vessel, at(before), { until: { settled }, exchange });
        for (const way of ['isothermal', 'adiabatic', 'inTime'] as const) {
          const stop = stops[way]?.pressure ?? settled;
          const again = bleeding(vessel, at(before), { until: { stop }, exchange })[way];
          expect(relativeError(again?.settled.pascals ?? 0, settled.pascals)).toBeLessThan(1e-9);
          const gas = again?.gas.amount ?? amount(1, 'mol');
          const byGas = bleeding(vessel, at(before), { until: { gas }, exchange })[way];
          expect(relativeError(byGas?.pressure.pascals ?? 0, stop.pascals)).toBeLessThan(1e-9);
        }
      }),
      { numRuns: 6 },
    );
  });
});

describe('draining', () => {
  // The way there: gas at the system pressure expands without heat to a density, and warms for a time.
  test('finds the gas that was made to expand and to warm', () => {
    fc.assert(
      fc.property(evenly(180, 300), evenly(0.55, 0.95), evenly(0, 60), evenly(1, 20), (system, share, minutes, tau) => {
        const { adiabatic } = bleeding(vessel, at(system), { until: { stop: bar(system * share) } });
        const { points, settled } = settlingCurve(
          vessel,
          { pressure: adiabatic.pressure, temperature: adiabatic.temperature, ambient },
          { shell: celsius(40), timeConstantMinutes: tau, minutes: [minutes], within: barOf(0.1) },
        );
        const read = { ...at(0), pressure: points[0]?.pressure ?? bar(1) };
        const given = { systemPressure: bar(system), minutesSince: minutes };
        const found = draining(vessel, read, { ...given, timeConstantMinutes: tau });
        expect(relativeError(found.settled.highest.pascals, settled.pascals)).toBeLessThan(1e-9);
        expect(relativeError(found.coldest.kelvins, points[0]?.temperature.kelvins ?? 0)).toBeLessThan(1e-9);
        expect(found.settled.lowest).toEqual(read.pressure);
        expect(relativeError(found.mostLow.pascals + read.pressure.pascals, settled.pascals)).toBeLessThan(1e-9);
        // Without a time constant no time takes anything off.
        const unknown = draining(vessel, read, { ...given, timeConstantMinutes: 'not known' });
        expect(unknown.mostLow.pascals).toBeGreaterThanOrEqual(found.mostLow.pascals * (1 - 1e-9));
      }),
      { numRuns: 15 },
    );
  });

  test('the error that is possible gets less with time', () => {
    const most = [0, 1, 5, 20, 100].map(
      (minutesSince) =>
        draining(vessel, at(143), { systemPressure: bar(210), minutesSince, timeConstantMinutes: 4 }).mostLow.pascals,
    );
    expect([...most].sort((a, b) => b - a)).toEqual(most);
    expect(most.at(-1)).toBeLessThan(1);
  });
});

test('a calculation that is watched gives the same, and shows the energy of the filled vessel', () => {
  const given = {
    supply: { pressure: bar(200), temperature: celsius(20) },
    until: { stop: bar(154) },
    exchange: { timeConstantMinutes: 4, movingMinutes: 3 },
  };
  const seen: Step[] = [];
  const watch = (step: Step): number => seen.push(step);
  expect(fills(vessel, at(143), given, watch)).toEqual(fills(vessel, at(143), given));
  expect(seen.some(({ relation }) => relation.gives === 'U')).toBe(true);
  const out = { until: { stop: bar(150) } };
  expect(bleeding(vessel, at(170), out, watch)).toEqual(bleeding(vessel, at(170), out));
  const settling = { shell: celsius(20), timeConstantMinutes: 4, minutes: [0, 3], within: barOf(1) };
  expect(settlingCurve(vessel, at(170), settling, watch)).toEqual(settlingCurve(vessel, at(170), settling));
  expect(seen.filter(({ relation }) => relation.gives === 'x').map(({ values }) => values)).toEqual([
    [0, 4],
    [3, 4],
  ]);
  const drained = { systemPressure: bar(210), minutesSince: 3, timeConstantMinutes: 4 };
  expect(draining(vessel, at(143), drained, watch)).toEqual(draining(vessel, at(143), drained));
  const work = { supply: given.supply, computedStop: 'not permitted' } as const;
  expect(whereToStop(specWith(), reads(143), work, watch)).toEqual(whereToStop(specWith(), reads(143), work));
});
