// What every part of the document of a round is made from, and how its values are written.
import { gauge, pressureDifference } from '../../quantity/pressure.js';
import { finer, write, type Division, type Toward } from '../../quantity/step.js';
import type { PressureUnit } from '../../quantity/unit.js';
import { dayOf } from '../../record/instruments.js';
import type { AccumulatorJson, JudgedJson, RoundReport } from '../../record/report-shape.js';
import type { Reverified } from '../../record/reverify.js';
import { given } from '../document/given.js';
import type { Line } from '../document/block.js';
import { joined, type Say } from '../document/line.js';
import type { Language } from '../languages/language.js';

export interface About {
  /** In the words of the language, where its round gives it again. */
  readonly report: RoundReport;
  readonly language: Language;
  readonly say: Say;
  /** The same for sentences of the report, which stay as they are where they are not in the words of the language. */
  readonly tell: Say;
  readonly again: Reverified;
}

interface Value {
  readonly value: number | string;
  readonly unit: PressureUnit;
}

/** One decimal more than the gauge is read to. */
export function stepOf({ reading }: JudgedJson): Division<PressureUnit> {
  const { value, unit } = reading.gaugeStep;
  return finer({ step: Number(value), unit });
}

/** A gauge pressure, to a step in its own unit; that it is a gauge pressure, the head of its column says. */
export function gaugeText({ value, unit }: Value, { step }: Division<PressureUnit>): string {
  return write(gauge(Number(value), unit), { step, unit }).replace(/ gauge$/, '');
}

/** A gauge pressure with the word for its basis, to a step. */
export function writtenGauge({ value, unit }: Value, { step }: { readonly step: number }, toward?: Toward): string {
  const as = toward === undefined ? { step, unit } : { step, unit, toward };
  return write(gauge(Number(value), unit), as);
}

/** A step where nobody reads a gauge: of so many bar, or what is about as much in the unit. */
export function stepAt(unit: PressureUnit, bars: number): Division<PressureUnit> {
  return { step: unit === 'MPa' ? bars / 10 : bars, unit };
}

/** A difference, to a step in its own unit, without the word for its basis. */
export function differenceText({ value, unit }: Value, { step }: { readonly step: number }, toward?: Toward): string {
  const as = toward === undefined ? { step, unit } : { step, unit, toward };
  return write(pressureDifference(Number(value), unit), as).replace(/ difference$/, '');
}

/** A probability, never said to be 0 % or 100 % where it is not. */
export function percent(probability: number, { language }: About): string {
  const { underOne, overNinetyNine } = language.document.round;
  const value = 100 * probability;
  if (value > 0 && value < 1) return underOne;
  if (value > 99 && value < 100) return overNinetyNine;
  return `${Math.round(value)} %`;
}

/** The name of an accumulator, with its group where that is needed to tell it from another of the report. */
export function nameOf({ group, name }: Pick<AccumulatorJson, 'group' | 'name'>, { report }: About): Line {
  const isShared = report.accumulators.some((one) => one.name === name && one.group !== group);
  return isShared ? [given(group), ' / ', given(name)] : [given(name)];
}

export function namesOf(all: readonly Pick<AccumulatorJson, 'group' | 'name'>[], about: About): Line {
  return joined(
    all.map((one) => nameOf(one, about)),
    ', ',
  );
}

/** The instruments of a report that were past due on the day of a reading, by name. */
export function pastDue({ instruments, accumulators }: RoundReport): ReadonlySet<string> {
  const due = new Map(instruments.map((one) => [one.name, one.due]));
  const late = new Set<string>();
  for (const { asFound, asLeft } of accumulators)
    for (const { at, reading } of asLeft === 'not read' ? [asFound] : [asFound, asLeft])
      for (const name of [reading.instruments?.pressure, reading.instruments?.temperature])
        if (name !== undefined && (due.get(name) ?? dayOf(at)) < dayOf(at)) late.add(name);
  return late;
}
