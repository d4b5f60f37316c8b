// What a relation costs that nobody watches: the same arithmetic with and without it. The step functions are no part of the
// public interface, so they are taken from the sources.
import { buildSync } from 'esbuild';
import { fileURLToPath } from 'node:url';

/** @import { Subject } from './measure.mjs' */

const { outputFiles } = buildSync({
  stdin: {
    contents: `export { step2 } from './src/basis/relation.js'; export { TO_ABSOLUTE, TO_GAUGE } from './src/quantity/pressure.js';`,
    resolveDir: fileURLToPath(new URL('..', import.meta.url)),
  },
  bundle: true,
  format: 'esm',
  write: false,
});
const code = Buffer.from(outputFiles[0]?.contents ?? new Uint8Array()).toString('base64');
/** @type {unknown} */
const bundled = await import(`data:text/javascript;base64,${code}`);
const { step2, TO_ABSOLUTE, TO_GAUGE } =
  /** @type {typeof import('../src/basis/relation.js') & typeof import('../src/quantity/pressure.js')} */ (bundled);

const AMBIENT = 101_325;
/** How many relations a call computes: enough that the call itself hardly counts. */
const EACH = 64;

/** @param {number} i */
function watchedByNobody(i) {
  let p = i;
  for (let k = 0; k < EACH / 2; k += 1) {
    p = step2(undefined, TO_ABSOLUTE, 'benchmark', p, AMBIENT + k);
    p = step2(undefined, TO_GAUGE, 'benchmark', p, AMBIENT);
  }
  return p;
}

/** @param {number} i */
function arithmeticAlone(i) {
  let p = i;
  for (let k = 0; k < EACH / 2; k += 1) {
    p = p + (AMBIENT + k);
    p = p - AMBIENT;
  }
  return p;
}

/** @type {readonly Subject[]} */
export const RELATIONS = [
  { name: 'a sum', call: arithmeticAlone, each: EACH },
  { name: 'a sum as a relation, without a trace', call: watchedByNobody, each: EACH },
];

/** Bytes that a relation without a trace allocates. */
export function allocated() {
  for (let i = 0; i < 20_000; i += 1) watchedByNobody(i);
  const calls = 100_000;
  const before = process.memoryUsage().heapUsed;
  for (let i = 0; i < calls; i += 1) watchedByNobody(i);
  return (process.memoryUsage().heapUsed - before) / (calls * EACH);
}
