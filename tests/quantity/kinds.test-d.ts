import {
  absolute,
  amount,
  compare,
  difference,
  gauge,
  mass,
  nitrogen,
  normalConditions,
  normalVolume,
  normalVolumeAsIdealGas,
  pressureDifference,
  ratio,
  read,
  readmit,
  reference60F,
  roundTo,
  shift,
  standardAtmosphere,
  temperature,
  temperatureDifference,
  toAbsolute,
  toGauge,
  valueIn,
  volume,
  write,
  writeNormalVolume,
  type AbsolutePressure,
  type Amount,
  type GaugePressure,
  type Levelled,
  type Mass,
  type MassUnit,
  type NormalVolume,
  type PressureDifference,
  type PressureUnit,
  type Quantity,
  type SameKind,
  type SeveralKinds,
  type Temperature,
  type TemperatureDifference,
  type TemperatureUnit,
  type UnitOf,
  type Volume,
  type VolumeUnit,
} from 'isochore';
import { describe, expectTypeOf, it } from 'vitest';

const shown = gauge(140, 'bar');
const under = absolute(1008, 'hPa');
const tolerance = pressureDifference(2, 'bar');
const warm = temperature(40, '°C');
const swing = temperatureDifference(20, 'K');
const space = volume(5, 'L');

declare const someText: string;
declare const either: GaugePressure | AbsolutePressure;
declare const quantity: Quantity;

describe('what is meant compiles, with the right kind', () => {
  it('from the constructors', () => {
    expectTypeOf(shown).toEqualTypeOf<GaugePressure>();
    expectTypeOf(under).toEqualTypeOf<AbsolutePressure>();
    expectTypeOf(standardAtmosphere).toEqualTypeOf<AbsolutePressure>();
    expectTypeOf(tolerance).toEqualTypeOf<PressureDifference>();
    expectTypeOf(warm).toEqualTypeOf<Temperature>();
    expectTypeOf(swing).toEqualTypeOf<TemperatureDifference>();
    expectTypeOf(space).toEqualTypeOf<Volume>();
    expectTypeOf(amount(1, 'mol')).toEqualTypeOf<Amount>();
    expectTypeOf(mass(1, 'kg')).toEqualTypeOf<Mass>();
  });

  it('from conversion and arithmetic', () => {
    expectTypeOf(toAbsolute(shown, under)).toEqualTypeOf<AbsolutePressure>();
    expectTypeOf(toGauge(under, standardAtmosphere)).toEqualTypeOf<GaugePressure>();
    expectTypeOf(difference(shown, shown)).toEqualTypeOf<PressureDifference>();
    expectTypeOf(difference(under, under)).toEqualTypeOf<PressureDifference>();
    expectTypeOf(difference(warm, warm)).toEqualTypeOf<TemperatureDifference>();
    expectTypeOf(shift(shown, tolerance)).toEqualTypeOf<GaugePressure>();
    expectTypeOf(shift(under, tolerance)).toEqualTypeOf<AbsolutePressure>();
    expectTypeOf(shift(warm, swing)).toEqualTypeOf<Temperature>();
    expectTypeOf(compare(warm, warm)).toEqualTypeOf<-1 | 0 | 1>();
    expectTypeOf(ratio(under, under)).toEqualTypeOf<number>();
    expectTypeOf(ratio(warm, warm)).toEqualTypeOf<number>();
  });

  it('from rounding, writing and reading', () => {
    expectTypeOf(roundTo(shown, { step: 0.5, unit: 'bar', toward: 'down' })).toEqualTypeOf<GaugePressure>();
    expectTypeOf(roundTo(space, { step: 1, unit: 'L', toward: 'up' })).toEqualTypeOf<Volume>();
    expectTypeOf(write(warm, { step: 1, unit: '°F' })).toEqualTypeOf<string>();
    expectTypeOf(write(mass(1, 'kg'), { step: 1, unit: 'kg', toward: 'up' })).toEqualTypeOf<string>();
    expectTypeOf(valueIn(swing, 'K')).toEqualTypeOf<number>();
    expectTypeOf(read('gauge pressure', '140 bar gauge')).toEqualTypeOf<GaugePressure>();
    expectTypeOf(read('amount of substance', '1 mol')).toEqualTypeOf<Amount>();
    expectTypeOf(readmit({})).toEqualTypeOf<Quantity | NormalVolume>();
  });

  it('from lists, by functions that are handed on', () => {
    expectTypeOf([shown].sort(compare)).toEqualTypeOf<GaugePressure[]>();
    expectTypeOf([warm].reduce((most, one) => (compare(one, most) > 0 ? one : most))).toEqualTypeOf<Temperature>();
    const inOrder: (a: AbsolutePressure, b: AbsolutePressure) => number = compare;
    expectTypeOf(inOrder(under, under)).toEqualTypeOf<number>();
    expectTypeOf((<L extends Levelled>(a: L, b: SameKind<L>) => difference(a, b))(warm, warm)).toEqualTypeOf(swing);
  });

  it('of pressures of which the basis is not known: units and a shift, which both have', () => {
    expectTypeOf(valueIn(either, 'bar')).toEqualTypeOf<number>();
    expectTypeOf(write(either, { step: 1, unit: 'bar' })).toEqualTypeOf<string>();
    expectTypeOf(roundTo(either, { step: 1, unit: 'bar', toward: 'up' })).toEqualTypeOf<typeof either>();
    expectTypeOf(shift(either, tolerance)).toEqualTypeOf<typeof either>();
    if (either.kind === 'gauge pressure') expectTypeOf(compare(either, shown)).toEqualTypeOf<-1 | 0 | 1>();
  });

  it('a kind is told by its name', () => {
    const quantity = readmit({});
    if (quantity.kind === 'temperature') expectTypeOf(quantity).toEqualTypeOf<Temperature>();
  });
});

describe('what must not be mixed does not compile', () => {
  it('gauge for absolute, and the reverse', () => {
    // @ts-expect-error a gauge pressure is not an absolute one
    toGauge(shown, under);
    // @ts-expect-error an ambient is absolute
    toAbsolute(shown, shown);
    // @ts-expect-error an absolute pressure is not a gauge pressure
    toAbsolute(under, under);
    expectTypeOf<GaugePressure>().not.toExtend<AbsolutePressure>();
    expectTypeOf<AbsolutePressure>().not.toExtend<GaugePressure>();
  });

  it('a conversion without the ambient', () => {
    // @ts-expect-error there is no default for the weather
    toAbsolute(shown);
    // @ts-expect-error there is no default for the weather
    toGauge(under);
    // @ts-expect-error nor is undefined one
    toAbsolute(shown, undefined);
  });

  it('levels of two kinds', () => {
    // @ts-expect-error gauge and absolute
    difference(shown, under);
    // @ts-expect-error absolute and gauge
    compare(under, shown);
    // @ts-expect-error pressure and temperature
    difference(shown, warm);
    // @ts-expect-error temperature and pressure
    compare(warm, under);
    // @ts-expect-error temperature and pressure
    ratio(warm, under);
  });

  it('levels of which it is not known that they are of one kind', () => {
    // @ts-expect-error it may be a gauge pressure
    difference(either, under);
    // @ts-expect-error it may be an absolute pressure
    compare(shown, either);
    // @ts-expect-error one may be the one and one the other
    compare(either, either);
    // @ts-expect-error a list of both has no order
    [either].sort(compare);
    // @ts-expect-error naming all kinds makes them no one kind
    compare<Levelled>(shown, warm);
    // @ts-expect-error naming both kinds makes them no one kind
    ratio<AbsolutePressure | Temperature>(under, warm);
    // @ts-expect-error naming all kinds makes kelvins no shift of a pressure
    shift<Levelled>(shown, swing);
  });

  it('a unit for what has it in one of its kinds alone', () => {
    // @ts-expect-error not every quantity has a mass
    valueIn(quantity, 'kg');
    // @ts-expect-error naming all kinds makes kelvins no unit of a pressure
    write<Quantity>(shown, { step: 1, unit: 'K' });
    // @ts-expect-error not every quantity is a pressure
    roundTo(quantity, { step: 1, unit: 'bar', toward: 'up' });
    expectTypeOf<UnitOf<GaugePressure | Volume>>().toExtend<SeveralKinds>();
  });

  it('what has no level for a level', () => {
    // @ts-expect-error a difference is no level
    difference(tolerance, tolerance);
    // @ts-expect-error a volume is no level
    compare(space, space);
    // @ts-expect-error a difference is no level
    shift(swing, swing);
  });

  it('a ratio of gauge pressures or of differences', () => {
    // @ts-expect-error the zero of a gauge is the weather
    ratio(shown, shown);
    // @ts-expect-error a difference has no ratio here
    ratio(swing, swing);
  });

  it('a shift by the wrong difference, or by a level', () => {
    // @ts-expect-error kelvins do not shift a pressure
    shift(shown, swing);
    // @ts-expect-error pascals do not shift a temperature
    shift(warm, tolerance);
    // @ts-expect-error a temperature is no difference
    shift(warm, warm);
    // @ts-expect-error a gauge pressure is no difference
    shift(shown, shown);
    // @ts-expect-error an absolute pressure is no difference
    shift(under, under);
  });

  it('a temperature and its difference', () => {
    expectTypeOf<Temperature>().not.toExtend<TemperatureDifference>();
    expectTypeOf<TemperatureDifference>().not.toExtend<Temperature>();
  });

  it('a bare number, a text, an object literal or a copy for a quantity', () => {
    // @ts-expect-error a number has no unit
    toAbsolute(140, under);
    // @ts-expect-error a number has no unit
    toAbsolute(shown, 101_325);
    // @ts-expect-error a text goes through read()
    toAbsolute('140 bar gauge', under);
    // @ts-expect-error a literal has not been checked
    toAbsolute({ kind: 'gauge pressure', pascals: 14e6 }, under);
    // @ts-expect-error nor has a reading in a shape of one's own
    toAbsolute({ value: 140, unit: 'bar' }, under);
    // @ts-expect-error null is no quantity
    write(null, { step: 1, unit: 'bar' });
  });

  it('operators', () => {
    // @ts-expect-error no arithmetic on quantities
    shown - shown;
    // @ts-expect-error no arithmetic on quantities
    shown * 2;
    // @ts-expect-error no arithmetic on quantities
    shown + 2;
  });

  it('assignment to a quantity', () => {
    // @ts-expect-error a quantity does not change
    shown.pascals = 1;
    // @ts-expect-error a quantity does not change
    under.pascals = 1;
    // @ts-expect-error a quantity does not change
    tolerance.pascals = 1;
    // @ts-expect-error a quantity does not change
    warm.kelvins = 1;
    // @ts-expect-error a quantity does not change
    swing.kelvins = 1;
    // @ts-expect-error a quantity does not change
    space.cubicMetres = 1;
    // @ts-expect-error a quantity does not change
    amount(1, 'mol').moles = 1;
    // @ts-expect-error a quantity does not change
    mass(1, 'kg').kilograms = 1;
    // @ts-expect-error nor does its kind
    shown.kind = 'gauge pressure';
  });
});

describe('units and words that there are not do not compile', () => {
  it('in constructors', () => {
    // @ts-expect-error spelled otherwise
    gauge(140, 'Bar');
    // @ts-expect-error the basis is not part of the unit
    gauge(140, 'barg');
    // @ts-expect-error a volume unit
    gauge(140, 'L');
    // @ts-expect-error a pressure unit
    temperature(40, 'bar');
    // @ts-expect-error the degree sign is part of it
    temperature(40, 'C');
    // @ts-expect-error a mass unit
    volume(5, 'kg');
    // @ts-expect-error which gallon it is must be said
    volume(5, 'gal');
    // @ts-expect-error spelled otherwise, and another unit
    absolute(760, 'Torr');
    // @ts-expect-error a volume unit
    absolute(760, 'mL');
    // @ts-expect-error spelled otherwise
    mass(5, 'lbs');
    // @ts-expect-error a volume unit
    mass(5, 'US gal');
    // @ts-expect-error no unit at all
    gauge(140);
    // @ts-expect-error a text goes through read()
    gauge('140', 'bar');
    // @ts-expect-error a unit that is some text
    gauge(140, someText);
  });

  it('in rounding and writing', () => {
    // @ts-expect-error a volume unit for a pressure
    write(shown, { step: 1, unit: 'L' });
    // @ts-expect-error a pressure unit for a temperature
    roundTo(warm, { step: 1, unit: 'bar', toward: 'up' });
    // @ts-expect-error a temperature unit for a volume
    valueIn(space, 'K');
    // @ts-expect-error a mass unit for an amount
    valueIn(amount(1, 'mol'), 'kg');
    // @ts-expect-error rounding a quantity needs its direction said
    roundTo(shown, { step: 1, unit: 'bar' });
    // @ts-expect-error no half-up
    roundTo(shown, { step: 1, unit: 'bar', toward: 'half up' });
    // @ts-expect-error a text without its step
    write(shown, { unit: 'bar' });
  });

  it('in reading', () => {
    // @ts-expect-error a pressure of no basis
    read('pressure', '140 bar');
    // @ts-expect-error a number is not a text
    read('gauge pressure', 140);
  });

  it('and those that there are, are these', () => {
    expectTypeOf<PressureUnit>().toEqualTypeOf<
      'Pa' | 'hPa' | 'kPa' | 'MPa' | 'bar' | 'psi' | 'kgf/cm2' | 'mmHg' | 'inHg'
    >();
    expectTypeOf<TemperatureUnit>().toEqualTypeOf<'°C' | 'K' | '°F'>();
    expectTypeOf<VolumeUnit>().toEqualTypeOf<'m3' | 'L' | 'mL' | 'in3' | 'US gal'>();
    expectTypeOf<MassUnit>().toEqualTypeOf<'kg' | 'g' | 'lb'>();
    expectTypeOf<UnitOf<AbsolutePressure>>().toEqualTypeOf<PressureUnit>();
    expectTypeOf<UnitOf<Volume>>().toEqualTypeOf<VolumeUnit>();
    expectTypeOf<UnitOf<Mass>>().toEqualTypeOf<MassUnit>();
  });
});

describe('a gas volume at a reference state', () => {
  const n = amount(1, 'mol');
  const gasVolume = normalVolume(n, nitrogen, normalConditions);

  it('is a kind of its own, through the model and as an ideal gas', () => {
    expectTypeOf(gasVolume).toEqualTypeOf<NormalVolume>();
    expectTypeOf(normalVolumeAsIdealGas(n, reference60F)).toEqualTypeOf<NormalVolume>();
    expectTypeOf(normalVolume(n, nitrogen, { pressure: under, temperature: warm })).toEqualTypeOf<NormalVolume>();
    expectTypeOf(writeNormalVolume(gasVolume, { step: 1, unit: 'in3', toward: 'up' })).toEqualTypeOf<string>();
  });

  it('does not stand for the volume of a space, nor the reverse', () => {
    expectTypeOf<NormalVolume>().not.toExtend<Volume>();
    // @ts-expect-error its reference state would be lost
    write(gasVolume, { step: 0.001, unit: 'm3' });
    // @ts-expect-error its reference state would be lost
    valueIn(gasVolume, 'm3');
    // @ts-expect-error a space is at no reference state
    writeNormalVolume(space, { step: 0.001, unit: 'm3' });
    // @ts-expect-error a mass unit
    writeNormalVolume(gasVolume, { step: 0.001, unit: 'lb' });
  });

  it('needs its reference state said, in absolute pressure', () => {
    // @ts-expect-error there is no default reference state
    normalVolumeAsIdealGas(n);
    // @ts-expect-error there is no default reference state
    normalVolume(n, nitrogen);
    // @ts-expect-error a gauge pressure names no state
    normalVolumeAsIdealGas(n, { pressure: shown, temperature: warm });
    // @ts-expect-error a reference state does not change
    normalConditions.pressure = under;
  });
});
