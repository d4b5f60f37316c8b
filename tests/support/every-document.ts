// Every kind of document that the library makes, in a language: what must hold of all of them is tested of these.
import { assess, check, idealNitrogen, nitrogen, type GasModel } from 'isochore';
import {
  card,
  comparisonDocument,
  derivationDocument,
  derivationOf,
  exerciseKey,
  exercises,
  exerciseSheet,
  roundDocument,
  type Derivation,
  type Detail,
  type ExerciseTopic,
  type Language,
  type Reader,
  type WorkedDocument,
} from 'isochore/worked';
import { bar, readingWith, specOf, specWith } from './accumulator.js';
import { cardGiven } from './card.js';
import { INSTRUMENTS } from './instruments.js';
import { exampleRound, reportRest } from './round.js';

const TOPICS: readonly ExerciseTopic[] = [
  'target',
  'gas to add',
  'gas held',
  'not drained',
  'cold after draining',
  'unit slip',
  'shifted gauge',
  'torn separator',
];

const reading = readingWith({ pressure: bar(143) });
const checkedBy = (gas: GasModel): Derivation =>
  derivationOf({ spec: specOf(140, 20, { gas }), reading }, (g, trace) => check(g.spec, g.reading, trace));
const assessed = (): Derivation =>
  derivationOf({ spec: specWith(), reading, instruments: INSTRUMENTS }, (g, trace) =>
    assess(
      g.spec,
      g.reading,
      g.instruments,
      { acceptance: 'guarded acceptance', risk: { below: 0.02, above: 0.05 } },
      trace,
    ),
  );

const DETAILS: readonly Detail[] = ['answer', 'steps', 'everything'];

/** By name, each made when it is asked for. The working of a round is that of an accumulator to fill and one to bleed. */
export function everyDocument(language: Language): readonly (readonly [name: string, make: () => WorkedDocument])[] {
  const units = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
  const reader = (detail: Detail): Reader => ({ language, units, detail });
  const some = () => exercises({ seed: 12, count: TOPICS.length, topics: TOPICS, gas: nitrogen });
  const round = exampleRound();
  const [group] = round.groups;
  const small = {
    ...round,
    groups: group === undefined ? [] : [{ ...group, accumulators: group.accumulators.slice(1, 3) }],
  };
  return [
    ['card', () => card(specWith(), cardGiven(language))],
    ...DETAILS.flatMap((detail) => [
      [
        `derivation of a check, ${detail}`,
        () => derivationDocument(checkedBy(nitrogen), 'EV 1', reader(detail)),
      ] as const,
      [`derivation with instruments, ${detail}`, () => derivationDocument(assessed(), 'EV 1', reader(detail))] as const,
      [
        `comparison, ${detail}`,
        () => comparisonDocument(checkedBy(nitrogen), checkedBy(idealNitrogen), 'EV 1', reader(detail)),
      ] as const,
    ]),
    ['exercise sheet', () => exerciseSheet(some(), 'Part 1', reader('steps'))],
    ['exercise key', () => exerciseKey(some(), 'Part 1', reader('steps'))],
    ['exercise key, answers alone', () => exerciseKey(some(), 'Part 1', reader('answer'))],
    ['round', () => roundDocument(reportRest(round), { language, working: 'left out' })],
    ['round with its working', () => roundDocument(reportRest(small), { language, working: 'steps' })],
  ];
}
