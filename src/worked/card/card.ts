import { USUAL, type CautionCode } from '../../basis/caution.js';
import { densityUncertainty } from '../../gas/state.js';
import { TO_ABSOLUTE } from '../../quantity/pressure.js';
import { needDivision, write, type Division } from '../../quantity/step.js';
import type { VolumeUnit } from '../../quantity/unit.js';
import { LIBRARY_VERSION } from '../../record/version.js';
import type { Specification } from '../../target/specification.js';
import {
  adjustmentTable,
  type AdjustmentRow,
  type AdjustmentTable,
  type AdjustmentTableGiven,
} from '../../verdict/adjustment.js';
import type { Block, Line, WorkedDocument } from '../document/block.js';
import { cautionNotices } from '../document/cautions.js';
import { given as othersText } from '../document/given.js';
import { joined, lineOf, sayIn, type Say } from '../document/line.js';
import { fieldsOf, refuse, taken, text, word } from '../door.js';
import { neededLanguage } from '../languages/format.js';
import type { Language } from '../languages/language.js';
import { validity } from './validity.js';

/** What an adjustment card shows: the table, whose it is, and in which language. Nothing has a default. */
export interface CardGiven extends AdjustmentTableGiven {
  /** Which accumulators it is for, in the words of whoever keeps them. */
  readonly name: string;
  /** Where the specification stands: manual, edition, page. Empty where nobody has said so; it is then left out. */
  readonly manual: string;
  /** To what the gas volume is written. */
  readonly volumeStep: Division<VolumeUnit>;
  readonly language: Language;
}

/**
 * The adjustment card of a specification: one page to hang beside the accumulators, with target and limits against
 * temperature, what they hold for, the cautions, and where they come from. The numbers are those of
 * {@link adjustmentTable}: the target to the nearest mark of the gauge, the limits inwards. Where the target lies above the
 * allowable pressure, that is said in place of the numbers.
 *
 * Write it with {@link documentHtml}, {@link documentMarkdown}, {@link documentLatex} or {@link documentText}.
 *
 * @throws {@link Fault} as {@link adjustmentTable}; `wrong kind` for a name, a manual or a language that is none; `unknown
 * unit`, `not a step` for a volume step that is none
 * @example
 * ```ts
 * const page = card(spec, {
 *   name: 'exhaust valve drive',
 *   manual: 'instruction book, chapter 7',
 *   from: temperature(0, '°C'),
 *   to: temperature(50, '°C'),
 *   every: temperatureDifference(10, 'K'),
 *   temperatureStep: { step: 1, unit: '°C' },
 *   ambient: standardAtmosphere,
 *   gaugeStep: { step: 1, unit: 'bar' },
 *   volumeStep: { step: 0.1, unit: 'L' },
 *   language: english,
 * });
 * documentMarkdown(page).includes('| 40 | 153 | 151 | 154 |'); // => true
 * ```
 */
export function card(spec: Specification, given: CardGiven): WorkedDocument {
  const own = readOnce(given); // what is checked is what is used
  const table = adjustmentTable(spec, own);
  const { name, manual } = taken(fieldsOf('a card', { name: word, manual: text }), own, 'given');
  const language = neededLanguage(own.language);
  const say = sayIn(language);
  const words = language.document.card;
  const gaugeStep = { step: own.gaugeStep.step, unit: table.pressureUnit };
  const perGauge = `${table.pressureUnit} ${language.numbers.basis.gauge}`;
  const tooMuch = table.rows.filter(({ target }) => target.pascals > spec.allowable.pascals);
  return {
    language: language.code,
    title: lineOf(words.titled, { name: [othersText(name)] }),
    blocks: [
      {
        kind: 'paragraph',
        text: lineOf(words.use, { minutes: say(String(spec.settling.minutes)) }),
      },
      { kind: 'heading', level: 1, text: words.tableHeading },
      {
        kind: 'paragraph',
        text: lineOf(words.ambient, {
          unit: table.pressureUnit,
          ambient: say(write(table.ambient, { step: 0.01, unit: 'hPa' })),
          step: say(`${gaugeStep.step} ${gaugeStep.unit}`),
        }),
      },
      {
        kind: 'table',
        columns: [
          { heading: lineOf(words.temperature, { unit: table.temperatureUnit }), align: 'right' },
          ...[words.target, words.lower, words.upper].map((heading) => ({
            heading: lineOf(heading, { unit: perGauge }),
            align: 'right' as const,
          })),
        ],
        rows: table.rows.map((row) => cells(row, tooMuch.includes(row), language, say)),
      },
      ...beyond(table.rows, language, say),
      { kind: 'heading', level: 1, text: words.validityHeading },
      { kind: 'list', marks: 'plain', items: validity(spec, gaugeStep, own.temperatureStep, own.volumeStep, language) },
      { kind: 'heading', level: 1, text: words.cautionsHeading },
      ...cautionNotices(cautionsOf(spec, table), language),
      { kind: 'heading', level: 1, text: words.provenanceHeading },
      { kind: 'list', marks: 'plain', items: provenance(spec, manual, language) },
    ],
  };
}

function readOnce(given: CardGiven): CardGiven {
  // A text has as many fields as it has characters.
  if (typeof given !== 'object') return refuse('a card', given, 'given');
  const own = { ...given };
  return {
    ...own,
    temperatureStep: needDivision(own.temperatureStep, 'temperatureStep'),
    gaugeStep: needDivision(own.gaugeStep, 'gaugeStep'),
    volumeStep: needDivision(own.volumeStep, 'volumeStep'),
  };
}

function cells({ written }: AdjustmentRow, isTooMuch: boolean, { document }: Language, say: Say): readonly Line[] {
  const { noMark, tooHigh } = document.card;
  const limit = (text: string): string => (text === 'no mark' ? noMark : say(text));
  if (isTooMuch) return [say(written.temperature), [{ kind: 'strong', text: tooHigh }], '–', '–'];
  return [say(written.temperature), say(written.target), limit(written.lower), limit(written.upper)];
}

/** Rows for which the maker's table itself says nothing. */
function beyond(rows: readonly AdjustmentRow[], { document }: Language, say: Say): readonly Block[] {
  const own = rows.filter(({ targetFrom }) => targetFrom.by === 'constant density from the nearest row');
  if (own.length === 0) return [];
  const said = joined(
    own.map(({ written }) => say(written.temperature)),
    '; ',
  );
  return [{ kind: 'paragraph', text: lineOf(document.card.beyondTable, { rows: said }) }];
}

/** What belongs to this card first, then the usual cautions of the work. */
function cautionsOf(spec: Specification, { rows, ambient }: AdjustmentTable): readonly CautionCode[] {
  const isUncertain = rows.some(({ temperature, target }) => {
    const p_abs = TO_ABSOLUTE.of(target.pascals, ambient.pascals);
    return densityUncertainty(spec.gas, temperature.kelvins, p_abs) === 'not stated by the source';
  });
  return [
    ...(rows.some(({ target }) => target.pascals > spec.allowable.pascals)
      ? (['target above the allowable pressure'] as const)
      : []),
    ...(spec.disagreements.length > 0 ? (['table and nominal point disagree'] as const) : []),
    ...(isUncertain ? (['model uncertainty not stated'] as const) : []),
    ...USUAL,
  ];
}

function provenance({ gas }: Specification, manual: string, { document }: Language): readonly Line[] {
  const { citation, doi } = gas.source;
  return [
    ...(manual === '' ? [] : [lineOf(document.card.manual, { source: [othersText(manual)] })]),
    lineOf(document.model, { model: gas.id, citation: doi === undefined ? citation : `${citation}; doi:${doi}` }),
    lineOf(document.provenance, { version: LIBRARY_VERSION }),
  ];
}
