// The working behind each result: the calculation of the report, run again with its specification and its reading.
import { assess } from '../../charge/assess.js';
import { check } from '../../charge/check.js';
import type { Checked, Judged } from '../../record/accumulator.js';
import type { Deciding } from '../../record/certainty.js';
import { readDocument } from '../../record/document.js';
import { emptyFindings } from '../../record/problems.js';
import type { Derivation } from '../derivation/derivation.js';
import { derivationOf } from '../derivation/derive.js';
import { derivationBlocks } from '../derivation/document.js';
import type { Detail } from '../derivation/reader.js';
import type { Block } from '../document/block.js';
import { lineOf } from '../document/line.js';
import { nameOf, type About } from './about.js';

export function workings(about: About, detail: Detail): readonly Block[] {
  const { report, language, again } = about;
  const words = language.document.round;
  // Of another result the working would be that of a reading that is not in the report.
  if (again.outcome !== 'same' || report.accumulators.length === 0) return [];
  const { judged, deciding } = readDocument({ json: report.input, isWhole: true }, emptyFindings());
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
  ];
}

/** The working of one reading, in the units of its gauge and thermometer. */
function workingOf(
  checked: Checked,
  deciding: Deciding | undefined,
  { language }: About,
  detail: Detail,
): readonly Block[] {
  const { given, reading } = checked.admitted;
  const units = {
    pressure: reading.gaugeStep.unit,
    temperature: given.temperature.unit,
    volume: 'L',
    mass: 'kg',
  } as const;
  return derivationBlocks(derived(checked, deciding), { language, units, detail }).map((block): Block =>
    block.kind === 'heading' ? { ...block, level: 3 } : block,
  );
}

/** As the record calculated it: with the uncertainty of the instruments, where all of it is stated. */
function derived({ spec, admitted: { reading }, measuring }: Checked, deciding: Deciding | undefined): Derivation {
  if (deciding === undefined || measuring === undefined || 'lacking' in measuring)
    return derivationOf({ spec, reading }, (own, trace) => check(own.spec, own.reading, trace));
  const { rule } = deciding;
  const { instruments } = measuring;
  return derivationOf({ spec, reading, instruments }, (own, trace) =>
    assess(own.spec, own.reading, own.instruments, rule, trace),
  );
}
