// The cautions of a report, the worst first, with the accumulators that each belongs to.
import type { CautionCode } from '../../basis/caution.js';
import type { Block, Line } from '../document/block.js';
import { cautionNotices } from '../document/cautions.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { namesOf, pastDue, type About } from './about.js';

export function cautions(about: About): readonly Block[] {
  const { report, language } = about;
  const words = language.document.round;
  const where = (code: CautionCode): Line | undefined => {
    const whose = report.accumulators.filter(({ asFound, asLeft }) =>
      [asFound, asLeft].some((judged) => judged !== 'not read' && judged.cautions.includes(code)),
    );
    if (whose.length === 0) return undefined;
    const names = namesOf(whose, about);
    if (code !== 'certificate past due') return lineOf(words.cautionFor, { names });
    const instruments = joined(
      [...pastDue(report)].map((name) => [given(name)]),
      ', ',
    );
    return lineOf(words.cautionBy, { names, instruments });
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
