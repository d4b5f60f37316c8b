// A round that states its gas and its rig: the report has the plan of the core, in the units of the round.
import {
  beforeCheck,
  bottleState,
  fillingPlan,
  gauge,
  nitrogen,
  pressureDifference,
  supplyText,
  temperature,
  valueIn,
  volume,
  whereToStop,
  absolute,
  type Bottle,
} from 'isochore';
import {
  recall,
  reportRound,
  reportRoundText,
  reverify,
  RoundReportShape,
  RoundShape,
  type Round,
  type RoundReport,
} from 'isochore/record';
import { describe, expect, test } from 'vitest';
import { energyJson } from '../../src/record/write-safety.js';
import { reads, SPEC } from '../support/exhaust-valves.js';
import { exampleRound, expectSound, keysOf, NOTHING, put, reportRest } from '../support/round.js';
import { smallRound } from '../support/small-round.js';

type Filling = NonNullable<RoundReport['filling']>;

/** The example, as some puts change it. */
function roundWith(...puts: (readonly [string, unknown])[]): Round {
  const round = exampleRound();
  for (const [path, value] of puts) put(round, keysOf(path), value);
  return round;
}

function fillingOf(...puts: (readonly [string, unknown])[]): Filling {
  const report = reportRest(roundWith(...puts));
  expect(report.problems).toEqual([]);
  return report.filling as Filling;
}

/** EV 2 as it was found, without the work done: 143 bar, where 152.6 are wanted. */
const dropLater = (round: Round): Round => {
  const visit = round.groups[0]?.accumulators[1]?.visit;
  visit?.splice(1);
  return round;
};

describe('the plan', () => {
  const round = dropLater(exampleRound());
  const report = reportRest(round);
  const filling = report.filling as Filling;

  test('is of what is still to be filled', () => {
    expect(filling.accumulators.map(({ name }) => name)).toEqual(['EV 2', 'FI 2', 'FI 6']);
    expect(fillingOf().accumulators.map(({ name }) => name)).toEqual(['FI 2', 'FI 6']);
  });

  test('is the plan of the core', () => {
    const read = (p: number) => ({ pressure: gauge(p, 'bar'), temperature: temperature(32, '°C'), ambient: absolute(1008, 'hPa') }); // prettier-ignore
    const bottle = (name: string, p: number): Bottle => ({
      name,
      waterVolume: volume(50, 'L'),
      label: { gas: 'nitrogen', purityPercent: 99.99, filling: gauge(200, 'bar'), rated: gauge(200, 'bar'), ambient: absolute(1013.25, 'hPa') }, // prettier-ignore
      read: read(p),
      within: pressureDifference(4, 'bar'),
      residual: gauge(5, 'bar'),
    });
    const bottles = [bottle('N2-1', 120), bottle('N2-2', 96), bottle('N2-3', 213)];
    const plan = fillingPlan({
      gas: nitrogen,
      leastPurityPercent: 99.9,
      accumulators: report.accumulators
        .filter(({ name }) => ['EV 2', 'FI 2', 'FI 6'].includes(name))
        .map(({ name, asFound: { target, reading } }) => ({
          name,
          gasVolume: volume(name === 'EV 2' ? 5 : 1.6, 'L'),
          read: {
            pressure: gauge(Number(reading.pressure.value), reading.pressure.unit),
            temperature: temperature(Number(reading.temperature.value), reading.temperature.unit),
            ambient: absolute(1008, 'hPa'),
          },
          to: gauge(Number(target.value), target.unit),
          allowable: gauge(210, 'bar'),
        })),
      bottles,
      rig: {
        kit: { volume: volume(30, 'mL'), rated: gauge(315, 'bar') },
        regulator: {
          difference: pressureDifference(5, 'bar'),
          ratedInlet: gauge(300, 'bar'),
          ratedOutlet: gauge(250, 'bar'),
        },
      },
      objectives: ['accumulators completed', 'full bottles opened', 'bottles used', 'connections', 'useful remainder'],
    });
    expect(filling.steps.map(({ bottle, name, ended }) => [bottle, name, ended])).toEqual(
      plan.steps.map(({ bottle, accumulator, ended }) => [bottle, accumulator, ended]),
    );
    filling.steps.forEach(({ moved, bottleAfter }, i) => {
      const step = plan.steps[i];
      expect(moved.amount.value).toBeCloseTo(step?.moved.moles ?? Number.NaN, 9);
      expect(bottleAfter.value).toBeCloseTo(valueIn(step?.bottleAfter ?? gauge(0, 'bar'), 'bar'), 6);
    });
    expect(filling.optimal).toBe(plan.optimal);
    filling.bottles.forEach(({ at15C, state }, i) => {
      const own = bottleState(nitrogen, bottles[i] as Bottle, 99.9);
      expect([valueIn(own.at15C, 'bar'), own.state]).toEqual([at15C.value, state]);
    });
  });

  // With it opened for EV 2, one bottle does all: fewer than with the part-used one beside it.
  test('opens the full bottle for what no part-used one can fill', () => {
    expect(filling.bottles.map(({ name, use }) => [name, use])).toEqual([
      ['N2-1', 'not needed'],
      ['N2-2', 'not needed'],
      ['N2-3', 'used'],
    ]);
    expect(fillingOf().bottles.find(({ name }) => name === 'N2-3')?.use).toBe('not needed');
  });

  test('says where each filling stops, from the bottle as it then is', () => {
    const [ev2, fi2] = filling.accumulators.map(({ stops }) => stops);
    expect(ev2?.steps[0]?.mark).toEqual({ value: '154', unit: 'bar', basis: 'gauge' });
    expect([ev2?.way, ev2?.reaches]).toEqual(['in stages', 'the target']);
    for (const { settled } of [...(ev2?.steps ?? []), ...(fi2?.steps ?? [])])
      expect(settled.adiabatic.value).toBeLessThan(Number(settled.isothermal.value));
  });

  test('of a bottle that fills several, as the one before has left it', () => {
    // The bottle that fills EV 2 has filled FI 2 before.
    const named = filling.steps.find(({ name }) => name === 'EV 2')?.bottle;
    const order = filling.steps.filter(({ bottle }) => bottle === named);
    expect(order.map(({ name }) => name).slice(0, 2)).toEqual(['FI 2', 'EV 2']);
    const settled = (bottle: number | string, degrees = 32): number[] => {
      const supply = {
        pressure: gauge(Number(bottle), 'bar'),
        temperature: temperature(degrees, '°C'),
        volume: volume(50, 'L'),
      };
      const plan = whereToStop(SPEC, reads(143), { supply, computedStop: 'not permitted' });
      return 'steps' in plan ? plan.steps.map((step) => valueIn(step.settled.adiabatic, 'bar')) : [];
    };
    const stopsOf = (from: Filling) => from.accumulators.find(({ name }) => name === 'EV 2')?.stops?.steps.map((step) => step.settled.adiabatic.value); // prettier-ignore
    expect(stopsOf(filling)).toEqual(settled(order[0]?.bottleAfter.value ?? Number.NaN));
    expect(stopsOf(filling)).not.toEqual(settled(213)); // as it was read
    expect(stopsOf(filling)).not.toEqual(settled(order[1]?.bottleAfter.value ?? Number.NaN));
    // From one of its own, at its own temperature, while another has filled FI 2 before.
    const apart = dropLater(roundWith(['$.supply.bottles[2].temperature.value', 30]));
    put(apart, keysOf('$.supply.objectives'), ['accumulators completed', 'useful remainder', 'full bottles opened', 'bottles used', 'connections']); // prettier-ignore
    const other = reportRest(apart).filling ?? expect.fail('no plan');
    expect(other.steps.map(({ bottle, name }) => `${bottle} ${name}`)).toEqual(['N2-1 FI 2', 'N2-3 EV 2', 'N2-1 FI 6']);
    expect(stopsOf(other)).toEqual(settled(213, 30));
  });

  test('with the cautions of a stop that is computed', () => {
    const causes = (computedStop: string) =>
      new Set(fillingOf(['$.supply.computedStop', computedStop]).cautions.map(({ cause }) => cause));
    expect(causes('not permitted')).not.toContain('the stop');
    expect(causes('permitted by the specification')).toContain('the stop');
  });

  test('is in a report of its shape, which can be judged again', () => {
    expect(RoundShape.safeParse(round).success).toBe(true);
    expect(RoundReportShape.safeParse(report).success).toBe(true);
    expectSound(report);
    expect(reverify(JSON.parse(JSON.stringify(report))).outcome).toBe('same');
    const altered = structuredClone(report);
    if (altered.filling?.steps[0]) altered.filling.steps[0].bottle = 'N2-2';
    expect(reverify(altered).outcome).toBe('changed');
  });

  test('brings its cautions, and is left out with the supply', () => {
    const codes = report.cautions.map(({ code }) => code);
    expect(filling.cautions).toContainEqual({ code: 'settled pressures', cause: 'the plan' });
    for (const { code } of filling.cautions) expect(codes).toContain(code);
    expect(new Set(filling.cautions.map(({ code, cause }) => code + cause)).size).toBe(filling.cautions.length);
    const without = reportRest(roundWith(['$.supply', NOTHING], ['$.safety', NOTHING]));
    expect([without.filling, without.safety, without.complete]).toEqual([undefined, undefined, 'complete']);
    expect(without.cautions.map(({ code }) => code)).not.toContain('settled pressures');
  });

  test('says where letting gas out stops, which settles higher', () => {
    const { accumulators } = reportRest(exampleRound());
    const { bleeding } = fillingOf();
    const venting = accumulators.filter(({ asFound, asLeft }) => (asLeft === 'not read' ? asFound : asLeft).charge.action === 'vent'); // prettier-ignore
    expect(bleeding.map(({ name }) => name)).toEqual(venting.map(({ name }) => name));
    expect(bleeding.length).toBeGreaterThan(0);
    for (const { stops } of bleeding) {
      if (typeof stops === 'string') throw new Error(stops);
      for (const { settled } of stops.steps) expect(settled.adiabatic.value).toBeGreaterThan(Number(settled.isothermal.value)); // prettier-ignore
    }
  });

  test('has nothing of a reading that may be a slip, and says why', () => {
    // 104 °F typed as 104 °C: followed, EV 1 would be filled to what it should have at 104 °C.
    const at = '$.groups[0].accumulators[0].visit[0]';
    const typed = [[`${at}.pressure.value`, 152], [`${at}.temperature.value`, 104]] as const; // prettier-ignore
    const { filling } = reportRest(roundWith(...typed));
    const named = { group: 'Exhaust valves', name: 'EV 1' };
    expect(filling?.heldBack).toContainEqual({ ...named, because: [{ code: 'reading may be a slip', text: supplyText('reading may be a slip') }] }); // prettier-ignore
    expect([...(filling?.steps ?? []), ...(filling?.accumulators ?? [])].filter(({ name }) => name === 'EV 1')).toEqual([]); // prettier-ignore
    const stands = reportRest(roundWith(...typed, [`${at}.possibleSlip`, 'read again and ruled out'])).filling;
    expect(stands?.accumulators.map(({ name }) => name)).toContain('EV 1');
    expect((stands?.heldBack ?? []).map(({ name }) => name)).not.toContain('EV 1');
  });

  test('of a pressure that no accumulator has has no stop, and costs the others nothing', () => {
    const at = '$.groups[0].accumulators[2].visit[0]';
    const typed = [`${at}.pressure`, { value: 1500, unit: 'bar', basis: 'gauge' }] as const;
    const reported = (...puts: (readonly [string, unknown])[]): RoundReport => {
      const round = roundWith(...puts, ['$.instruments', NOTHING], ['$.rule', NOTHING]);
      for (const { visit } of round.groups.flatMap((group) => group.accumulators)) visit.forEach((one) => delete one.instruments); // prettier-ignore
      for (const group of round.groups) put(round, ['groups', round.groups.indexOf(group), 'instruments'], NOTHING);
      return reportRest(round);
    };
    const { filling, problems } = reported(typed, [`${at}.possibleSlip`, 'read again and ruled out']);
    expect(problems).toEqual([]);
    expect(filling?.bleeding).toContainEqual({ group: 'Exhaust valves', name: 'EV 3', stops: 'leaves the model' });
    expect(filling?.steps.length).toBeGreaterThan(0);
    // As it stands it may be a slip: nothing is vented on it, but above the allowable pressure it is made safe first.
    const held = reported(typed);
    const one = held.accumulators.find(({ name }) => name === 'EV 3');
    expect(one).toMatchObject({ state: 'work needed', asFound: { charge: { action: 'withheld', because: ['slip possible'] } } }); // prettier-ignore
    expect(one?.asFound.cautions).toEqual(['slip possible', 'reading above the allowable pressure']);
    expect(held.filling?.bleeding.map(({ name }) => name)).not.toContain('EV 3');
  });

  test('says what each accumulator held before the kit was connected, where the kit is stated', () => {
    expect(fillingOf(['$.supply.kit.before', NOTHING]).checks).toBeUndefined();
    const { checks = [] } = fillingOf(['$.supply.kit.before', { value: 0, unit: 'bar', basis: 'gauge' }]);
    const compared = report.accumulators.filter(({ asFound }) => asFound.offTarget !== undefined);
    expect(checks.map(({ name }) => name)).toEqual(compared.map(({ name }) => name));
    expect(checks.length).toBeLessThan(report.accumulators.length);
    const first = checks[0];
    const { reading } = report.accumulators[0]?.asFound ?? {};
    const held = {
      gasVolume: volume(5, 'L'),
      read: {
        pressure: gauge(Number(reading?.pressure.value), 'bar'),
        temperature: temperature(Number(reading?.temperature.value), '°C'),
        ambient: absolute(1008, 'hPa'),
      },
    };
    const was = beforeCheck(nitrogen, held, volume(30, 'mL'), gauge(0, 'bar'));
    expect([first?.before.value, first?.fall.value]).toEqual([valueIn(was.pressure, 'bar'), valueIn(was.fall, 'bar')]);
    expect(first?.gas.amount.value).toBe(was.gas.amount.moles);
  });

  test('a kit that had more gas than an accumulator has now is a problem, and no loss of the others', () => {
    const full = { value: 250, unit: 'bar', basis: 'gauge' };
    const { problems, filling } = reportRest(
      roundWith(['$.supply.kit.before', full], ['$.supply.kit.volume.value', 2500]),
    );
    expect(problems.length).toBeGreaterThan(0);
    expect(new Set(problems.map(({ path }) => path))).toEqual(new Set(['$.supply.kit.before']));
    expect(problems.map(({ code }) => code)).toContain('outside bounds');
    expect(filling?.checks).toHaveLength(Number(fillingOf().checks?.length) - problems.length);
    expect(filling?.checks?.length).toBeGreaterThan(0);
  });

  test('with a regulator, which needs its difference, and without', () => {
    const small = smallRound();
    const ended = (bar: number, regulator: unknown) => {
      const round = structuredClone(small);
      put(round, keysOf('$.supply.bottles[0].pressure.value'), bar);
      put(round, keysOf('$.supply.regulator'), regulator);
      return reportRest(round).filling?.accumulators.map(({ outcome }) => outcome);
    };
    const { target } = reportRest(small).accumulators.find(({ name }) => name === 'S 2')?.asFound ?? expect.fail('S 2');
    const three = Number(target.value) + 3;
    expect(ended(three, 'none')).toEqual(['completed']);
    expect(ended(three, small.supply?.regulator)).not.toEqual(['completed']);
    expect(ended(three + 10, small.supply?.regulator)).toEqual(['completed']);
  });

  test('two bottles of one name are both said to share it, whatever else is wrong; a key given twice leaves the plan out', () => {
    const twice = reportRest(roundWith(['$.supply.bottles[1].name', 'N2-1']));
    expect(twice.problems.map(({ path, values }) => [path, values])).toEqual(
      [0, 1].map((i) => [`$.supply.bottles[${i}].name`, { what: 'bottle' }]),
    );
    const alsoElse = roundWith(['$.supply.bottles[1].name', 'N2-1'], ['$.supply.bottles[2].pressure.unit', 'bars']);
    expect(reportRest(alsoElse).problems.map(({ path, code }) => [path, code])).toEqual([
      ['$.supply.bottles[0].name', 'duplicate name'],
      ['$.supply.bottles[1].name', 'duplicate name'],
      ['$.supply.bottles[2].pressure.unit', 'unknown unit'],
    ]);
    const text = JSON.stringify(exampleRound()).replace(
      '"computedStop":',
      '"computedStop":"permitted","computedStop":',
    );
    const report = reportRoundText(text, { problems: 'report the rest' });
    expect(report.problems.map(({ code }) => code)).toEqual(['duplicate key']);
    expect(Object.hasOwn(report, 'filling')).toBe(false);
  });

  test('orders nothing where no bottle to order is stated', () => {
    const without = fillingOf(['$.supply.order', NOTHING]);
    expect(Object.hasOwn(without, 'order')).toBe(false);
    expect(Object.hasOwn(fillingOf(), 'order')).toBe(true);
    expect(without.steps).toEqual(fillingOf().steps);
  });

  test('names what it cannot do', () => {
    const low = fillingOf(['$.supply.bottles[0].pressure.value', 60], ['$.supply.bottles[1].pressure.value', 50], ['$.supply.bottles[2].pressure.value', 90]); // prettier-ignore
    expect(low.accumulators.map(({ outcome, because }) => [outcome, because[0]?.code])).toEqual([
      ['undone', 'target above every bottle'],
      ['undone', 'target above every bottle'],
    ]);
    expect(low.boosterNeeded.map(({ name }) => name)).toEqual(['FI 2', 'FI 6']);
    expect(low.order?.needed).toBe(1);
    const argon = fillingOf(['$.supply.bottles[0].label.gas', 'argon']);
    expect(argon.bottles[0]).toMatchObject({ use: 'left out', because: [{ code: 'another gas on the label' }] });
  });

  test('in words of one’s own', () => {
    const words = { supply: { 'another gas on the label': 'ein anderes Gas' } };
    const inGerman = reportRound(roundWith(['$.supply.bottles[0].label.gas', 'argon']), { problems: 'refuse the round', words }); // prettier-ignore
    expect(inGerman.filling?.bottles[0]?.because[0]?.text).toBe('ein anderes Gas');
  });

  test('takes no part in a recall', () => {
    const stored = reportRest(exampleRound());
    const days = { instrument: 'gauge B', from: '2026-01-01', to: '2026-12-31' };
    const { changes } = recall([stored], { ...days, correction: pressureDifference(-3, 'bar') });
    expect(changes.length).toBeGreaterThan(0);
  });
});

describe('a supply that is not sound hides nothing else', () => {
  test.each([
    ['$.supply.bottles[1].pressure.unit', 'bars', 'unknown unit', '$.supply.bottles[1].pressure.unit'],
    ['$.supply.bottles[1].name', 'N2-1', 'duplicate name', '$.supply.bottles[1].name'],
    ['$.supply.bottles[1].waterVolume.value', 0, 'not positive', '$.supply.bottles[1].waterVolume'],
    ['$.supply.bottles[1].label.purityPercent', 101, 'outside bounds', '$.supply.bottles[1].label.purityPercent'],
    ['$.supply.bottles[1].pressure.value', -2, 'gauge below vacuum', '$.supply.bottles[1].pressure'],
    ['$.supply.bottles[1].residual.value', -1, 'negative', '$.supply.bottles[1].residual'],
    ['$.supply.bottles[1].within.value', -1, 'negative', '$.supply.bottles[1].within'],
    ['$.supply.bottles[1].note', 'x', 'unknown field', '$.supply.bottles[1].note'],
    ['$.supply.bottles', {}, 'not a list', '$.supply.bottles'],
    ['$.supply.kit.volume.value', -1, 'negative', '$.supply.kit.volume.value'],
    ['$.supply.kit.rated.value', 0, 'not positive', '$.supply.kit.rated'],
    ['$.supply.regulator', 'nothing', 'wrong shape', '$.supply.regulator'],
    ['$.supply.regulator.difference.value', -5, 'negative', '$.supply.regulator.difference'],
    ['$.supply.regulator.ratedInlet.basis', NOTHING, 'wrong shape', '$.supply.regulator'],
    ['$.supply.objectives[0]', 'connections', 'not each once', '$.supply.objectives'],
    ['$.supply.objectives[0]', 'cheapest', 'unknown word', '$.supply.objectives[0]'],
    ['$.supply.leastPurityPercent', 0, 'outside bounds', '$.supply.leastPurityPercent'],
    ['$.supply.computedStop', 'yes', 'unknown word', '$.supply.computedStop'],
    ['$.supply.exchange', { timeConstantMinutes: 0, movingMinutes: 2 }, 'not positive', '$.supply.exchange.timeConstantMinutes'],
    ['$.supply.order.reservePercent', -1, 'outside bounds', '$.supply.order.reservePercent'],
    ['$.supply.order.residual.value', -1, 'negative', '$.supply.order.residual'],
    ['$.supply.order.ambient.value', 5, 'not an ambient pressure', '$.supply.order.ambient'],
    ['$.supply', [], 'not an object', '$.supply'],
  ] as const)('%s: %o', (path, value, code, said) => {
    const report = reportRest(roundWith([path, value]));
    expect(report.problems.map((one) => [one.code, one.path])).toContainEqual([code, said]);
    expect(report.complete).toBe('partial');
    expect(report.filling).toBeUndefined();
    expect(report.accumulators).toHaveLength(16);
    expect(report.accumulators.map(({ state }) => state)).toEqual(reportRest(exampleRound()).accumulators.map(({ state }) => state)); // prettier-ignore
  }); // prettier-ignore

  test('nor does what is wrong beside the bottles hide what is wrong of one of them', () => {
    const { problems } = reportRest(
      roundWith(['$.supply.computedStop', 'yes'], ['$.supply.bottles[1].pressure.unit', 'bars']),
    );
    expect(problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'unknown word $.supply.computedStop',
      'unknown unit $.supply.bottles[1].pressure.unit',
    ]);
  });

  test('a time constant gives a stop in time', () => {
    const timed = fillingOf(['$.supply.exchange', { timeConstantMinutes: 4, movingMinutes: 2 }]);
    for (const { stops } of timed.accumulators)
      for (const { settled } of stops?.steps ?? []) {
        expect(settled.inTime?.value).toBeGreaterThan(Number(settled.adiabatic.value));
        expect(settled.inTime?.value).toBeLessThan(Number(settled.isothermal.value));
      }
    expect(timed.accumulators[1]?.stops?.steps.length).toBeGreaterThan(0);
  });

  test('nor one that only letting gas out comes upon', () => {
    const round = roundWith(['$.supply.exchange', { timeConstantMinutes: 0, movingMinutes: 2 }]);
    // Two of the exhaust valves: one with too much gas, and one in its band.
    round.groups.splice(1);
    const [first] = round.groups[0]?.accumulators ?? [];
    if (first === undefined) expect.fail('the example has changed');
    round.groups[0]?.accumulators.splice(0, 8, first, { ...structuredClone(first), name: 'EV 9' });
    put(round, keysOf('$.groups[0].accumulators[1].visit[0].pressure.value'), 165);
    const report = reportRest(round);
    expect(report.accumulators[1]?.asFound.charge.action).toBe('vent');
    expect(report.problems.map(({ code, path }) => `${code} ${path}`)).toEqual([
      'not positive $.supply.exchange.timeConstantMinutes',
    ]);
  });

  test('bottles of one group of names: the same name in two groups is told apart', () => {
    const round = dropLater(exampleRound());
    put(round, keysOf('$.groups[0].accumulators[1].name'), 'FI 2');
    const { filling } = reportRest(round);
    expect(filling?.accumulators.map(({ group, name }) => `${group}: ${name}`)).toEqual([
      'Exhaust valves: FI 2',
      'Fuel injection: FI 2',
      'Fuel injection: FI 6',
    ]);
  });
});

describe('safety numbers', () => {
  const { safety, cautions } = reportRest(exampleRound());

  test('of each specification and each release, with their cautions', () => {
    expect(safety?.specifications.map(({ specification }) => specification)).toEqual(['exhaust valve drive', 'fuel injection drive']); // prettier-ignore
    expect(safety?.specifications.map(({ hot }) => hot?.outcome)).toEqual([
      'not above the allowable pressure',
      'above the allowable pressure',
    ]);
    expect(safety?.releases.map(({ of, name }) => [of, name])).toEqual([
      ['accumulator', 'exhaust valve drive'],
      ['bottle', 'N2-3'],
    ]);
    const codes = cautions.map(({ code }) => code);
    for (const code of ['hot gas above the allowable pressure', 'measure oxygen', 'stored energy', 'rating too low'])
      expect(codes).toContain(code);
  });

  // 213 bar gauge in 50 L at 32 °C is 10 m3 at the conditions of the room; 1 - 10/900 of 20.9 %: by hand.
  test('a bottle released into 900 m3, by displacement', () => {
    const bottle = safety?.releases[1];
    expect(bottle?.gasVolume.value).toBeCloseTo(10, 0);
    expect(bottle?.lowest.fraction).toBeCloseTo(0.209 * (1 - Number(bottle?.gasVolume.value) / 900), 12);
  });

  // A filling to 10 bar and venting to 1 atm leaves about a tenth: three leave a thousandth.
  test('of the line, with a regulator and without, with a relief valve and without', () => {
    const found = (...puts: (readonly [string, unknown])[]) =>
      reportRest(roundWith(['$.safety.line.bottle.pressure.value', 200], ...puts.map(([field, value]) => [`$.safety.line.${field}`, value] as const)))
        .safety?.specifications[0]?.ratings?.problems.map(({ code, part, pressure }) => `${part} ${code}: ${pressure.value}`); // prettier-ignore
    const { line } = exampleRound().safety ?? {};
    if (line === undefined || line.regulator === 'none' || line.relief === 'none')
      expect.fail('the example has changed');
    const bottle = 200;
    const set = Number(line.regulator.setTo.value);
    const hose = (limit: number) => ['hose.rating.value', limit] as const;
    expect(found()).toEqual([]);
    expect(found(['regulator.inlet.value', 100])).toEqual([`regulator inlet above its rating: ${bottle}`]);
    // Behind a regulator there is what it is set to, and without one what the bottle has.
    expect(found(hose(100))).toEqual([`hose above its rating: ${set}`]);
    expect(found(hose(100), ['regulator', 'none'])).toEqual([`hose above its rating: ${bottle}`]);
    // Should it fail, a relief valve keeps the pressure of the bottle away.
    const [between, opens] = [bottle - 5, ['relief.opens.value', bottle - 10] as const];
    expect(found(hose(between), opens)).toEqual([]);
    expect(found(hose(between), ['relief', 'none'])).toEqual([
      `hose above its rating if the pressure is not reduced: ${bottle}`,
    ]);
  });

  test('of a line, what is wanted in a vessel is the highest that comes to it: where a filling stops, too', () => {
    const wanted = (...puts: (readonly [string, unknown])[]) =>
      reportRest(roundWith(['$.safety.line.regulator.setTo.value', 1], ['$.safety.hottest', NOTHING], ...puts))
        .safety?.specifications.map(({ ratings }) => ratings?.problems.find(({ part }) => part === 'regulator outlet')?.pressure.value); // prettier-ignore
    const read = '$.groups[0].accumulators[0].visit[0]';
    const low = [
      [`${read}.pressure.value`, 130],
      [`${read}.possibleSlip`, 'read again and ruled out'],
    ] as const;
    const { charge } = reportRest(roundWith(...low)).accumulators[0]?.asFound ?? expect.fail('not judged');
    const stop =
      'stop' in charge && 'pressure' in charge.stop ? Number(charge.stop.pressure.value) : expect.fail('no stop');
    const [first = 0, second] = wanted() ?? [];
    expect(stop).toBeGreaterThan(Number(first));
    expect(wanted(...low)).toEqual([stop, second]);
    // When hot it is higher than any stop.
    const hot = reportRest(roundWith(...low)).safety?.specifications[0]?.hot?.pressure.value;
    expect(Number(hot)).toBeGreaterThan(stop);
    expect(wanted(...low, ['$.safety.hottest', exampleRound().safety?.hottest])?.[0]).toBe(hot);
    // Withheld, because it is above what the vessel is allowed, it is none.
    expect(wanted(...low, ['$.specifications[0].allowable.value', stop - 0.1])).toEqual([first, second]);
  });

  test('in the unit of the gauge that the first accumulator of a specification was read with', () => {
    const other = { value: 0.1, unit: 'MPa', basis: 'difference' };
    const { safety } = reportRest(roundWith(['$.groups[0].accumulators[7].visit[0].gaugeStep', other]));
    expect(JSON.stringify(safety?.specifications[0])).not.toContain('MPa');
    expect(JSON.stringify(safety?.specifications[1])).toContain('MPa');
  });

  test('the law that is said to govern is that of the state with the larger energy, where the states differ in it', () => {
    const charged = { energy_J: 2, governs: 'ASME PCC-2' };
    const inService = { energy_J: 1, governs: 'real gas' };
    const found = (worse: string, other: object | string) =>
      energyJson({ charged, inService: other, worse, tnt: { kilograms: 3 }, cautions: [] } as never);
    expect(found('charged', inService)).toMatchObject({ inService: { value: 1, unit: 'J' }, governs: 'ASME PCC-2' });
    expect(found('in service', { ...inService, energy_J: 4 })).toMatchObject({ governs: 'real gas' });
    expect(found('charged', 'not asked')).toEqual({
      charged: { value: 2, unit: 'J' },
      worse: 'charged',
      governs: 'ASME PCC-2',
      tnt: { value: 3, unit: 'kg' },
      cautions: [],
    });
  });

  test('where no bottle is stated, the gas of an accumulator alone is released', () => {
    const releases = (round: Round) => reportRest(round).safety?.releases.map(({ of }) => of);
    expect(releases(roundWith())).toEqual(['accumulator', 'bottle']);
    expect(releases(roundWith(['$.supply', NOTHING]))).toEqual(['accumulator']);
  });

  test('a leak test and a purging are those of the core', () => {
    const [first] = safety?.specifications ?? [];
    expect(first?.purge).toMatchObject({ outcome: 'reached', fillings: 3 });
    expect(first?.purge?.left.map((x) => Number(x.toPrecision(1)))).toEqual([0.1, 0.01, 0.001]);
    expect([first?.leakTest?.bubbles.against, first?.leakTest?.gauge.against]).toEqual([
      'shows it',
      'does not show it',
    ]);
    // 5 bar in a year are 5/365.25 bar in a day.
    expect(first?.leakTest?.gauge.fall.value).toBeCloseTo(5 / 365.25, 3);
    for (const code of ['leak may not show', 'purged by calculation', 'gas not known'])
      expect(cautions.map((one) => one.code)).toContain(code);
  });

  test('each part may be left out, and then its numbers are', () => {
    const only = (field: string) => {
      const all = ['hottest', 'room', 'inService', 'line', 'leakTest', 'purge'].filter((one) => one !== field);
      const report = reportRest(roundWith(...all.map((one) => [`$.safety.${one}`, NOTHING] as const)));
      expect(report.problems).toEqual([]);
      const [first] = report.safety?.specifications ?? [];
      return [...Object.keys(first ?? {}).slice(1), report.safety?.releases.length];
    };
    expect(only('hottest')).toEqual(['hot', 0]);
    expect(only('inService')).toEqual(['energy', 0]);
    expect(only('line')).toEqual(['ratings', 0]);
    expect(only('leakTest')).toEqual(['leakTest', 0]);
    expect(only('purge')).toEqual(['purge', 0]);
    expect(only('room')).toEqual([2]);
  });

  test.each([
    ['$.safety.room.limit.fraction', 0.3, 'outside bounds', '$.safety.room.limit.fraction'],
    ['$.safety.room.limit.source', '', 'missing', '$.safety.room.limit.source'],
    ['$.safety.room.limit', NOTHING, 'missing', '$.safety.room.limit'],
    ['$.safety.room.volume.value', 0, 'not positive', '$.safety.room.volume'],
    ['$.safety.room.airChangesPerHour', -1, 'not positive', '$.safety.room.airChangesPerHour'],
    ['$.safety.room.minutes', 0, 'not positive', '$.safety.room.minutes'],
    ['$.safety.room.oxygenBefore', 2, 'outside bounds', '$.safety.room.oxygenBefore'],
    ['$.safety.hottest.temperature.value', -300, 'below absolute zero', '$.safety.hottest.temperature.value'],
    ['$.safety.line.hose.rating.value', 0, 'not positive', '$.safety.line.hose.rating'],
    ['$.safety.inService.systemPressure.value', 0, 'not positive', '$.safety.inService.systemPressure'],
    ['$.safety.leakTest.bubble.value', 0, 'not positive', '$.safety.leakTest.bubble'],
    ['$.safety.leakTest.lossPerYear.value', 999, 'more than there is', '$.safety.leakTest.lossPerYear'],
    ['$.safety.leakTest.gaugeStep.value', 0, 'not a step', '$.safety.leakTest.gaugeStep.value'],
    ['$.safety.purge.wanted', 0, 'outside bounds', '$.safety.purge.wanted'],
    ['$.safety.purge.low.value', 11000, 'pressures crossed', '$.safety.purge.low'],
    ['$.safety.cellar', 1, 'unknown field', '$.safety.cellar'],
  ] as const)('not sound: %s: %o', (path, value, code, said) => {
    const report = reportRest(roundWith([path, value]));
    expect(report.problems.map((one) => [one.code, one.path])).toContainEqual([code, said]);
    expect([report.safety, report.complete]).toEqual([undefined, 'partial']);
    expect(report.accumulators).toHaveLength(16);
  });
});
