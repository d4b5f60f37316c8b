// Writes the round of the examples as documents, and the adjustment card of its first specification.
//
//   node examples/documents.mjs [folder] [--language=en | de]
//
// Without a folder it writes to the current one: round.html, round.md, card.html, card.md.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  gauge,
  nitrogen,
  pressureDifference,
  specification,
  standardAtmosphere,
  temperature,
  temperatureDifference,
  volume,
} from 'isochore';
import { reportRoundText } from 'isochore/record';
import { card, documentHtml, documentMarkdown, english, german, roundDocument } from 'isochore/worked';

const words = process.argv.slice(2);
const folders = words.filter((word) => !word.startsWith('--'));
const languages = words.filter((word) => word.startsWith('--'));
const language = { '--language=en': english, '--language=de': german }[languages[0] ?? '--language=en'];
if (folders.length > 1 || languages.length > 1 || language === undefined) {
  console.error('usage: documents.mjs [folder] [--language=en | de]');
  process.exit(2);
}

const text = readFileSync(new URL('round.json', import.meta.url), 'utf8');
const report = reportRoundText(text, { problems: 'report the rest', words: language.words });

// As the manual of this invented engine has it; the same as in the round.
const spec = specification({
  gas: nitrogen,
  precharge: { pressure: gauge(140, 'bar'), temperature: temperature(20, '°C') },
  ambient: standardAtmosphere,
  tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the measured temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: gauge(210, 'bar'),
  settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
});

const pages = {
  round: roundDocument(report, { language, working: 'steps' }),
  card: card(spec, {
    name: 'exhaust valve drive',
    manual: 'instruction book of an invented engine, chapter 7',
    from: temperature(0, '°C'),
    to: temperature(60, '°C'),
    every: temperatureDifference(5, 'K'),
    temperatureStep: { step: 1, unit: '°C' },
    ambient: standardAtmosphere,
    gaugeStep: { step: 1, unit: 'bar' },
    volumeStep: { step: 0.1, unit: 'L' },
    language,
  }),
};

const folder = folders[0] ?? '.';
mkdirSync(folder, { recursive: true });
for (const [name, page] of Object.entries(pages)) {
  writeFileSync(join(folder, `${name}.html`), documentHtml(page));
  writeFileSync(join(folder, `${name}.md`), documentMarkdown(page));
}
console.log(`${Object.keys(pages).length} documents, as HTML and Markdown, in ${folder}`);
