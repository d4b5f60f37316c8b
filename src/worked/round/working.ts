// The working behind each result: the calculation of the report, run again with its reading.
import { readDocument } from '../../record/document.js';
import { emptyFindings } from '../../record/problems.js';
import type { Judged } from '../../record/accumulator.js';
import type { Block } from '../document/block.js';
import { lineOf } from '../document/line.js';
import { nameOf, type About } from './about.js';
import { workingOf } from './working-of.js';

export function workings(about: About): readonly Block[] {
  const { report, language, again } = about;
  const words = language.document.round;
  // Of another result the working would be that of a reading that is not in the report.
  if (again.outcome !== 'same' || report.accumulators.length === 0) return [];
  const { judged } = readDocument({ json: report.input, isWhole: true }, emptyFindings());
  return [
    { kind: 'page break' },
    { kind: 'heading', level: 1, text: words.workingHeading },
    ...judged.flatMap((one: Judged): readonly Block[] => [
      { kind: 'heading', level: 2, text: lineOf(words.workingOf, { accumulator: nameOf(one.whose, about) }) },
      ...workingOf(one.asFound, language),
    ]),
  ];
}
