import {
  afterCharging,
  charge,
  columnOf,
  gauge,
  judge,
  specification,
  target,
  targetSource,
  why,
  type Allowed,
  type Band,
  type Cause,
  type Charge,
  type Compared,
  type Disagreement,
  type Empty,
  type GasQuantity,
  type GaugePressure,
  type MakersTable,
  type MakersTables,
  type Move,
  type NoMove,
  type NotComparable,
  type Outcome,
  type PressureDifference,
  type Reading,
  type Reason,
  type ReferencePoint,
  type Specification,
  type SpecificationGiven,
  type Stop,
  type TargetSource,
  type Temperature,
  type TooCoarse,
  type Verdict,
  type Withheld,
} from 'isochore';
import { describe, expectTypeOf, it } from 'vitest';

declare const given: SpecificationGiven;
declare const spec: Specification;
declare const point: ReferencePoint;
declare const table: MakersTable;
declare const tables: MakersTables;
declare const reading: Reading;
declare const verdict: Verdict;
declare const move: Charge;

describe('a specification', () => {
  it('comes from its maker', () => {
    expectTypeOf(specification(given)).toEqualTypeOf<Specification>();
    // @ts-expect-error what was given is not checked
    target(given, reading);
  });

  it('cannot be written down', () => {
    const literal = {
      ...given,
      kind: 'specification' as const,
      density_mol_m3: 5694,
      referenceTemperature: spec.referenceTemperature,
      disagreements: spec.disagreements,
      '~curves': spec['~curves'],
    };
    // @ts-expect-error it lacks the mark of a checked specification
    target(literal, reading);
  });

  it('cannot be changed', () => {
    // @ts-expect-error it is read only
    spec.gasVolume = given.gasVolume;
    // @ts-expect-error it is read only
    spec.settling.minutes = 1;
    expectTypeOf<MakersTable['rows']>().toEqualTypeOf<readonly ReferencePoint[]>();
  });

  it('states everything', () => {
    // @ts-expect-error no part of it has a default
    expectTypeOf<Partial<SpecificationGiven>>().toExtend<SpecificationGiven>();
    type Optional = { [K in keyof SpecificationGiven]-?: undefined extends SpecificationGiven[K] ? K : never };
    // What many manuals do not have at all.
    expectTypeOf<Optional[keyof SpecificationGiven]>().toEqualTypeOf<'nominal' | 'toleranceAfterCharging'>();
    // @ts-expect-error what a manual does not have is left out
    specification({ ...given, nominal: undefined });
    // @ts-expect-error what a manual does not have is left out
    specification({ ...given, toleranceAfterCharging: undefined });
    // @ts-expect-error not one of the separators
    specification({ ...given, separator: 'membrane' });
    // @ts-expect-error where the tolerance applies is not left open
    specification({ ...given, tolerance: { plusMinusPercentOfGauge: 2 } });
    // @ts-expect-error a tolerance has no basis of its own: it is a difference
    specification({ ...given, tolerance: { plusMinus: gauge(2, 'bar'), applies: 'at the measured temperature' } });
  });

  it('states its pre-charge at a point or by a table, and which of them is not known before', () => {
    expectTypeOf<SpecificationGiven['precharge']>().toEqualTypeOf<ReferencePoint | MakersTable>();
    specification({ ...given, precharge: point });
    specification({ ...given, precharge: table });
    // @ts-expect-error it may be a table
    spec.precharge.pressure;
    // @ts-expect-error it may be a point
    spec.precharge.rows;
    expectTypeOf(spec.density_mol_m3).toEqualTypeOf<number | 'by table'>();
    if ('rows' in spec.precharge) expectTypeOf(spec.precharge).toEqualTypeOf<MakersTable>();
    else expectTypeOf(spec.precharge).toEqualTypeOf<ReferencePoint>();
    expectTypeOf(spec.referenceTemperature).toEqualTypeOf<Temperature>();
    expectTypeOf(spec.disagreements).toEqualTypeOf<readonly Disagreement[]>();
    expectTypeOf<Specification['separator']>().toEqualTypeOf<'diaphragm' | 'bladder' | 'piston'>();
  });

  it('states its limits by a tolerance that applies somewhere, or by a minimum and a maximum', () => {
    specification({ ...given, tolerance: { minimum: point, maximum: table } });
    // @ts-expect-error no maximum
    specification({ ...given, tolerance: { minimum: point } });
    // @ts-expect-error a limit stands at a temperature
    specification({ ...given, tolerance: { minimum: gauge(138, 'bar'), maximum: point } });
    expectTypeOf<SpecificationGiven['toleranceAfterCharging']>().toEqualTypeOf<Allowed | undefined>();
    expectTypeOf(afterCharging(spec)).toEqualTypeOf<Specification>();
    // @ts-expect-error what was given is not checked
    afterCharging(given);
  });
});

describe("a maker's table", () => {
  it('leaves nothing open', () => {
    type Optional = { [K in keyof MakersTable]-?: undefined extends MakersTable[K] ? K : never };
    expectTypeOf<Optional[keyof MakersTable]>().toBeNever();
    expectTypeOf<MakersTable['outside']>().toEqualTypeOf<'refuse' | 'follow constant density'>();
    // @ts-expect-error its step is a difference
    specification({ ...given, precharge: { ...table, printedStep: gauge(1, 'bar') } });
    // @ts-expect-error rows hold quantities
    specification({ ...given, precharge: { ...table, rows: [{ pressure: 140, temperature: 20 }] } });
  });

  it('is one column of several', () => {
    expectTypeOf(columnOf).parameters.toEqualTypeOf<[tables: MakersTables, name: string]>();
    expectTypeOf(columnOf).returns.toEqualTypeOf<MakersTable>();
    // @ts-expect-error a table of several columns is none of one
    specification({ ...given, precharge: tables });
  });

  it('is named by what a target comes from', () => {
    expectTypeOf(targetSource(spec, spec.referenceTemperature)).toEqualTypeOf<TargetSource>();
    expectTypeOf(verdict.targetFrom).toEqualTypeOf<TargetSource>();
    expectTypeOf<TargetSource['by']>().toEqualTypeOf<
      'constant density from the reference point' | 'table' | 'constant density from the nearest row'
    >();
    expectTypeOf<TargetSource['rows']>().toEqualTypeOf<readonly ReferencePoint[]>();
  });
});

describe('a reading', () => {
  type Needed = 'pressure' | 'temperature' | 'ambient' | 'gaugeStep' | 'oilSide' | 'gasInside' | 'minutesAtRest';
  type Without<K extends Needed> = Omit<Reading, K>;

  it('needs every field but what is not always known', () => {
    type Required = { [K in keyof Reading]-?: object extends Pick<Reading, K> ? never : K }[keyof Reading];
    expectTypeOf<Required>().toEqualTypeOf<Needed>();
    expectTypeOf<Exclude<keyof Reading, Needed>>().toEqualTypeOf<
      'systemPressure' | 'emptyGasSide' | 'possibleSlip' | 'correctionIncluded' | 'fullScale'
    >();
  });

  it('is refused without one of them', () => {
    // @ts-expect-error no pressure
    judge(spec, {} as Without<'pressure'>);
    // @ts-expect-error no temperature
    judge(spec, {} as Without<'temperature'>);
    // @ts-expect-error no ambient
    judge(spec, {} as Without<'ambient'>);
    // @ts-expect-error no gauge step
    judge(spec, {} as Without<'gaugeStep'>);
    // @ts-expect-error no oil side
    judge(spec, {} as Without<'oilSide'>);
    // @ts-expect-error no gas inside
    judge(spec, {} as Without<'gasInside'>);
    // @ts-expect-error no minutes at rest
    judge(spec, {} as Without<'minutesAtRest'>);
  });

  it('takes no other words for its evidence, and no undefined', () => {
    // @ts-expect-error not one of the words
    judge(spec, { ...reading, oilSide: 'drained' });
    // @ts-expect-error not one of the words
    judge(spec, { ...reading, gasInside: 'air' });
    // @ts-expect-error not one of the words
    judge(spec, { ...reading, emptyGasSide: 'cleared' });
    // @ts-expect-error a field that is not known is left out; undefined compiles without exactOptionalPropertyTypes
    judge(spec, { ...reading, systemPressure: undefined });
    // @ts-expect-error the unit of the gauge is one of pressure
    judge(spec, { ...reading, gaugeStep: { step: 1, unit: 'K' } });
  });
});

describe('a verdict', () => {
  it('is told by its outcome', () => {
    expectTypeOf(judge(spec, reading)).toEqualTypeOf<Verdict>();
    expectTypeOf<Outcome>().toEqualTypeOf<
      | 'gas not known'
      | 'not comparable'
      | 'gas side empty'
      | 'gauge too coarse'
      | 'undercharged'
      | 'overcharged'
      | 'within'
    >();
    switch (verdict.outcome) {
      case 'gas not known':
      case 'not comparable':
        expectTypeOf(verdict).toEqualTypeOf<NotComparable>();
        break;
      case 'gas side empty':
        expectTypeOf(verdict).toEqualTypeOf<Empty>();
        expectTypeOf(verdict.causes).toEqualTypeOf<readonly Cause[]>();
        break;
      case 'gauge too coarse':
        expectTypeOf(verdict).toEqualTypeOf<TooCoarse>();
        break;
      default:
        expectTypeOf(verdict).toEqualTypeOf<Compared>();
        expectTypeOf(verdict.explainingTemperature).toEqualTypeOf<Temperature | 'none in range'>();
    }
  });

  it('always has target, band and reasons', () => {
    expectTypeOf(verdict.target).toEqualTypeOf<GaugePressure>();
    expectTypeOf(verdict.band).toEqualTypeOf<Band>();
    expectTypeOf(verdict.because).toEqualTypeOf<readonly [Reason, ...Reason[]]>();
    expectTypeOf(why).parameter(2).toExtend<{ readonly because: readonly Reason[] }>();
  });

  it('has no comparison before it is known to be one', () => {
    // @ts-expect-error not on every verdict
    verdict.offTarget;
    // @ts-expect-error not on every verdict
    verdict.insideBandBy;
    // @ts-expect-error not on every verdict
    verdict.referred;
    // @ts-expect-error not on every verdict
    verdict.stepNeeded;
    // @ts-expect-error not on every verdict
    verdict.causes;
    if (verdict.outcome === 'undercharged') expectTypeOf(verdict.offTarget).toEqualTypeOf<PressureDifference>();
  });

  it('has no printed limits before it is known that there are marks', () => {
    // @ts-expect-error there may be no mark in the band
    verdict.band.onGauge.lower;
    if (verdict.band.onGauge !== 'no mark of the gauge lies in the band')
      expectTypeOf(verdict.band.onGauge.lower).toBeString();
  });
});

describe('a charge', () => {
  it('has no quantity before its action is known', () => {
    expectTypeOf(charge(spec, reading)).toEqualTypeOf<Charge>();
    // @ts-expect-error it may be withheld
    move.gas;
    // @ts-expect-error it may be withheld
    move.stop;
    // @ts-expect-error it may be withheld
    move.settleMinutes;
    if (move.action === 'withheld') {
      expectTypeOf(move).toEqualTypeOf<Withheld>();
      // @ts-expect-error it is withheld
      move.gas;
    } else if (move.action === 'none') {
      expectTypeOf(move).toEqualTypeOf<NoMove>();
      // @ts-expect-error nothing to do
      move.gas;
    } else {
      expectTypeOf(move).toEqualTypeOf<Move>();
      expectTypeOf(move.gas).toEqualTypeOf<GasQuantity>();
    }
  });

  it('has no stop pressure nor mark before they are known to be given', () => {
    if (move.action !== 'add') return;
    // @ts-expect-error the stop may be withheld
    move.stop.pressure;
    // @ts-expect-error the stop may be withheld
    move.stop.mark;
    if (move.stop.action === 'withheld') {
      expectTypeOf(move.stop).toEqualTypeOf<Withheld>();
    } else {
      expectTypeOf(move.stop).toEqualTypeOf<Stop>();
      // @ts-expect-error there may be no mark
      move.stop.mark.value;
      if (typeof move.stop.mark !== 'string') expectTypeOf(move.stop.mark.value).toBeString();
    }
  });
});
