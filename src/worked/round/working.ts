// The working behind each result: the calculation of the report, run again with its specification and its reading.
import { has } from '../../basis/has.js';
import { assess } from '../../charge/assess.js';
import { check } from '../../charge/check.js';
import type { PressureUnit, TemperatureUnit } from '../../quantity/unit.js';
import type { Checked, Judged } from '../../record/accumulator.js';
import type { Deciding } from '../../record/certainty.js';
import { readDocument, type Read } from '../../record/document.js';
import { planGivenOf, wantingOf } from '../../record/filling.js';
import { emptyFindings } from '../../record/problems.js';
import { followedIn, numbersOf, releasedIn, releaseOf } from '../../record/safety.js';
import { oxygenAfterRelease } from '../../safety/oxygen.js';
import { fillingPlan } from '../../supply/plan.js';
import type { Derivation } from '../derivation/derivation.js';
import { derivationOf } from '../derivation/derive.js';
import { derivationBlocks } from '../derivation/document.js';
import type { Detail } from '../derivation/reader.js';
import type { Block } from '../document/block.js';
import { given as foreign } from '../document/given.js';
import { lineOf } from '../document/line.js';
import { nameOf, type About } from './about.js';

export function workings(about: About, detail: Detail): readonly Block[] {
  const { report, language, again } = about;
  const words = language.document.round;
  // Of another result the working would be that of a reading that is not in the report.
  if (again.outcome !== 'same' || report.accumulators.length === 0) return [];
  const read = readDocument({ json: report.input, isWhole: true }, emptyFindings());
  const { judged, deciding } = read;
  const ofOne = (checked: Checked, whose: Judged['whose'], heading: string): readonly Block[] => [
    { kind: 'heading', level: 2, text: lineOf(heading, { accumulator: nameOf(whose, about) }) },
    ...workingOf(checked, deciding, about, detail),
  ];
  return [
    { kind: 'page break' },
    { kind: 'heading', level: 1, text: words.workingHeading },
    ...judged.flatMap(({ whose, asFound, asLeft }) => [
      ...ofOne(asFound, whose, words.workingOf),
      ...(asLeft === undefined ? [] : ofOne(asLeft, whose, words.workingLeft)),
    ]),
    ...(report.filling === undefined || read.supply === undefined ? [] : ofPlan(read.supply, judged, about, detail)),
    ...(report.safety === undefined || read.safety === undefined ? [] : ofSafety(read.safety, judged, about, detail)),
  ];
}

/** The balance of each step of the plan, which stand in its order. */
function ofPlan(
  supply: NonNullable<Read['supply']>,
  judged: readonly Judged[],
  about: About,
  detail: Detail,
): readonly Block[] {
  const given = planGivenOf(supply, judged.flatMap(wantingOf));
  const derivation = derivationOf(given, (own, trace) => fillingPlan(own, trace));
  // Without a step there is nothing to work.
  if (derivation.steps.length === 0) return [];
  const unit = judged[0]?.asFound.admitted.reading.gaugeStep.unit ?? 'bar';
  return [
    { kind: 'heading', level: 2, text: about.language.document.filling.heading },
    ...blocksIn(derivation, unit, about, detail),
  ];
}

/** The numbers of each specification, and of each release. */
function ofSafety(
  { room, ...stated }: NonNullable<Read['safety']>,
  judged: readonly Judged[],
  about: About,
  detail: Detail,
): readonly Block[] {
  const words = about.language.document.round;
  const followed = followedIn(judged);
  const bottles = (about.report.filling?.bottles ?? []).map(({ name, contents }) => ({
    name,
    moles: contents.amount.value,
  }));
  const numbers = followed.map(({ name, spec, fullest, unit }) => ({
    name,
    heading: words.workingSafety,
    unit,
    derivation: derivationOf({ ...stated, spec, fullest }, (own, trace) => {
      const { spec: of, fullest: at, ...rest } = own;
      return numbersOf(rest, { name, spec: of, fullest: at }, judged, trace);
    }),
  }));
  const releases =
    room === undefined
      ? []
      : releasedIn(followed, bottles).map(({ name, moles }) => ({
          name,
          heading: words.workingReleased,
          unit: 'bar' as const,
          derivation: derivationOf(releaseOf(room, moles), (own, trace) => oxygenAfterRelease(own, trace)),
        }));
  return [...numbers, ...releases]
    .filter(({ derivation }) => derivation.steps.length > 0)
    .flatMap(({ name, heading, unit, derivation }) => [
      { kind: 'heading' as const, level: 2 as const, text: lineOf(heading, { name: [foreign(name)] }) },
      ...blocksIn(derivation, unit, about, detail),
    ]);
}

/** The working of one reading, in the units of its gauge and thermometer. */
function workingOf(checked: Checked, deciding: Deciding | undefined, about: About, detail: Detail): readonly Block[] {
  const { given, reading } = checked.admitted;
  return blocksIn(derived(checked, deciding), reading.gaugeStep.unit, about, detail, given.temperature.unit);
}

function blocksIn(
  derivation: Derivation,
  pressure: PressureUnit,
  { language }: About,
  detail: Detail,
  temperature: TemperatureUnit = '°C',
): readonly Block[] {
  const units = { pressure, temperature, volume: 'L', mass: 'kg' } as const;
  return derivationBlocks(derivation, { language, units, detail }).map((block): Block =>
    block.kind === 'heading' ? { ...block, level: 3 } : block,
  );
}

/** As the record calculated it: with the uncertainty of the instruments, where all of it is stated. */
function derived({ spec, admitted: { reading }, measuring }: Checked, deciding: Deciding | undefined): Derivation {
  if (deciding === undefined || measuring === undefined || has(measuring, 'lacking'))
    return derivationOf({ spec, reading }, (own, trace) => check(own.spec, own.reading, trace));
  const { rule } = deciding;
  const { instruments } = measuring;
  return derivationOf({ spec, reading, instruments }, (own, trace) =>
    assess(own.spec, own.reading, own.instruments, rule, trace),
  );
}
