import { toSI, type Scale } from '../../quantity/decimal.js';
import type { GaugePressure, PressureDifference, Temperature } from '../../quantity/kind.js';
import { roundSI, valueIn } from '../../quantity/step.js';
import { pressureDifference } from '../../quantity/pressure.js';
import {
  PRESSURE,
  TEMPERATURE,
  TEMPERATURE_DIFFERENCE,
  type PressureUnit,
  type TemperatureUnit,
} from '../../quantity/unit.js';

// A printed column is bare numbers; what they mean is how one reads them. The same numbers in another unit or basis are
// another sheet.

/** A column of a table as its numbers are printed, and the steps to which they are rounded. */
export interface Numbers {
  readonly temperatures: readonly number[];
  readonly pressures: readonly number[];
  readonly reference: number;
  readonly pressureStep: number;
  /** 0 for temperatures that are exact. */
  readonly temperatureStep: number;
}

/** How the numbers of a column are read. */
export interface ReadAs {
  readonly pressureUnit: PressureUnit;
  readonly basis: 'gauge' | 'absolute';
  readonly temperatureUnit: TemperatureUnit;
  /** Step to which the pressures are taken to be printed, in that unit. */
  readonly printedStep: PressureDifference;
}

/** What may be read otherwise than stated. */
export type ReadOtherwise = 'pressure unit' | 'basis' | 'temperature unit' | 'printed step';

/** A column read in one way, in SI units. */
export interface Sheet {
  readonly T_K: readonly number[];
  /** As printed: above `zero_Pa`. */
  readonly p_Pa: readonly number[];
  /** Absolute pressure behind a printed zero: the ambient for gauge pressures. */
  readonly zero_Pa: number;
  readonly ambient_Pa: number;
  readonly reference_K: number;
  readonly step_Pa: number;
  /** 0 for temperatures that are exact. */
  readonly step_K: number;
}

/** A column as the numbers that are printed. */
export function numbersOf(
  column: { readonly temperatures: readonly Temperature[]; readonly pressures: readonly GaugePressure[] },
  reference: Temperature,
  units: { readonly pressure: PressureUnit; readonly temperature: TemperatureUnit },
  pressureStep: number,
  temperatureStep: number,
): Numbers {
  return {
    temperatures: column.temperatures.map((one) => valueIn(one, units.temperature)),
    pressures: column.pressures.map((one) => valueIn(one, units.pressure)),
    reference: valueIn(reference, units.temperature),
    pressureStep,
    temperatureStep,
  };
}

/** The numbers of a column, read in one way. */
export function sheetOf(numbers: Numbers, as: ReadAs, ambient_Pa: number): Sheet {
  const kelvins = (number: number): number => toSI(number, TEMPERATURE[as.temperatureUnit]);
  return {
    T_K: numbers.temperatures.map(kelvins),
    p_Pa: numbers.pressures.map((number) => toSI(number, PRESSURE[as.pressureUnit])),
    zero_Pa: as.basis === 'gauge' ? ambient_Pa : 0,
    ambient_Pa,
    reference_K: kelvins(numbers.reference),
    step_Pa: as.printedStep.pascals,
    step_K: toSI(numbers.temperatureStep, TEMPERATURE_DIFFERENCE[as.temperatureUnit]),
  };
}

/** Of a number by itself. */
const ONE: Scale = { num: 1, den: 1, zero: 0 };

/** Units in which pre-charges are printed; those of barometers are left out. */
const PRESSURE_UNITS: readonly PressureUnit[] = ['bar', 'MPa', 'kPa', 'psi', 'kgf/cm2'];
const TEMPERATURE_UNITS: readonly TemperatureUnit[] = ['°C', '°F', 'K'];
/** Steps that a table may be printed to instead: so many times as coarse. */
const COARSER = [2, 5, 10];

/** Every other way to read the numbers of a column, those with the fewest changes first. */
export function otherReadings(
  numbers: Numbers,
  stated: ReadAs,
): readonly { readonly as: ReadAs; readonly changes: readonly ReadOtherwise[] }[] {
  const steps = [numbers.pressureStep, ...coarserSteps(numbers)];
  const all = steps.flatMap((step, i) =>
    PRESSURE_UNITS.flatMap((pressureUnit) =>
      (['gauge', 'absolute'] as const).flatMap((basis) =>
        TEMPERATURE_UNITS.map((temperatureUnit) => {
          const changed: Readonly<Record<ReadOtherwise, boolean>> = {
            'pressure unit': pressureUnit !== stated.pressureUnit,
            basis: basis !== stated.basis,
            'temperature unit': temperatureUnit !== stated.temperatureUnit,
            'printed step': i > 0,
          };
          const changes = (Object.keys(changed) as ReadOtherwise[]).filter((what) => changed[what]);
          const printedStep = pressureDifference(step, pressureUnit);
          return { as: { pressureUnit, basis, temperatureUnit, printedStep }, changes };
        }),
      ),
    ),
  );
  return all.filter(({ changes }) => changes.length > 0).sort((a, b) => a.changes.length - b.changes.length);
}

function coarserSteps({ pressures, pressureStep }: Numbers): readonly number[] {
  return COARSER.map((times) => Number((times * pressureStep).toPrecision(12))).filter((step) =>
    pressures.every((number) => isOnMark(number, step)),
  );
}

/** Whether a printed number lies on a mark of a step in its own unit. */
export function isOnMark(number: number, step: number): boolean {
  return roundSI(number, step, ONE, 'nearest even').si === number;
}
