import { fail, quote, under } from '../../basis/fault.js';
import { notAReport } from '../../basis/problem.js';
import { neededReport } from '../../record/needed-report.js';
import { reportRound } from '../../record/report.js';
import type { RoundReport } from '../../record/report-shape.js';
import { reverify, type Reverified } from '../../record/reverify.js';
import type { Detail } from '../derivation/reader.js';
import type { Block, WorkedDocument } from '../document/block.js';
import { given as othersText } from '../document/given.js';
import { sayIn } from '../document/line.js';
import { fieldsOf, oneOf, taken, type Take } from '../door.js';
import { neededLanguage } from '../languages/format.js';
import type { Language } from '../languages/language.js';
import type { About } from './about.js';
import { instruments, remarks, signatures } from './appendix.js';
import { cautions } from './cautions.js';
import { filling } from './filling.js';
import { found, readings } from './found.js';
import { gasToAdd, toDo } from './to-do.js';
import { safety } from './safety.js';
import { problems, provenance, summary } from './summary.js';
import { whole } from './whole.js';
import { workings } from './working.js';

/** How the document of a round is to be. There are no defaults. */
export interface RoundDocumentGiven {
  readonly language: Language;
  /** How much of the working behind each result, as an appendix; `left out` for none. */
  readonly working: Detail | 'left out';
}

/**
 * The report of a round as a document: summary, the round as a whole, cautions, what was found, what to do, the readings
 * with their evidence, the working behind each result, lines to sign on, and where it all comes from.
 *
 * It computes nothing of its own. The round that the report carries is judged again: where that gives the same results, the
 * sentences are those of the language asked for, and the working is that of the calculation. Where it does not, or where the
 * report was altered, the document says so at its head, and everything in it is as the report has it. A partial report says
 * so at its head as well.
 *
 * @param report as {@link reportRound} made it, or as JSON.parse gives it back
 * @throws {@link Fault} with the problems of its shape for what is no report; `wrong kind` for a language that is none;
 * `unknown word` for whether the working is wanted
 * @example
 * ```ts
 * const report = reportRound(round, { problems: 'refuse the round' });
 * const page = roundDocument(report, { language: english, working: 'left out' });
 * documentMarkdown(page).includes('Accumulators judged: 1; not judged: 0.'); // => true
 * ```
 */
export function roundDocument(report: RoundReport, given: RoundDocumentGiven): WorkedDocument {
  const { working } = taken(fieldsOf('a way to show a round', { working: HOW }), given, 'given');
  const language = neededLanguage(given.language);
  const own = ownReport(report);
  const again = reverify(own);
  const say = sayIn(language);
  const tell = again.outcome === 'same' ? say : (text: string): string => text;
  const about: About = { report: inWords(own, again, language), language, say, tell, again };
  const words = language.document.round;
  const { title } = own;
  return {
    language: language.code,
    title: title === undefined || title === '' ? words.title : [words.title, ': ', othersText(title)],
    blocks: [
      ...summary(about),
      ...problems(about),
      ...whole(about),
      ...cautions(about),
      ...found(about),
      ...toDo(about),
      ...gasToAdd(about),
      ...filling(about),
      ...safety(about),
      ...readings(about),
      ...instruments(about),
      ...remarks(about),
      ...signatures(about),
      ...provenance(about),
      ...(working === 'left out' ? [] : workings(about, working)),
    ] satisfies readonly Block[],
  };
}

const HOW: Take<RoundDocumentGiven['working']> = /* @__PURE__ */ oneOf('answer', 'steps', 'everything', 'left out');

/** The report, read once. */
function ownReport(report: unknown): RoundReport {
  if (typeof report !== 'object' || report === null) fail(notAReport, 'report', quote(report));
  return under('report', () => neededReport(report));
}

/** The report in the words of the language, where its round gives it again; what says who made it stays. */
function inWords(report: RoundReport, { outcome }: Reverified, { words }: Language): RoundReport {
  if (outcome !== 'same') return report;
  const said = reportRound(report.input, { problems: 'report the rest', words });
  const { libraryVersion, models, digest } = report;
  return { ...said, libraryVersion, models, digest };
}
