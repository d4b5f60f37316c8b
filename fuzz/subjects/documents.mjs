// Documents: cards, reports of rounds, and what a caller makes himself.
import { isFault } from 'isochore';
import { documentHtml, documentLatex, documentMarkdown, documentText } from 'isochore/worked';
import fc from 'fast-check';
import { anyText, call, fields, listOf, maybe, one, plain, steps, stock } from '../draw.mjs';
import { ambient, pressureStep } from './quantity.mjs';
import { report } from './record.mjs';
import { spec } from './target.mjs';

/** @import { Arbitrary } from 'fast-check' */
/** @import { WorkedDocument } from 'isochore/worked' */
/** @import { Recipe } from '../recipe.mjs' */
/** @import { Holds, Subject } from './subject.mjs' */

const text = plain(anyText);
const name = one('p_abs', 'rho', 'dp_off', 'T_1', 'x');
/** @type {Arbitrary<Recipe>} */
const leaf = fc.oneof(
  fields({ kind: one('number'), text: one('1', '-2.5', '14 101 325', '1,5'), unit: maybe(one('bar', 'mol/m3', '°C')) }),
  fields({ kind: one('symbol'), name }),
);
const expression = fc.oneof(
  leaf,
  fields({ kind: one('operation'), operator: one('+', '−', '×', '÷', 'power'), left: leaf, right: leaf }),
  fields({ kind: one('minus'), of: leaf }),
  fields({ kind: one('call'), name: one('sqrt', 'exp', 'p'), of: listOf(leaf, 1, 2) }),
);
const piece = fc.oneof(
  text,
  fields({ kind: one('given', 'strong'), text }),
  fields({ kind: one('formula'), expression }),
);
const line = fc.oneof(text, listOf(piece, 0, 3));
const saying = listOf(fc.oneof(one('Words '), piece), 1, 3);
const cells = fc.tuple(line, line).map((of) => /** @type {Recipe} */ ({ t: 'list', of }));
const column = fields({ heading: line, align: one('left', 'right') });
const block = fc.oneof(
  fields({ kind: one('heading'), level: one(1, 2, 3), text: saying }),
  fields({ kind: one('paragraph'), text: line }),
  fields({ kind: one('list'), marks: one('numbered', 'plain'), items: listOf(line, 1, 3) }),
  fields({ kind: one('table'), caption: maybe(line), columns: listOf(column, 2, 2), rows: listOf(cells, 0, 3) }),
  fields({ kind: one('equation'), sides: listOf(expression, 1, 3), unit: maybe(one('bar')), source: maybe(line) }),
  fields({ kind: one('notice'), severity: one('danger', 'note'), label: one('Danger'), text: line }),
  fields({ kind: one('signatures'), who: listOf(line, 1, 2), fields: listOf(line, 1, 2) }),
  fields({ kind: one('page break') }),
);
const document = fields({ language: one('en', 'de-AT'), title: saying, blocks: listOf(block, 0, 4) });
export const language = fc.constantFrom(stock('english'), stock('german'));

/** @type {Holds} */
const isPage = (answer) => (typeof answer === 'string' && answer.endsWith('\n') ? undefined : 'no page');

/** @type {Holds} */
const isMarkup = (answer, args) => {
  if (typeof answer === 'string' && /<script|<[^>]*\son\w+=/i.test(answer)) return 'a page with a script';
  return isPage(answer, args);
};

/** Every format takes what the library made. @type {Holds} */
export const isDocument = (answer) => {
  const own = /** @type {WorkedDocument} */ (answer);
  try {
    for (const write of [documentHtml, documentLatex, documentMarkdown]) write(own);
    documentText(own, { width: 100 });
    return undefined;
  } catch (error) {
    return isFault(error) ? `a document that is refused: ${error.message}` : 'a document that no format takes';
  }
};

const cardGiven = fields({
  name: plain(anyText.map((name) => `A${name}`)),
  manual: text,
  from: call('temperature', plain(steps(-20, 20, 1)), one('°C')),
  to: call('temperature', plain(steps(20, 60, 1)), one('°C')),
  every: call('temperatureDifference', plain(steps(5, 30)), one('K')),
  temperatureStep: fields({ step: one(1, 0.1), unit: one('°C', 'K', '°F') }),
  ambient,
  gaugeStep: pressureStep,
  volumeStep: fields({ step: one(0.1, 1), unit: one('L', 'm3', 'US gal') }),
  language,
});

/** @type {readonly Subject[]} */
export const DOCUMENTS = [
  { name: 'documentHtml', args: fc.tuple(document), holds: isMarkup },
  { name: 'documentMarkdown', args: fc.tuple(document), holds: isPage },
  { name: 'documentLatex', args: fc.tuple(document), holds: isPage },
  {
    name: 'documentText',
    args: fc.tuple(document, fields({ width: one(40, 80, 1000) })),
    holds: isPage,
  },
  { name: 'card', args: fc.tuple(spec, cardGiven), holds: isDocument, echoes: true },
  {
    name: 'roundDocument',
    args: fc.tuple(report, fields({ language, working: one('left out', 'left out', 'left out', 'answer', 'steps') })),
    holds: isDocument,
    echoes: true,
    weight: 0.1,
  },
];
