import { indexed } from '../../basis/indexed.js';
import { fail, quote } from '../../basis/fault.js';
import { tooShort, unknownWord, wrongKind } from '../../basis/problem.js';
import type { GasModel } from '../../gas/model.js';
import { needModel } from '../../gas/state.js';
import { generator, needWhole } from '../../verdict/monte-carlo.js';
import { arithmeticExercise } from './arithmetic.js';
import { diagnosisExercise } from './diagnosis.js';
import { drawBy } from './draw.js';
import type { Arithmetic, Exercise, ExerciseTopic } from './exercise.js';

/** What exercises are wanted. */
export interface ExercisesGiven {
  /** 0 to 4294967295; the same seed gives the same exercises. */
  readonly seed: number;
  /** 1 to 100. */
  readonly count: number;
  /** In turn; at least one. */
  readonly topics: readonly ExerciseTopic[];
  /** By which the right answers are worked, such as `nitrogen`. */
  readonly gas: GasModel;
}

const ARITHMETIC: readonly ExerciseTopic[] = ['target', 'gas to add', 'gas held'];
const DIAGNOSES: readonly ExerciseTopic[] = [
  'not drained',
  'cold after draining',
  'unit slip',
  'shifted gauge',
  'torn separator',
];
const MOST = 100;
const MOST_SEED = 4_294_967_295;

/**
 * Exercises with their answers, drawn from a seed. Those of arithmetic have wrong answers beside the right one, each worked
 * to by a mistake that people make: gauge taken for absolute, °C for K, ideal gas for real, the temperature left out of
 * account. Those of diagnosis show readings that look wrong, and ask what is behind them.
 *
 * The accumulators are invented. Answers stand apart by more than the rounding in which they are written.
 *
 * @throws {@link Fault} `wrong kind`, `unchecked copy` for the gas; `not a count` for seed and count; `unknown word` for a
 * topic, `too short` for none
 * @example
 * ```ts
 * const [one] = exercises({ seed: 7, count: 1, topics: ['target'], gas: nitrogen });
 * one?.topic; // => 'target'
 * one?.choices.length; // => 5
 * ```
 */
export function exercises(given: ExercisesGiven): readonly Exercise[] {
  if (typeof given !== 'object' || given === null)
    fail(wrongKind, 'given', quote(given), { kind: 'seed, count, topics and gas', maker: 'an object of them' });
  const { seed, count, topics: wanted, gas } = given;
  needModel(gas, 'given.gas');
  needWhole('given.seed', seed, 0, MOST_SEED);
  needWhole('given.count', count, 1, MOST);
  const topics = neededTopics(wanted);
  const draw = drawBy(generator(seed));
  return indexed(count, (i) => {
    const topic = topics[i % topics.length] as ExerciseTopic;
    return isArithmetic(topic) ? arithmeticExercise(topic, gas, draw) : diagnosisExercise(topic, gas, draw);
  });
}

function isArithmetic(topic: ExerciseTopic): topic is Arithmetic {
  return ARITHMETIC.includes(topic);
}

function neededTopics(wanted: readonly ExerciseTopic[]): readonly ExerciseTopic[] {
  if (!Array.isArray(wanted))
    fail(wrongKind, 'given.topics', quote(wanted), { kind: 'a list of topics', maker: 'a list' });
  const { length } = wanted;
  if (!(length > 0)) fail(tooShort, 'given.topics', 'an empty list', { least: '1', what: 'topic' });
  const known = [...ARITHMETIC, ...DIAGNOSES];
  // By index: the list may be one whose iterator never ends.
  return indexed(Math.min(length, MOST), (i) => {
    const topic = wanted[i] as ExerciseTopic;
    if (!known.includes(topic)) fail(unknownWord, `given.topics[${i}]`, quote(topic), { words: known.join(' or ') });
    return topic;
  });
}
