// Cautions as notices: the words of the language, the worst first.
import { caution, type CautionCode, type Severity } from '../../basis/caution.js';
import type { Language } from '../languages/language.js';
import type { Line, Notice } from './block.js';
import { joined } from './line.js';

const WORST_FIRST: readonly Severity[] = ['danger', 'caution', 'note'];

/** Cautions by their codes, each once; `where` says at what, in front of the text. */
export function cautionNotices(
  codes: readonly CautionCode[],
  { words, severities }: Language,
  where?: (code: CautionCode) => Line | undefined,
): readonly Notice[] {
  const cautions = [...new Set(codes)].map((code) => caution(code, words.cautions));
  // Sorting is stable: within one severity they keep their order.
  cautions.sort((a, b) => WORST_FIRST.indexOf(a.severity) - WORST_FIRST.indexOf(b.severity));
  return cautions.map(({ code, severity, text }) => {
    const at = where?.(code);
    return {
      kind: 'notice',
      severity,
      label: severities[severity],
      text: at === undefined ? text : joined([at, text], ' '),
    };
  });
}
