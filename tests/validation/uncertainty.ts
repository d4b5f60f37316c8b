// How sure a reading is, and what it decides: against the examples of the guides of the JCGM and the classes of EN 837-1.
import { decide, globalRisks, uncertainty, type AccuracyClass, type Rule } from 'isochore';
import { sumOfParts } from '../../src/verdict/budget.js';
import type { Part } from '../../src/verdict/contributions.js';
import { quantile, sumOf, type Sum } from '../../src/verdict/distribution.js';
import { celsius, readingWith, specWith } from '../support/accumulator.js';
import { at20, dialWith, inBar, onlyNormal } from '../support/instruments.js';
import { digits, printedDigits, type Check, type Group, type Step } from './check.js';

const NORMAL = sumOf([], 1);
const P95 = 0.975;

/** A sum of rectangles of these standard deviations. */
const rectangles = (standards: readonly number[]): Sum =>
  sumOf(
    standards.map((u) => ({ half: u * Math.sqrt(3), times: 1 })),
    0,
  );

function combined(): Group {
  const parts = [25, 9.7, 2.9, 16.6].map((size): Part => ({
    of: 'gauge',
    distribution: 'normal',
    size,
    unit: 'Pa',
    sensitivity: 1,
    repeats: 'common to all',
  }));
  return {
    title: 'Combined standard uncertainty',
    source:
      'JCGM 100:2008, annex H.1, calibration of an end gauge, from memory: its contributions, to whole nanometres.',
    checks: [printedDigits('of 25 nm, 9.7 nm, 2.9 nm and 16.6 nm', 'nm', '32', sumOfParts(parts, 1).standard)],
  };
}

function intervals(): Group {
  const cases = [
    ['9.2.2: four normal, u = 1', sumOf([], 2), '3.92', '3.92'],
    ['9.2.3: four equal rectangles, u = 1', rectangles([1, 1, 1, 1]), '3.88', '3.92'],
    ['9.2.4: one rectangle of four ten times as wide', rectangles([1, 1, 1, 10]), '17.0', '19.9'],
  ] as const;
  return {
    title: 'Interval of 95 %',
    source:
      'JCGM 101:2008, 9.2, the additive models, from memory: half the width by the distribution of the sum, and by the ' +
      'method of JCGM 100 beside it.',
    checks: cases.flatMap(([what, sum, byDistribution, byGum]) => [
      printedDigits(`${what}: by distribution`, '', byDistribution, quantile(sum, P95)),
      printedDigits(`${what}: by JCGM 100`, '', byGum, quantile(NORMAL, P95) * sum.standard),
    ]),
  };
}

function quantiles(): Group {
  // mpmath 1.3.0 with 40 digits: sqrt(2) erfinv(2 p − 1).
  const known = [
    [0.9, 1.2815515655446004],
    [0.95, 1.6448536269514726],
    [0.975, 1.9599639845400543],
    [0.999, 3.0902323061678136],
  ] as const;
  return {
    title: 'Quantiles of the normal distribution',
    source: 'mpmath 1.3.0 with 40 digits. What is used must be right to 1e-12.',
    checks: known.map(([p, z]): Check => ({
      what: `p = ${p}`,
      expected: String(z),
      obtained: digits(quantile(NORMAL, p), 13),
      deviation: Math.abs(quantile(NORMAL, p) / z - 1),
      allowance: 1e-12,
      unit: 'relative',
    })),
  };
}

function classes(): Group {
  const rows = [
    [0.6, '1.50'],
    [1, '2.50'],
    [1.6, '4.00'],
    [2.5, '6.25'],
  ] as const;
  const sized = (of: string, instruments: ReturnType<typeof dialWith>): number => {
    const budget = uncertainty(specWith(), readingWith(), instruments);
    if ('because' in budget) throw new Error(budget.because);
    const found = budget.contributions.find((one) => one.of === of)?.size;
    if (typeof found !== 'object' || !('pascals' in found)) throw new Error(`no ${of}`);
    return found.pascals / 1e5;
  };
  return {
    title: 'Dial gauges',
    source:
      'EN 837-1, from memory: the class is the limit of error as a percentage of span; temperature moves a gauge by 0.04 % ' +
      'of span for every kelvin from 20 °C. By hand, for 0 to 250 bar.',
    checks: [
      ...rows.map(([accuracyClass, limit]: readonly [AccuracyClass, string]) =>
        printedDigits(
          `class ${accuracyClass}`,
          'bar',
          limit,
          sized('gauge', dialWith({ accuracy: { accuracyClass } })),
        ),
      ),
      printedDigits('at 45 °C', 'bar', '2.50', sized('gauge temperature', dialWith({ temperature: celsius(45) }))),
    ],
  };
}

function decisions(): Group {
  const far = specWith({ tolerance: { below: inBar(50), above: inBar(1), applies: 'at the measured temperature' } });
  const simple: Rule = { acceptance: 'simple acceptance', risk: { below: 0.02, above: 0.02 } };
  const zener = decide(far, at20(139.6), onlyNormal(1), simple);
  if (zener.outcome === 'no decision') throw new Error(zener.because);
  // A guard of half a standard uncertainty: the risk that a normal distribution leaves beyond half of it.
  const risk = 0.30853753872598694;
  const guarded: Rule = { acceptance: 'guarded acceptance', risk: { below: risk, above: risk } };
  const prior = { mean: inBar(0), standard: inBar(1.2) };
  const resistors = globalRisks(specWith(), at20(140), onlyNormal(0.4), guarded, prior);
  if ('because' in resistors) throw new Error(resistors.because);
  const { falselyAccepted, accepted, conforming } = resistors;
  const consumer = falselyAccepted.below + falselyAccepted.above;
  return {
    title: 'Decisions',
    source:
      'JCGM 106:2012, from memory, in bar instead of volts and ohms: the Zener diode of 7.3, 1.4 standard uncertainties from ' +
      'its limit; the resistors of 9.5.5, ± 0.2 with a spread of 0.12 and an uncertainty of 0.04, accepted to ± 0.18.',
    checks: [
      printedDigits('Zener diode: probability of conforming', '', '0.92', zener.probability.within),
      printedDigits('resistors: falsely accepted', '', '0.01', consumer),
      printedDigits('resistors: not accepted though conforming', '', '0.07', conforming - (accepted - consumer)),
    ],
  };
}

export function uncertainties(): Step {
  return { title: 'Uncertainty and decisions', groups: [combined(), intervals(), quantiles(), classes(), decisions()] };
}
