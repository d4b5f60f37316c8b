// Names for the parts of a round that somebody writes, each as the shape of the round has it.
import type { Round } from './shape.js';

type One<T extends readonly unknown[] | undefined> = NonNullable<T>[number];
type Field<T, K extends keyof T> = NonNullable<T[K]>;

/** A specification of a round: what the maker's manual says of one kind of accumulator. */
export interface RoundSpecification extends One<Round['specifications']> {}

/** A maker's table of a round: one column of temperatures, one or several of pressures. */
export interface RoundTable extends One<Round['tables']> {}

/** An instrument of a round: its name and due date, and its scale and accuracy where an uncertainty is asked for. */
export interface RoundInstrument extends One<Round['instruments']> {}

/** A group of a round: accumulators of one specification, with what is stated for them once. */
export interface RoundGroup extends One<Round['groups']> {}

/** An accumulator of a round, with the readings of the visit to it. */
export interface RoundAccumulator extends One<RoundGroup['accumulators']> {}

/** A reading of a round. */
export interface RoundReading extends One<RoundAccumulator['visit']> {}

/** A gauge pressure in a round or a report: value, unit, and `basis: 'gauge'`. */
export interface GaugePressureJson extends Field<RoundReading, 'pressure'> {}

/** An absolute pressure in a round or a report, as an ambient is: value, unit, and `basis: 'absolute'`. */
export interface AbsolutePressureJson extends Field<RoundReading, 'ambient'> {}

/** A pressure difference in a round or a report, such as a tolerance or the step of a gauge: `basis: 'difference'`. */
export interface PressureDifferenceJson extends Field<RoundReading, 'gaugeStep'> {}

/** A temperature in a round or a report: value and unit. */
export interface TemperatureJson extends Field<RoundReading, 'temperature'> {}

/** A temperature difference in a round or a report, such as the step of a manual: `basis: 'difference'`. */
export interface TemperatureDifferenceJson extends Field<Field<RoundSpecification, 'printed'>, 'temperature'> {}

/** A volume in a round or a report: value and unit. */
export interface VolumeJson extends Field<RoundSpecification, 'gasVolume'> {}
