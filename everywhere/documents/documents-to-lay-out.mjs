// Writes documents that are hard to lay out: the fullest card, and reports and workings with names as long as they may be
// and in scripts of all kinds. All of it is invented. Prints the names of the files; those of cards begin with `card`.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { argv } from 'node:process';
import {
  check,
  cubicNitrogen,
  gauge,
  nitrogen,
  pressureDifference,
  specification,
  standardAtmosphere,
  temperature,
  temperatureDifference,
  volume,
} from 'isochore';
import { reportRound } from 'isochore/record';
import { card, derivationDocument, derivationOf, documentHtml, english, german, roundDocument } from 'isochore/worked';

/** @import { Round } from 'isochore/record' */
/** @import { WorkedDocument } from 'isochore/worked' */

/** As long as the record lets a name and a remark be; a title of a working may be longer. */
const [NAME, REMARK, TITLE] = [200, 2000, 300];

const SCRIPTS = {
  words: 'accumulator of the exhaust valve drive at the fore end, ',
  code: 'EXH-VLV-ACCU_0123456789/',
  'one word': 'Hydraulikdruckspeicheranschlussventil',
  arabic: 'مجمع ضغط صمام العادم في مقدمة المحرك ',
  'hebrew, one word': 'מצברהלחץשלשסתוםהפליטה',
  japanese: '排気弁駆動用蓄圧器',
};

const bar = (/** @type {number} */ value) => gauge(value, 'bar');
const celsius = (/** @type {number} */ value) => temperature(value, '°C');

const given = /** @type {const} */ ({
  gas: nitrogen,
  ambient: standardAtmosphere,
  tolerance: { plusMinus: pressureDifference(2, 'bar'), applies: 'at the reference temperature' },
  separator: 'diaphragm',
  gasVolume: volume(5, 'L'),
  allowable: bar(160),
  settling: { allowance: pressureDifference(1.5, 'bar'), minutes: 5 },
});
const point = { pressure: bar(140), temperature: celsius(20) };

/**
 * A name of exactly so many letters.
 *
 * @param {string} words
 * @param {number} length
 * @param {string | number} end
 */
function long(words, length, end = '') {
  const letters = length - String(end).length;
  return words.repeat(Math.ceil(length / words.length)).slice(0, letters) + String(end);
}

/** Every caution, every line that a card may have, and 21 rows: from -20 °C to 80 °C every 5 K. @param {typeof english} language */
function fullestCard(language) {
  const rows = Array.from({ length: 17 }, (_, i) => ({ temperature: celsius(5 * i - 20), pressure: bar(111 + 3 * i) }));
  const spec = specification({
    ...given,
    gas: cubicNitrogen,
    precharge: {
      rows,
      referenceTemperature: celsius(20),
      printedStep: pressureDifference(1, 'bar'),
      outside: 'follow constant density',
    },
    nominal: point,
  });
  return card(spec, {
    name: long('exhaust valve drive of the main engine, cylinders 1 to 8, ', 120),
    manual: long('instruction book of an invented engine, volume 2, chapter 7, ', 120),
    from: celsius(-20),
    to: celsius(80),
    every: temperatureDifference(5, 'K'),
    temperatureStep: { step: 1, unit: '°C' },
    ambient: standardAtmosphere,
    gaugeStep: { step: 0.5, unit: 'bar' },
    volumeStep: { step: 0.1, unit: 'L' },
    language,
  });
}

/** The round of the demo, with such a name wherever a round has one. @param {string} words @param {Round} round */
function renamed(words, round) {
  const name = (/** @type {string | number} */ end) => long(words, NAME, end);
  const groups = round.groups.map((group, g) => ({
    ...group,
    name: name(`g${g}`),
    remarks: long(words, REMARK),
    accumulators: group.accumulators.map((one, i) => ({
      ...one,
      name: name(i),
      unitServed: name(i),
      readBy: name('r'),
      verifiedBy: name('v'),
      remarks: long(words, REMARK),
      deviationPermit: name(''),
      partsRenewed: [name('')],
    })),
  }));
  // Names by which one part of a round refers to another.
  const text = ['gauge A', 'gauge B', 'thermometer 1', 'exhaust valve drive', 'fuel injection drive', 'N2-1'].reduce(
    (all, old) => all.replaceAll(`"${old}"`, JSON.stringify(name(old))),
    JSON.stringify({ ...round, title: name(''), groups }),
  );
  return /** @type {unknown} */ (JSON.parse(text));
}

/** The working of a check, under such a name. @param {string} words */
function working(words) {
  const reading = /** @type {const} */ ({
    pressure: bar(143),
    temperature: celsius(40),
    ambient: standardAtmosphere,
    gaugeStep: { step: 1, unit: 'bar' },
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 30,
  });
  const spec = specification({ ...given, precharge: point });
  const derivation = derivationOf({ spec, reading }, (own, trace) => check(own.spec, own.reading, trace));
  const units = /** @type {const} */ ({ pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' });
  return derivationDocument(derivation, long(words, TITLE), { language: english, units, detail: 'everything' });
}

const [folder = '.'] = argv.slice(2);
/** @type {unknown} */
const json = JSON.parse(readFileSync('round.json', 'utf8'));
const round = /** @type {Round} */ (json);
/** @type {Record<string, () => WorkedDocument>} */
const documents = {};
for (const language of [english, german]) {
  documents[`card, fullest, ${language.code}`] = () => fullestCard(language);
  for (const [script, words] of Object.entries(SCRIPTS)) {
    documents[`round, ${script}, ${language.code}`] = () =>
      roundDocument(reportRound(renamed(words, round), { problems: 'refuse the round' }), {
        language,
        working: language === english ? 'answer' : 'left out',
      });
  }
}
for (const [script, words] of Object.entries(SCRIPTS)) documents[`working, ${script}`] = () => working(words);

mkdirSync(folder, { recursive: true });
for (const [name, make] of Object.entries(documents)) {
  writeFileSync(join(folder, `${name}.html`), documentHtml(make()));
}
