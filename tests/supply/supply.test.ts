import fc from 'fast-check';
import {
  beforeCheck,
  bottlesToOrder,
  bottleState,
  checkLoss,
  fillingPlan,
  idealNitrogen,
  isFault,
  nitrogen,
  normalVolume,
  OBJECTIVES,
  pressureDifference,
  reference15C1bar,
  serves,
  standardAtmosphere,
  supplyText,
  temperature,
  toFill,
  valueIn,
  volume,
  type Bottle,
  type PlanGiven,
} from 'isochore';
import { describe, expect, test } from 'vitest';
import { SUPPLY } from '../../src/basis/words.js';
import { readingWith, reads, specWith } from '../support/accumulator.js';
import { evenly } from '../support/evenly.js';
import { problemOf } from '../support/problem.js';
import { numberRows } from '../support/reference.js';
import { bar, bottleOf, emptyTo, fillingOf, RIG } from './filling.js';

const NO_KIT = { kit: { volume: volume(0, 'L'), rated: bar(300) }, regulator: 'none' } as const;

describe('bottles', () => {
  test('50 L at 200 bar and 15 °C holds about 9.5 to 10 m3 of gas at 15 °C and 1 bar (common practice, no source)', () => {
    const { contents } = bottleState(nitrogen, bottleOf('1', 200, 15), 'not demanded');
    const { cubicMetres } = normalVolume(contents.amount, nitrogen, reference15C1bar);
    expect(cubicMetres).toBeGreaterThan(9.3);
    expect(cubicMetres).toBeLessThan(10.1);
  });

  test('filled to 200 bar at 15 °C it shows about 220 bar at 35 °C (common practice, no source) and counts as full', () => {
    const hot = bottleState(nitrogen, bottleOf('1', 219, 35), 'not demanded');
    expect(valueIn(hot.at15C, 'bar')).toBeCloseTo(200, -0.3);
    expect(hot.state).toBe('full');
    expect(bottleState(nitrogen, bottleOf('1', 200, 35), 'not demanded').state).toBe('part used');
  });

  test('the pressure at 15 °C is that of the same density (GERG-2008 densities of the ends)', () => {
    // tests/reference/nitrogen-grid-gerg2008.csv has no 288.15 K; the line of isochore.csv from 20 °C is used instead.
    const [row] = numberRows('isochore.csv', ['p_ref_gauge_bar', 'T_ref_C', 'T_C', 'p_gauge_gerg2008_bar']).filter(
      (one) => one.T_ref_C === 15 && one.T_C === 40 && one.p_ref_gauge_bar === 200,
    );
    if (row === undefined) throw new Error('no such row');
    const { at15C } = bottleState(nitrogen, bottleOf('1', row.p_gauge_gerg2008_bar, 40), 'not demanded');
    expect(Math.abs(valueIn(at15C, 'bar') - 200)).toBeLessThan(0.02);
  });

  test('what is no purity is refused, though it cannot even be compared with one', () => {
    const none = { valueOf: 1, toString: 1 } as never;
    const { code, path } = problemOf(() => bottleState(nitrogen, bottleOf('1', 200, 15), none));
    expect([code, path]).toEqual(['outside bounds', 'leastPurityPercent']);
  });

  const label = (changed: Partial<Bottle['label']>): Partial<Bottle> => ({
    label: { ...bottleOf('1', 1).label, ...changed },
  });
  test.each([
    ['another gas on the label', bottleOf('1', 190, 20, label({ gas: 'argon' }))],
    ['purity not stated', bottleOf('1', 190, 20, label({ purityPercent: 'not stated' }))],
    ['purity too low', bottleOf('1', 190, 20, label({ purityPercent: 99 }))],
    ['above its rating', bottleOf('1', 230, 20)],
    ['not above its residual pressure', bottleOf('1', 5, 20)],
    ['bottle above the rating of the kit', bottleOf('1', 301, 20, label({ rated: bar(400) }))],
  ] as const)('one with "%s" is left out, with its reason and all the others kept', (code, one) => {
    const plan = fillingPlan(fillingOf({ bottles: [one, bottleOf('2', 190)] }));
    expect(plan.bottles[0]).toMatchObject({ use: 'left out', because: [code] });
    expect(plan.steps.map(({ bottle }) => bottle)).toEqual(['2']);
    expect(supplyText(code)).not.toBe('');
  });

  test('an empty bottle at exactly its residual pressure holds nothing above it', () => {
    const { aboveResidual } = bottleState(nitrogen, bottleOf('1', 5), 'not demanded');
    expect(aboveResidual.amount.moles).toBe(0);
  });
});

describe('kit', () => {
  test('30 mL takes 4.7 bar from 1 L at 148 bar, and next to nothing if filled before', () => {
    const held = { gasVolume: volume(1, 'L'), read: emptyTo('A', 148, 150).read };
    // Common practice, no source. An evacuated kit takes 4.67 bar and one vented to the ambient 4.64 bar.
    expect(valueIn(checkLoss(nitrogen, held, volume(30, 'mL'), bar(-1.01325)).fall, 'bar').toFixed(1)).toBe('4.7');
    const loss = checkLoss(nitrogen, held, volume(30, 'mL'), bar(0));
    expect(valueIn(loss.fall, 'bar')).toBeCloseTo(4.64, 2);
    // Ideal gas, closed form: V_kit (p - p_kit) / (V + V_kit).
    const ideal = checkLoss(idealNitrogen, held, volume(30, 'mL'), bar(0));
    expect(valueIn(ideal.fall, 'bar')).toBeCloseTo((0.03 * 148) / 1.03, 9);
    const filled = checkLoss(nitrogen, held, volume(30, 'mL'), bar(147));
    expect(valueIn(filled.fall, 'bar')).toBeLessThan(0.05);
    expect(filled.gas.amount.moles).toBeGreaterThan(0);
  });

  test('what it held before is what the loss leaves as read, whatever was in the kit', () => {
    fc.assert(
      fc.property(evenly(1, 250), evenly(0.5, 10), evenly(0, 0.2), evenly(-1, 250), (p, litres, kit, inKit) => {
        const held = { gasVolume: volume(litres, 'L'), read: emptyTo('A', p, 300).read };
        const { after, fall, gas } = checkLoss(nitrogen, held, volume(kit, 'L'), bar(inKit));
        const read = { ...held.read, pressure: after };
        const found = beforeCheck(nitrogen, { ...held, read }, volume(kit, 'L'), bar(inKit));
        expect(Math.abs(found.pressure.pascals - held.read.pressure.pascals)).toBeLessThan(1e-3);
        expect(Math.abs(found.fall.pascals - fall.pascals)).toBeLessThan(1e-3);
        expect(found.gas.amount.moles).toBeCloseTo(gas.amount.moles, 9);
      }),
      { numRuns: 60 },
    );
    // Without a kit it is the reading to the last place.
    const held = { gasVolume: volume(1, 'L'), read: emptyTo('A', 148.3, 150).read };
    expect(beforeCheck(nitrogen, held, volume(0, 'L'), bar(0)).pressure).toEqual(held.read.pressure);
  });

  test('a kit that would have had more than there is now is refused', () => {
    const held = { gasVolume: volume(1, 'L'), read: emptyTo('A', 50, 150).read };
    const problem = problemOf(() => beforeCheck(nitrogen, held, volume(200, 'mL'), bar(400)));
    expect(problem).toMatchObject({ code: 'outside bounds', path: 'before' });
    const most = Number(/at most ([\d.]+)/.exec(problem.wanted)?.[1]);
    const empty = beforeCheck(nitrogen, held, volume(200, 'mL'), bar(most - 0.01));
    expect(valueIn(empty.pressure, 'bar')).toBeLessThan(-1);
  });

  test('a kit of more pressure takes nothing', () => {
    const held = { gasVolume: volume(1, 'L'), read: emptyTo('A', 100, 150).read };
    const { gas, fall } = checkLoss(nitrogen, held, volume(30, 'mL'), bar(150));
    expect(gas.amount.moles).toBe(0);
    expect(fall.pascals).toBeLessThan(0);
  });
});

describe('one step', () => {
  const step = (given: Partial<PlanGiven>) => fillingPlan(fillingOf({ rig: NO_KIT, ...given }));

  test('two vessels of an ideal gas equalise at (p1 V1 + p2 V2) / (V1 + V2)', () => {
    // The second bottle completes it; what the first one gives is the equalisation.
    const small = { waterVolume: volume(4, 'L') };
    const plan = step({
      gas: idealNitrogen,
      accumulators: [emptyTo('A', 50, 140)],
      bottles: [bottleOf('low', 120, 20, small), bottleOf('high', 152, 20, { waterVolume: volume(30, 'L') })],
    });
    expect(plan.steps.map(({ ended }) => ended)).toEqual(['equalised', 'at the pressure wanted']);
    const [first] = plan.steps;
    const wanted = (50 * 5 + 120 * 4) / 9;
    expect(valueIn(first?.bottleAfter ?? bar(0), 'bar')).toBeCloseTo(wanted, 7);
    expect(valueIn(first?.accumulatorAfter ?? bar(0), 'bar')).toBeCloseTo(wanted, 7);
  });

  test('two vessels of nitrogen equalise where the mean of their GERG-2008 densities has its pressure', () => {
    const rows = numberRows('nitrogen-grid-gerg2008.csv', ['T_K', 'p_Pa', 'rho_mol_m3']).filter(
      ({ T_K }) => Math.abs(T_K - 293.15) < 1e-6,
    );
    const rho = (p_Pa: number): number => rows.find((row) => row.p_Pa === p_Pa)?.rho_mol_m3 ?? Number.NaN;
    expect(rho(1e7)).toBeGreaterThan(0);
    const read = (p: number) => ({
      pressure: bar(p / 1e5 - 1.01325),
      temperature: temperature(20, '°C'),
      ambient: standardAtmosphere,
    });
    // Of 5 and 10 MPa such volumes that they meet near 7 MPa, by the other equation: V1 (rho1 - rho) = V2 (rho - rho2).
    const middle = rows.find(({ p_Pa }) => p_Pa > 5e6 && p_Pa < 1e7);
    if (middle === undefined) throw new Error('no state between');
    const V1 = (5 * (middle.rho_mol_m3 - rho(5e6))) / (rho(1e7) - middle.rho_mol_m3);
    const plan = step({
      accumulators: [emptyTo('A', 1, 140, { read: read(5e6) })],
      bottles: [
        bottleOf('low', 1, 20, { read: read(1e7), waterVolume: volume(V1, 'L') }),
        bottleOf('high', 160, 20, { waterVolume: volume(24, 'L') }),
      ],
    });
    expect(plan.steps[0]).toMatchObject({ bottle: 'low', ended: 'equalised' });
    const after = (plan.steps[0]?.accumulatorAfter.pascals ?? 0) + 101_325;
    expect(Math.abs(after / middle.p_Pa - 1)).toBeLessThan(2e-4);
  });

  test('a regulator stops the flow at its difference, and a residual pressure at itself', () => {
    const regulator = { difference: pressureDifference(7, 'bar'), ratedInlet: bar(300), ratedOutlet: bar(250) };
    const plan = step({
      rig: { ...NO_KIT, regulator },
      accumulators: [emptyTo('A', 50, 140)],
      bottles: [
        bottleOf('low', 120, 20, { waterVolume: volume(4, 'L') }),
        bottleOf('high', 160, 20, { waterVolume: volume(30, 'L') }),
      ],
    });
    const [first] = plan.steps;
    expect(first?.ended).toBe('equalised');
    expect((first?.bottleAfter.pascals ?? 0) - (first?.accumulatorAfter.pascals ?? 0)).toBeCloseTo(7e5, 0);
    const kept = step({
      accumulators: [emptyTo('A', 50, 140)],
      bottles: [
        bottleOf('low', 120, 20, { waterVolume: volume(4, 'L'), residual: bar(100) }),
        bottleOf('high', 152, 20, { waterVolume: volume(36, 'L') }),
      ],
    });
    expect(kept.steps[0]?.ended).toBe("at the bottle's residual pressure");
    expect(valueIn(kept.steps[0]?.bottleAfter ?? bar(0), 'bar')).toBeCloseTo(100, 6);
  });
});

describe('a plan', () => {
  const many = fillingPlan(
    fillingOf({
      accumulators: Array.from({ length: 12 }, (_, i) => emptyTo(`A${i}`, 60 + 5 * i, 130 + (i % 4))),
      bottles: Array.from({ length: 5 }, (_, i) =>
        bottleOf(`B${i}`, 100 + 23 * i, 20 + i, { waterVolume: volume(20, 'L') }),
      ),
    }),
  );

  test('keeps the gas to 1e-12, and counts what the kit vents', () => {
    const { before, after, vented } = many.gas;
    expect(many.steps.length).toBeGreaterThan(3);
    expect(vented.amount.moles).toBeGreaterThan(0);
    expect(Math.abs((after.moles + vented.amount.moles) / before.moles - 1)).toBeLessThan(1e-12);
  });

  test('raises no accumulator above its bottle, and none above the pressure wanted', () => {
    for (const { bottleAfter, accumulatorAfter } of many.steps) {
      expect(accumulatorAfter.pascals).toBeLessThanOrEqual(bottleAfter.pascals + 1e-3);
      expect(accumulatorAfter.pascals).toBeLessThanOrEqual(133e5);
    }
  });

  test('whatever there is: no step ends above its bottle less the difference, bottles fall, accumulators rise, gas stays', () => {
    let equalised = 0;
    fc.assert(
      fc.property(
        fc.array(fc.tuple(evenly(60, 195), evenly(2, 30)), { minLength: 1, maxLength: 4 }),
        fc.array(fc.tuple(evenly(20, 120), evenly(4, 60), evenly(1, 8)), { minLength: 1, maxLength: 6 }),
        evenly(0, 12),
        evenly(0, 0.1),
        (bottles, accumulators, difference, kit) => {
          const given = fillingOf({
            bottles: bottles.map(([p, litres], i) => bottleOf(`B${i}`, p, 20, { waterVolume: volume(litres, 'L') })),
            accumulators: accumulators.map(([p, by, litres], i) =>
              emptyTo(`A${i}`, p, p + by, { gasVolume: volume(litres, 'L') }),
            ),
            // To spare the fuller bottles, so that lower ones raise a part of the way.
            objectives: [
              'accumulators completed',
              'useful remainder',
              'full bottles opened',
              'bottles used',
              'connections',
            ],
            rig: {
              kit: { volume: volume(kit, 'L'), rated: bar(300) },
              regulator: {
                difference: pressureDifference(difference, 'bar'),
                ratedInlet: bar(300),
                ratedOutlet: bar(250),
              },
            },
          });
          const { steps, gas } = fillingPlan(given);
          const last = new Map<string, number>();
          for (const { bottle, accumulator, bottleAfter, accumulatorAfter, ended, moved } of steps) {
            expect(accumulatorAfter.pascals + difference * 1e5).toBeLessThanOrEqual(bottleAfter.pascals + 1e-2);
            expect(bottleAfter.pascals).toBeLessThanOrEqual(last.get(bottle) ?? Infinity);
            expect(accumulatorAfter.pascals).toBeGreaterThan(last.get(accumulator) ?? 0);
            expect(moved.moles).toBeGreaterThan(0);
            last.set(bottle, bottleAfter.pascals).set(accumulator, accumulatorAfter.pascals);
            if (ended === 'equalised') equalised += 1;
          }
          const { before, after, vented } = gas;
          expect(Math.abs((after.moles + vented.amount.moles) / before.moles - 1)).toBeLessThan(1e-12);
        },
      ),
      { numRuns: 60 },
    );
    expect(equalised).toBeGreaterThan(5);
  });

  test('is the same every time, and JSON carries it', () => {
    const given = fillingOf();
    expect(JSON.stringify(fillingPlan(given))).toBe(JSON.stringify(fillingPlan(given)));
    expect(JSON.parse(JSON.stringify(fillingPlan(given)))).toMatchObject({ optimal: 'proven' });
  });

  test('beyond the size of the exact search carries a bound that it does not exceed', () => {
    const [completed] = many.objectives;
    expect(completed?.objective).toBe('accumulators completed');
    expect(completed?.reached).toBeLessThanOrEqual(Number(completed?.bound));
    expect(many.optimal === 'proven').toBe(many.objectives.every(({ gap }) => gap === 0));
  });

  test('beyond it too a bottle at the end of the list makes nothing worse', () => {
    const bottles = Array.from({ length: 9 }, (_, i) =>
      bottleOf(`B${i}`, 90 + ((i * 47) % 110), 20, { waterVolume: volume(6 + (i % 3), 'L') }),
    );
    const accumulators = Array.from({ length: 10 }, (_, i) => emptyTo(`A${i}`, 60 + 4 * i, 130 + (i % 4)));
    let before = -1;
    for (let count = 0; count <= bottles.length; count += 1) {
      const plan = fillingPlan(fillingOf({ accumulators, bottles: bottles.slice(0, count) }));
      const completed = plan.objectives[0]?.reached ?? -1;
      expect(completed).toBeGreaterThanOrEqual(before);
      before = completed;
    }
    expect(before).toBeGreaterThan(3);
  });

  test('opens no full bottle while a part-used one suffices, and does if that comes last', () => {
    const bottles = [bottleOf('full', 202), bottleOf('part', 170)];
    expect(fillingPlan(fillingOf({ bottles })).steps.map(({ bottle }) => bottle)).toEqual(['part']);
    const objectives = [
      'accumulators completed',
      'useful remainder',
      'bottles used',
      'connections',
      'full bottles opened',
    ] as const;
    const low = [bottleOf('full', 202, 20, { waterVolume: volume(10, 'L') }), bottleOf('part', 170, 20)];
    expect(fillingPlan(fillingOf({ bottles: low, objectives })).optimal).toBe('proven');
  });

  test('says what it cannot do, and why', () => {
    const plan = fillingPlan(
      fillingOf({
        accumulators: [
          emptyTo('high', 100, 195),
          emptyTo('ready', 140, 140),
          emptyTo('weak', 100, 140, { allowable: bar(139) }),
          emptyTo('large', 100, 140, { gasVolume: volume(500, 'L') }),
          emptyTo('small', 100, 140),
        ],
        bottles: [bottleOf('1', 190)],
      }),
    );
    expect(plan.accumulators.map(({ name, outcome, because }) => [name, outcome, because])).toEqual([
      ['high', 'undone', ['target above every bottle']],
      ['ready', 'nothing to add', ['nothing to add']],
      ['weak', 'undone', ['target above its allowable pressure']],
      ['large', 'undone', ['not enough gas']],
      ['small', 'completed', []],
    ]);
    expect(plan.boosterNeeded).toEqual(['high']);
    expect(plan.cautions.map(({ code, cause }) => [code, cause])).toEqual(
      expect.arrayContaining([
        ['booster needed', 'target above every bottle'],
        ['target above the allowable pressure', 'target above its allowable pressure'],
        ['settled pressures', 'the plan'],
        ['asphyxiation', 'the work'],
      ]),
    );
    expect(plan.accumulators[3]?.missing.amount.moles).toBeGreaterThan(0);
  });

  test('without a bottle says so', () => {
    const plan = fillingPlan(fillingOf({ bottles: [] }));
    expect(plan.steps).toEqual([]);
    expect(plan.accumulators[0]?.because).toEqual(['no bottle to use']);
  });

  test('kit and regulator must hold the pressure wanted', () => {
    const weak = { kit: { volume: volume(30, 'mL'), rated: bar(130) }, regulator: 'none' } as const;
    const plan = fillingPlan(fillingOf({ rig: weak }));
    expect(plan.accumulators[0]?.because).toEqual(['target above the rating of the kit']);
    // The first of the kit alone, the second of the bottle opened into it.
    for (const cause of ['target above the rating of the kit', 'bottle above the rating of the kit'])
      expect(plan.cautions).toContainEqual(
        expect.objectContaining({ code: 'above the rating of kit or regulator', cause }),
      );
  });
});

describe('bad input is listed, all of it', () => {
  const codesOf = (call: () => unknown): string[] => {
    try {
      call();
    } catch (error) {
      if (isFault(error)) return error.problems.map(({ code, path }) => `${path}: ${code}`);
      throw error;
    }
    return [];
  };

  test('duplicate names, at each place', () => {
    const bottles = [bottleOf('1', 190), bottleOf('1', 150)];
    const accumulators = [emptyTo('A', 100, 140), emptyTo('B', 100, 140), emptyTo('A', 100, 140)];
    expect(codesOf(() => fillingPlan(fillingOf({ bottles, accumulators })))).toEqual([
      'accumulators[0].name: duplicate name',
      'accumulators[2].name: duplicate name',
      'bottles[0].name: duplicate name',
      'bottles[1].name: duplicate name',
    ]);
  });

  test('negative sizes, and objectives that are not each there once', () => {
    expect(codesOf(() => volume(-0.03, 'L'))).toEqual(['value: negative']);
    const given = fillingOf({
      bottles: [bottleOf('1', 190, 20, { within: pressureDifference(-1, 'bar'), residual: bar(-0.5) })],
      rig: {
        ...RIG,
        regulator: { difference: pressureDifference(-2, 'bar'), ratedInlet: bar(0), ratedOutlet: bar(10) },
      },
      objectives: OBJECTIVES.slice(1),
      leastPurityPercent: 101,
    });
    expect(codesOf(() => fillingPlan(given))).toEqual([
      'leastPurityPercent: outside bounds',
      'rig.regulator.difference: negative',
      'rig.regulator.ratedInlet: not positive',
      'objectives: not each once',
      'bottles[0].within: negative',
      'bottles[0].residual: negative',
    ]);
  });

  test('a purity that is demanded and no number, while all else is sound', () => {
    const given = fillingOf({ leastPurityPercent: Symbol('99.9') as never });
    expect(codesOf(() => fillingPlan(given))).toEqual(['leastPurityPercent: outside bounds']);
  });
});

describe('what one bottle serves', () => {
  test('is as many as steps one after another complete', () => {
    const one = emptyTo('A', 100, 140);
    const { accumulators, usable, each, booster } = serves(nitrogen, bottleOf('1', 190), one, RIG);
    expect(booster).toBe('not needed');
    // By the amounts: each takes the same, down to the pressure wanted.
    expect(accumulators).toBe(Math.floor(usable.amount.moles / each.amount.moles));
    expect(accumulators).toBeGreaterThan(3);
    const plan = fillingPlan(
      fillingOf({
        accumulators: Array.from({ length: accumulators + 1 }, (_, i) => ({ ...one, name: String(i) })),
      }),
    );
    expect(plan.steps).toHaveLength(accumulators);
  });

  test.each([
    ['above the difference of the regulator', 30, 5],
    ['above a residual pressure that is higher than the pressure wanted', 0, 165],
    ['above the higher of both', 10, 160],
  ])('leaves it %s, as a plan does', (_, difference, residual) => {
    const one = emptyTo('A', 100, 140);
    const regulator = {
      difference: pressureDifference(difference, 'bar'),
      ratedInlet: bar(300),
      ratedOutlet: bar(250),
    };
    const rig = { ...RIG, regulator };
    const bottle = bottleOf('1', 190, 20, { residual: bar(residual) });
    const { accumulators, usable, after } = serves(nitrogen, bottle, one, rig);
    const alone = serves(nitrogen, bottleOf('1', 190), one, RIG);
    expect(usable.amount.moles).toBeLessThan(alone.usable.amount.moles);
    const plan = fillingPlan(
      fillingOf({
        bottles: [bottle],
        rig,
        accumulators: Array.from({ length: accumulators + 1 }, (_, i) => ({ ...one, name: String(i) })),
      }),
    );
    expect(plan.objectives[0]?.reached).toBe(accumulators);
    expect(Math.abs(after.pascals - (plan.bottles[0]?.after.pascals ?? 0))).toBeLessThan(1e-3);
    expect(after.pascals).toBeGreaterThanOrEqual(Math.max(140 + difference, residual) * 1e5);
  });

  test('is none above its pressure: a booster is needed', () => {
    const answer = serves(nitrogen, bottleOf('1', 139), emptyTo('A', 100, 140), RIG);
    expect(answer).toMatchObject({ accumulators: 0, booster: 'needed', because: ['target above every bottle'] });
  });
});

describe('what to order', () => {
  const SIZE = {
    waterVolume: volume(50, 'L'),
    filling: bar(200),
    labelAmbient: standardAtmosphere,
    residual: bar(5),
    onBoard: { temperature: temperature(20, '°C'), ambient: standardAtmosphere },
  };

  test('is the fewest with which a plan completes all, with the reserve rounded up', () => {
    const accumulators = Array.from({ length: 20 }, (_, i) => emptyTo(String(i), 90, 150));
    const filling = fillingOf({ accumulators, bottles: [] });
    const { needed, order, fewest } = bottlesToOrder(filling, SIZE, 10);
    expect(fewest).toBe('proven');
    expect(order).toBe(Number(needed) + 1);
    const full = (count: number) =>
      Array.from({ length: count }, (_, i) => bottleOf(`new ${i}`, 204.3, 20, { name: `new ${i}` }));
    const completed = (count: number): number | undefined =>
      fillingPlan({ ...filling, bottles: full(count) }).objectives[0]?.reached;
    expect(completed(Number(needed))).toBe(20);
    expect(completed(Number(needed) - 1)).toBeLessThan(20);
  });

  test('is none where there is enough, and not found above what they are filled to', () => {
    expect(bottlesToOrder(fillingOf(), SIZE, 50)).toMatchObject({ needed: 0, order: 0 });
    expect(bottlesToOrder(fillingOf({ accumulators: [emptyTo('A', 100, 240)] }), SIZE, 0)).toMatchObject({
      needed: 'not found',
      because: ['target above every bottle'],
    });
  });
});

describe('from a reading', () => {
  test('an undercharged accumulator is to be filled to its target; any other gives its charge', () => {
    const spec = specWith();
    const one = toFill('EV 1', spec, readingWith());
    expect(one).toMatchObject({ name: 'EV 1', gasVolume: spec.gasVolume });
    expect(toFill('EV 2', spec, reads(153))).toEqual({ action: 'none' });
    expect(toFill('EV 3', spec, reads(143, { oilSide: 'not known' }))).toMatchObject({ action: 'withheld' });
  });
});

test('every code has its words', () => {
  for (const code of Object.keys(SUPPLY) as (keyof typeof SUPPLY)[])
    expect(supplyText(code).length).toBeGreaterThan(10);
});
