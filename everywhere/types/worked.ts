// What a user of the documents writes.
import type { Specification } from 'isochore';
import type { RoundReport } from 'isochore/record';
import {
  documentHtml,
  documentMarkdown,
  german,
  roundDocument,
  type CardGiven,
  type Language,
  type WorkedDocument,
} from 'isochore/worked';
import * as worked from 'isochore/worked';

export function pageOf(report: RoundReport): string {
  return documentHtml(roundDocument(report, { language: german, working: 'steps' }));
}

export function cardOf(spec: Specification, given: CardGiven): string {
  return documentMarkdown(worked.card(spec, given));
}

export const shouting = (language: Language): Language => ({
  ...language,
  severities: { danger: 'DANGER', caution: 'CAUTION', note: 'NOTE' },
});

export const own: WorkedDocument = {
  language: 'en',
  title: ['Gauge of ', { kind: 'given', text: 'someone' }],
  blocks: [{ kind: 'paragraph', text: 'Words.' }],
};

// @ts-expect-error Whether the working is wanted is not said.
export const undecided = (report: RoundReport): WorkedDocument => roundDocument(report, { language: german });
