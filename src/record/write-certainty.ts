// How sure a reading is, what it decides and what it may have been meant as, as plain JSON data. Numbers of people's texts
// are rounded to the safe side: what would settle a reading is said a little too strict.
import { has, optional } from '../basis/has.js';
import { uncertaintyText, type UncertaintyCode, type Words } from '../basis/words.js';
import type { PressureDifference, TemperatureDifference } from '../quantity/kind.js';
import type { Budget, NoBudget } from '../verdict/budget.js';
import type { Decision } from '../verdict/decide.js';
import { settledBy } from '../verdict/settled-by.js';
import type { Settling } from '../verdict/what-settles.js';
import { slipText, type SlipCandidate } from '../verdict/slips.js';
import type { Checked } from './accumulator.js';
import type { DecisionJson, SettlingJson, SlipCandidateJson, UncertaintyJson } from './certainty-shape.js';
import { differenceJson, gaugeJson, temperatureDifferenceJson, temperatureJson } from './quantities.js';
import type { JudgedJson } from './report-shape.js';

/** Contributions with less of the variance are not listed, but for the largest. */
const LEAST_SHARE = 0.1;

/** How sure a judged reading is, as far as that is known, and what it may have been meant as. */
export function certaintyJson(
  checked: Checked,
  words: Words | undefined,
): Pick<JudgedJson, 'uncertainty' | 'decision' | 'slips'> {
  const { check, measuring, slips } = checked;
  const meant = slips.length === 0 ? {} : { slips: slips.map((one) => candidateJson(one, checked, words)) };
  if (measuring === undefined) return meant;
  if (has(measuring, 'lacking'))
    return { uncertainty: { outcome: 'not stated', lacking: [...measuring.lacking] }, ...meant };
  if (!has(check, 'decision')) return meant;
  return {
    uncertainty: uncertaintyJson(check.uncertainty, checked),
    decision: decisionJson(check.decision, checked, words),
    ...meant,
  };
}

function uncertaintyJson(budget: Budget | NoBudget, { admitted }: Checked): UncertaintyJson {
  if (has(budget, 'because')) return { outcome: 'not covered', because: budget.because };
  const { unit } = admitted.reading.gaugeStep;
  const { corrected, temperature, offTarget, standard, interval, contributions, notCounted } = budget;
  return {
    outcome: 'stated',
    corrected: gaugeJson(corrected, unit),
    temperature: temperatureJson(temperature, admitted.given.temperature.unit),
    offTarget: differenceJson(offTarget, unit),
    standard: differenceJson(standard, unit),
    interval: {
      coverage: interval.coverage,
      lower: differenceJson(interval.lower, unit),
      upper: differenceJson(interval.upper, unit),
    },
    largest: contributions
      .filter(({ share }, i) => i === 0 || share >= LEAST_SHARE)
      .map((one) => ({ code: one.of, share: one.share, standard: differenceJson(one.standard, unit) })),
    notCounted: [...notCounted],
  };
}

function decisionJson(decision: Decision, checked: Checked, words: Words | undefined): DecisionJson {
  if (decision.outcome === 'no decision') return { outcome: decision.outcome, because: decision.because };
  const { outcome, inBand, probability, direction, adjusting } = decision;
  const settling = optional(decision, 'settling');
  return {
    outcome,
    inBand,
    probability: { ...probability },
    direction,
    adjusting: { ...adjusting },
    ...(settling === undefined ? {} : { settling: settlingJson(settling, checked, words) }),
  };
}

function settlingJson(settling: Settling, { admitted }: Checked, words: Words | undefined): SettlingJson {
  const { gaugeStep } = admitted.reading;
  const temperatureUnit = admitted.given.temperature.unit;
  const pressure = <None extends string>(one: PressureDifference | None) =>
    typeof one === 'string' ? one : differenceJson(one, gaugeStep.unit);
  const kelvins = <None extends string>(one: TemperatureDifference | None) =>
    typeof one === 'string' ? one : temperatureDifferenceJson(one, temperatureUnit);
  const { largest, standard, gaugeLimit, accuracyClass, thermometerLimit, shellToGas, readings } = settling;
  return {
    largest,
    standard: pressure(standard),
    gaugeLimit: pressure(gaugeLimit),
    accuracyClass,
    thermometerLimit: kelvins(thermometerLimit),
    shellToGas: kelvins(shellToGas),
    readings,
    ways: [...settledBy(settling, gaugeStep, words?.settled)],
  };
}

function candidateJson(
  { slips, pressure, temperature, verdict }: SlipCandidate,
  { admitted }: Checked,
  words: Words | undefined,
): SlipCandidateJson {
  return {
    slips: slips.map((slip) => ({ ...slip, text: slipText(slip, words?.slips) })),
    pressure: gaugeJson(pressure, admitted.reading.gaugeStep.unit),
    temperature: temperatureJson(temperature, admitted.given.temperature.unit),
    outcome: verdict.outcome,
  };
}

/** The codes of uncertainty that a judged reading names. */
export function termsOf({ uncertainty, decision }: JudgedJson): readonly UncertaintyCode[] {
  if (uncertainty === undefined) return [];
  const codes: UncertaintyCode[] =
    uncertainty.outcome === 'stated'
      ? [...uncertainty.largest.map(({ code }) => code), ...uncertainty.notCounted]
      : uncertainty.outcome === 'not covered'
        ? [uncertainty.because]
        : [...uncertainty.lacking];
  if (decision === undefined) return codes;
  if (has(decision, 'because')) return [...codes, decision.because];
  const settling = optional(decision, 'settling');
  return settling === undefined ? codes : [...codes, settling.largest];
}

/** A code of uncertainty with its text. */
export function termJson(code: UncertaintyCode, words: Words | undefined): { code: UncertaintyCode; text: string } {
  return { code, text: uncertaintyText(code, words?.uncertainty) };
}
