// The cautions of a report, the worst first, with the accumulators that each belongs to.
import type { CautionCode } from '../../basis/caution.js';
import type { Block, Line } from '../document/block.js';
import { cautionNotices } from '../document/cautions.js';
import { lineOf } from '../document/line.js';
import { namesOf, type About } from './about.js';

export function cautions(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  const where = (code: CautionCode): Line | undefined => {
    const whose = report.accumulators.filter(({ asFound, asLeft }) =>
      [asFound, asLeft].some((judged) => judged !== 'not read' && judged.cautions.includes(code)),
    );
    return whose.length === 0 ? undefined : lineOf(words.cautionFor, { names: namesOf(whose, about) });
  };
  return [
    { kind: 'heading', level: 1, text: words.cautionsHeading },
    ...cautionNotices(
      report.cautions.map(({ code }) => code),
      language,
      where,
    ),
  ];
}
