// Measures calls against Math.exp on the same machine in the same moment: the ratio of the two travels, nanoseconds do not.

/**
 * @typedef {object} Subject
 * @property {string} name
 * @property {(i: number) => number} call one call; the number keeps the engine from leaving it out
 * @property {number} [each] how many units one call counts for, such as the accumulators of a round
 */

/**
 * @typedef {object} Measured
 * @property {string} name
 * @property {number} ratio cost of one unit, in calls of Math.exp
 * @property {number} low lower quartile of the ratio
 * @property {number} high upper quartile of the ratio
 * @property {number} nanoseconds cost of one unit on this machine
 */

const SIZE = 1024;
const exponents = Float64Array.from({ length: SIZE }, (_, i) => -4 + (8 * i) / SIZE);
let sink = 0;

/** Nanoseconds that a piece of work takes. @param {() => number} work */
function timed(work) {
  const start = process.hrtime.bigint();
  sink += work();
  return Number(process.hrtime.bigint() - start);
}

/** Math.exp over the array, so many times. @param {number} rounds */
function exponentials(rounds) {
  let sum = 0;
  for (let round = 0; round < rounds; round += 1) {
    for (let i = 0; i < SIZE; i += 1) sum += Math.exp(exponents[i] ?? 0);
  }
  return sum;
}

/** @param {Subject['call']} call @param {number} calls */
function repeated(call, calls) {
  let sum = 0;
  for (let i = 0; i < calls; i += 1) sum += call(i % SIZE);
  return sum;
}

/**
 * How often a piece of work is to be done to take about so many nanoseconds: after a while of it, so that it is compiled,
 * and by the quickest of many, so that a pause of the machine is not taken for its cost.
 *
 * @param {(times: number) => number} work
 * @param {number} wanted
 */
function timesFor(work, wanted) {
  let quickest = Infinity;
  for (let spent = 0; spent < 40 * wanted;) {
    const taken = timed(() => work(16));
    quickest = Math.min(quickest, taken / 16);
    spent += taken;
  }
  return Math.max(1, Math.round(wanted / quickest));
}

/** @param {readonly number[]} sorted @param {number} share */
const quantile = (sorted, share) => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;

/** @param {readonly number[]} values */
const inOrder = (values) => [...values].sort((a, b) => a - b);

/**
 * Runs subject and exponentials in turns; what slows one slows the other, so the ratio is taken within each turn and its
 * median over the turns.
 *
 * @param {Subject} subject
 * @param {{ readonly turns: number, readonly nanoseconds: number }} effort
 * @returns {Measured}
 */
export function measure({ name, call, each = 1 }, { turns, nanoseconds }) {
  const calls = timesFor((times) => repeated(call, times), nanoseconds);
  const rounds = timesFor(exponentials, nanoseconds);
  /** @type {number[]} */
  const ratios = [];
  /** @type {number[]} */
  const costs = [];
  for (let turn = 0; turn < turns; turn += 1) {
    const exponential = timed(() => exponentials(rounds)) / (rounds * SIZE);
    const cost = timed(() => repeated(call, calls)) / (calls * each);
    ratios.push(cost / exponential);
    costs.push(cost);
  }
  if (!Number.isFinite(sink)) throw new Error(`${name}: a call gave no number`);
  const sorted = inOrder(ratios);
  return {
    name,
    ratio: quantile(sorted, 0.5),
    low: quantile(sorted, 0.25),
    high: quantile(sorted, 0.75),
    nanoseconds: quantile(inOrder(costs), 0.5),
  };
}
