// A whole derivation with its numbers printed.
import type { DerivedStep } from './derivation.js';
import { Figures, type ReaderUnits } from './figures.js';
import { writtenStep, type WrittenStep } from './written-step.js';

/** A step, and the working of its state by hand, with their numbers. */
export interface WrittenWorking {
  readonly written: WrittenStep;
  readonly byHand: readonly WrittenStep[];
}

export interface Written {
  readonly steps: readonly WrittenWorking[];
  readonly figures: Figures;
}

const MOST_DIGITS = 15;

/**
 * The steps with their numbers. Where a difference of rounded numbers would leave no digit of a result, all numbers get
 * more digits, so that the printed numbers give the printed result.
 */
export function written(steps: readonly DerivedStep[], units: ReaderUnits, digits: number | 'exact'): Written {
  const figures = new Figures(units, digits);
  const done = steps.map((step): WrittenWorking => ({
    written: writtenStep(step, figures),
    byHand: (step.state?.steps ?? []).map((one) => writtenStep(one, figures)),
  }));
  if (figures.tooCoarse && typeof digits === 'number' && digits < MOST_DIGITS) return written(steps, units, digits + 1);
  return { steps: done, figures };
}
