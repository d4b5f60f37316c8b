// What an engine answers: the results as lines of text, and how its Math functions round.
import { coreResults, recordResults, workedResults } from './results.mjs';

/** @import * as Core from 'isochore' */
/** @import * as Record from 'isochore/record' */
/** @import * as Worked from 'isochore/worked' */

/**
 * @typedef {object} Answer
 * @property {readonly string[]} lines a name and its value, parted by a tab
 * @property {number} ofCore how many of the lines there are without the record
 * @property {Readonly<Record<string, readonly string[]>>} sweeps many values of one thing, by its name, as their bits
 * @property {string} report the report on the round, as JSON text; empty without the record
 * @property {string} judgedAgain what a report made elsewhere gives here; empty if there is none
 */

/** The bits of a double, as 16 hexadecimal digits. @param {number} x */
function bitsOf(x) {
  const view = new DataView(new ArrayBuffer(8));
  view.setFloat64(0, x);
  return view.getBigUint64(0).toString(16).padStart(16, '0');
}

/** FNV-1a, 64 bits: enough to tell two lists of values apart. @param {readonly string[]} texts */
function hashOf(texts) {
  let hash = 0xcbf29ce484222325n;
  for (const letter of texts.join(' ')) {
    hash = BigInt.asUintN(64, (hash ^ BigInt(letter.charCodeAt(0))) * 0x100000001b3n);
  }
  return hash.toString(16).padStart(16, '0');
}

/** @param {number} from @param {number} to @param {number} count @param {(x: number) => number} of */
const sweep = (from, to, count, of) =>
  Array.from({ length: count }, (_, i) => bitsOf(of(from + ((to - from) * i) / count)));

/**
 * How the engine rounds where the language leaves the last place open. The library calls neither: it has an exponential and a
 * logarithm of its own (gas/elementary.ts).
 */
const MATH = {
  'Math.exp': sweep(-60, 3, 2000, (x) => Math.exp(x)),
  'Math.log': sweep(0.001, 50, 2000, (x) => Math.log(x)),
};

/**
 * The same over the range of accumulators: densities, and readings referred to 20 °C. @param {typeof Core} core
 * @returns {Readonly<Record<string, readonly string[]>>}
 */
function sweepsOf({ nitrogen, referred, specification, stateAt, ...core }) {
  const { absolute, gauge, pressureDifference, standardAtmosphere, temperature, volume } = core;
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
  const shell = (/** @type {number} */ bar) => temperature(-30 + ((bar * 370) % 110), '°C');
  return {
    density: sweep(20, 420, 2000, (bar) => {
      const given = { temperature: shell(bar), pressure: absolute(bar, 'bar') };
      return stateAt(nitrogen, given).density_mol_m3;
    }),
    'referred reading': sweep(60, 260, 2000, (bar) => {
      const read = { temperature: shell(bar), pressure: gauge(bar, 'bar'), ambient: standardAtmosphere };
      return referred(spec, read).pascals;
    }),
  };
}

/**
 * @param {typeof Core} core
 * @param {{ readonly record: typeof Record, readonly worked: typeof Worked }} [rest] of the library
 * @param {string} [round] a round of checks, as JSON text
 * @param {string} [elsewhere] a report on it, made by another engine
 * @returns {Answer}
 */
export function answerOf(core, rest, round = '', elsewhere = '') {
  const { record, worked } = rest ?? {};
  const ofCore = coreResults(core);
  const ofRecord = record === undefined ? [] : recordResults(record, round);
  const ofWorked = record === undefined || worked === undefined ? [] : workedResults(core, worked, record, round);
  const results = [...ofCore, ...ofRecord, ...ofWorked];
  const again = record === undefined || elsewhere === '' ? undefined : record.reverify(JSON.parse(elsewhere));
  return {
    lines: [
      ...Object.entries(MATH).map(([name, values]) => `${name} of ${values.length} arguments\t"${hashOf(values)}"`),
      ...results.map(({ name, value }) =>
        typeof value === 'number' ? `${name}\t${bitsOf(value)} ${value}` : `${name}\t${JSON.stringify(value)}`,
      ),
    ],
    ofCore: Object.keys(MATH).length + ofCore.length,
    sweeps: { ...MATH, ...sweepsOf(core) },
    report: record === undefined ? '' : JSON.stringify(record.reportRoundText(round, { problems: 'report the rest' })),
    judgedAgain: again === undefined ? '' : `${again.outcome}, ${again.changesFound} places differ`,
  };
}
