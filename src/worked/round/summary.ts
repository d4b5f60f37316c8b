// The head of the document, and its end: what came of the round, what was wrong in it, who judged.
import { LIBRARY_VERSION } from '../../record/version.js';
import type { Block, Line } from '../document/block.js';
import { given } from '../document/given.js';
import { joined, lineOf } from '../document/line.js';
import { percent, type About } from './about.js';

export function summary(about: About): readonly Block[] {
  const { report, language } = about;
  const { severities, document } = language;
  const words = document.round;
  const { complete, accumulators, notJudged, counts } = report;
  const found = Object.entries(counts).map(
    ([outcome, count]) => `${count} ${document.outcomes[outcome as keyof typeof counts]}`,
  );
  const doubt: Block[] = isDoubtful(about)
    ? [
        {
          kind: 'notice',
          severity: 'danger',
          label: severities.danger,
          text: lineOf(words.notAgain, { because: because(about) }),
        },
      ]
    : [];
  const partial: Block[] =
    complete === 'complete'
      ? [{ kind: 'paragraph', text: words.complete }]
      : [
          {
            kind: 'notice',
            severity: 'danger',
            label: severities.danger,
            text: [{ kind: 'strong', text: words.partial }],
          },
        ];
  const judged = lineOf(words.judged, { judged: String(accumulators.length), notJudged: String(notJudged.length) });
  return [
    ...doubt,
    { kind: 'heading', level: 1, text: words.summaryHeading },
    ...partial,
    {
      kind: 'paragraph',
      text: found.length === 0 ? judged : joined([judged, lineOf(words.found, { counts: found.join(', ') })], ' '),
    },
    ...rule(about),
  ];
}

/** Whether the report is not what its round gives; that it carries no round is no doubt of it. */
function isDoubtful({ again }: About): boolean {
  return again.outcome !== 'same' && !(again.outcome === 'cannot be judged again' && again.because.length === 1);
}

function because({ again, language }: About): string {
  return again.because.map((code) => language.document.because[code]).join('; ');
}

function rule(about: About): readonly Block[] {
  const { rule, decisions = {} } = about.report;
  if (rule === undefined) return [];
  const { acceptances, decisions: names, round } = about.language.document;
  const decided = Object.entries(decisions).map(
    ([outcome, count]) => `${count} ${names[outcome as keyof typeof names]}`,
  );
  const { acceptance, risk } = rule;
  const text = lineOf(round.rule, {
    rule: acceptances[acceptance],
    below: percent(risk.below, about),
    above: percent(risk.above, about),
    counts: decided.length === 0 ? round.nothingFound : decided.join(', '),
  });
  return [{ kind: 'paragraph', text }];
}

/** What was wrong in the document, and what could not be judged because of it. */
export function problems({ report, language }: About): readonly Block[] {
  const { problems, problemsFound, notJudged } = report;
  if (problemsFound === 0 && notJudged.length === 0) return [];
  const words = language.document.round;
  const more = problemsFound - problems.length;
  const listed = problems.map(({ path, about: whose, found, wanted, remedy }): Line => {
    const where = whose === undefined ? [given(path)] : [given(path), ' (', given(whose), ')'];
    return lineOf(words.problem, {
      path: where,
      found: [given(found)],
      wanted: [given(wanted)],
      remedy: [given(remedy)],
    });
  });
  const not = notJudged.map(({ group, name, path }): Line => {
    const names = [group, name].flatMap((one) => (one === undefined ? [] : [[given(one)]]));
    return lineOf(words.notJudged, { name: joined(names, ' / '), path: [given(path)] });
  });
  const items = [...listed, ...(more > 0 ? [lineOf(words.more, { count: String(more) })] : []), ...not];
  return [
    { kind: 'heading', level: 1, text: lineOf(words.problemsHeading, { count: String(problemsFound) }) },
    ...(items.length === 0 ? [] : [{ kind: 'list', marks: 'plain', items } as const]),
  ];
}

/** The models, who judged, and whether it holds. */
export function provenance(about: About): readonly Block[] {
  const { report, language, again } = about;
  const { document } = language;
  const words = document.round;
  const items: Line[] = [
    ...report.models.map(({ id, citation, doi }) =>
      lineOf(document.model, {
        model: [given(id)],
        citation: [given(doi === undefined ? citation : `${citation}; doi:${doi}`)],
      }),
    ),
    lineOf(words.judgedBy, { version: [given(report.libraryVersion)], report: String(report.version) }),
    lineOf(words.digest, { digest: report.digest }),
    ...(again.outcome === 'same' ? [lineOf(words.judgedAgain, { version: LIBRARY_VERSION })] : []),
    ...(again.because.includes('no input') ? [words.noWorking] : []),
  ];
  return [
    { kind: 'heading', level: 1, text: words.provenanceHeading },
    { kind: 'list', marks: 'plain', items },
  ];
}
