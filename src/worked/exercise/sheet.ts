// Exercises in print: the sheet to be worked, and the key to it.
import { indexed } from '../../basis/indexed.js';
import { fail, quote } from '../../basis/fault.js';
import { has } from '../../basis/has.js';
import { wrongKind } from '../../basis/problem.js';
import type { Mass, Quantity } from '../../quantity/kind.js';
import type { GaugePressure } from '../../quantity/kind.js';
import { rounded, valueIn } from '../../quantity/step.js';
import type { MassUnit, PressureUnit, TemperatureUnit, VolumeUnit } from '../../quantity/unit.js';
import { slips, slipText } from '../../verdict/slips.js';
import { why } from '../../verdict/why.js';
import type { Block, Line, WorkedDocument } from '../document/block.js';
import { lineOf } from '../document/line.js';
import { raised, toldSteps } from '../derivation/document.js';
import type { ReaderUnits } from '../derivation/figures.js';
import { neededReader, type Reader } from '../derivation/reader.js';
import { localised } from '../languages/format.js';
import type { ArithmeticExercise, DiagnosisExercise, Exercise, Fact, FactValue } from './exercise.js';

/**
 * Exercises as a sheet to be worked: what is stated, what is asked, and the answers to choose from.
 *
 * @param title other people's text: shown as it is, never as markup
 * @param reader `detail` does not matter to a sheet
 * @throws {@link Fault} `wrong kind` for what are no exercises made by `exercises`; for the reader as {@link derivationBlocks}
 * @example
 * ```ts
 * const made = exercises({ seed: 7, count: 2, topics: ['target', 'torn separator'], gas: nitrogen });
 * const units = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
 * const sheet = exerciseSheet(made, 'Pre-charge, part 1', { language: english, units, detail: 'answer' });
 * documentText(sheet, { width: 80 }).includes('Exercise 2'); // => true
 * ```
 */
export function exerciseSheet(exercises: readonly Exercise[], title: string, reader: Reader): WorkedDocument {
  return documentOf(exercises, title, reader, questionBlocks);
}

/**
 * The key to exercises: the right answer and how it is worked, each wrong one with the mistake that leads to it, and the
 * working of that too. At `answer` the workings are left out.
 *
 * @param title other people's text: shown as it is, never as markup
 * @throws {@link Fault} as {@link exerciseSheet}
 * @example
 * ```ts
 * const made = exercises({ seed: 7, count: 1, topics: ['target'], gas: nitrogen });
 * const units = { pressure: 'bar', temperature: '°C', volume: 'L', mass: 'kg' } as const;
 * const key = exerciseKey(made, 'Pre-charge, part 1', { language: english, units, detail: 'steps' });
 * documentText(key, { width: 80 }).includes('The mistake: degrees Celsius taken for kelvins.'); // => true
 * ```
 */
export function exerciseKey(exercises: readonly Exercise[], title: string, reader: Reader): WorkedDocument {
  return documentOf(exercises, title, reader, answerBlocks);
}

type Write = (exercise: Exercise, reader: Required<Reader>) => readonly Block[];

function documentOf(exercises: readonly Exercise[], title: string, reader: Reader, write: Write): WorkedDocument {
  const own = neededReader(reader);
  if (typeof title !== 'string') fail(wrongKind, 'title', quote(title), { kind: 'a text', maker: 'a title' });
  if (!Array.isArray(exercises)) fail(wrongKind, 'exercises', quote(exercises), ARE_EXERCISES);
  const words = own.language.exercise;
  return {
    language: own.language.code,
    title: [{ kind: 'given', text: title }],
    blocks: [
      ...indexed(exercises.length, (i) => needed((exercises as readonly Exercise[])[i], i)).flatMap((exercise, i) => [
        { kind: 'heading', level: 1, text: lineOf(words.heading, { number: String(i + 1) }) } as const,
        ...write(exercise, own),
      ]),
      { kind: 'paragraph', text: words.caution },
    ],
  };
}

const ARE_EXERCISES = { kind: 'exercises', maker: 'exercises' };

function needed(exercise: Exercise | undefined, i: number): Exercise {
  if (
    typeof exercise === 'object' &&
    exercise !== null &&
    Array.isArray(exercise.choices) &&
    Array.isArray(exercise.facts)
  )
    return exercise;
  return fail(wrongKind, `exercises[${i}]`, quote(exercise), ARE_EXERCISES);
}

function isDiagnosis(exercise: Exercise): exercise is DiagnosisExercise {
  return has(exercise, 'judged');
}

function questionBlocks(exercise: Exercise, reader: Required<Reader>): readonly Block[] {
  const words = reader.language.exercise;
  return [
    { kind: 'list', marks: 'plain', items: exercise.facts.map((fact) => factLine(fact, reader)) },
    { kind: 'paragraph', text: words.ask[isDiagnosis(exercise) ? 'diagnosis' : exercise.topic] },
    {
      kind: 'list',
      marks: 'plain',
      items: exercise.choices.map((_, i) =>
        lineOf(words.choice, { letter: letterOf(i), answer: choiceText(exercise, i, reader) }),
      ),
    },
  ];
}

function answerBlocks(exercise: Exercise, reader: Required<Reader>): readonly Block[] {
  const words = reader.language.exercise;
  const { answer } = exercise;
  const right: Block = {
    kind: 'paragraph',
    text: lineOf(words.right, { letter: letterOf(answer), answer: choiceText(exercise, answer, reader) }),
  };
  return isDiagnosis(exercise)
    ? [right, ...reasonBlocks(exercise, reader)]
    : [right, ...workedBlocks(exercise, answer, reader), ...wrongBlocks(exercise, reader)];
}

function reasonBlocks({ topic, judged }: DiagnosisExercise, { language }: Required<Reader>): readonly Block[] {
  const { spec, reading, verdict } = judged;
  const said = localised(why(spec, reading, verdict, language.words), language);
  // Which number in which unit: only that of the first candidate, which is what the exercise was made with.
  const [first] = topic === 'unit slip' ? slips(spec, reading).candidates : [];
  const meant = first?.slips.map((slip) => localised(slipText(slip, language.words.slips), language)) ?? [];
  return [
    { kind: 'paragraph', text: language.exercise.reasons[topic] },
    ...meant.map((slip): Block => ({ kind: 'paragraph', text: lineOf(language.exercise.slip, { slip }) })),
    { kind: 'paragraph', text: lineOf(language.exercise.check, { why: said }) },
  ];
}

function workedBlocks({ choices }: ArithmeticExercise, i: number, reader: Required<Reader>): readonly Block[] {
  const choice = choices[i];
  return choice === undefined || reader.detail === 'answer' ? [] : toldSteps(choice.derivation, reader).map(raised);
}

function wrongBlocks(exercise: ArithmeticExercise, reader: Required<Reader>): readonly Block[] {
  const words = reader.language.exercise;
  return exercise.choices.flatMap(({ mistake }, i): readonly Block[] => {
    if (mistake === 'none') return [];
    const text = lineOf(words.wrong, {
      letter: letterOf(i),
      answer: choiceText(exercise, i, reader),
      mistake: words.mistakes[mistake],
    });
    return [{ kind: 'paragraph', text }, ...workedBlocks(exercise, i, reader)];
  });
}

const letterOf = (i: number): string => String.fromCharCode(65 + i);

function choiceText(exercise: Exercise, i: number, { language, units }: Required<Reader>): string {
  if (isDiagnosis(exercise)) {
    const choice = exercise.choices[i];
    return choice === undefined ? '' : language.exercise.diagnoses[choice];
  }
  const quantity: GaugePressure | Mass | undefined = exercise.choices[i]?.quantity;
  if (quantity === undefined) return '';
  const text =
    quantity.kind === 'mass'
      ? `${inPlaces(quantity, units.mass, PLACES_MASS[units.mass])} ${units.mass}`
      : `${inPlaces(quantity, units.pressure, PLACES_PRESSURE[units.pressure])} ${units.pressure} gauge`;
  return localised(text, language);
}

const PLACES_PRESSURE: Readonly<Record<PressureUnit, number>> = {
  Pa: 0,
  hPa: 0,
  kPa: 0,
  MPa: 2,
  bar: 1,
  psi: 0,
  'kgf/cm2': 1,
  mmHg: 0,
  inHg: 0,
};
const PLACES_MASS: Readonly<Record<MassUnit, number>> = { kg: 3, g: 0, lb: 3 };
const PLACES_VOLUME: Readonly<Record<VolumeUnit, number>> = { m3: 4, L: 1, mL: 0, in3: 0, 'US gal': 2 };
const PLACES_TEMPERATURE: Readonly<Record<TemperatureUnit, number>> = { '°C': 0, K: 2, '°F': 0 };

function inPlaces<Q extends Quantity>(quantity: Q, unit: Parameters<typeof valueIn<Q>>[1], places: number): string {
  return rounded(quantity, { step: Number(`1e${-places}`), unit, toward: 'nearest even' }).text;
}

function factLine({ code, values }: Fact, { language, units }: Required<Reader>): Line {
  const said = Object.entries(values).map(([name, value]): [string, Line] => [
    name,
    typeof value === 'string' ? [{ kind: 'given', text: value }] : localised(factText(value, units), language),
  ]);
  return lineOf(language.exercise.facts[code], Object.fromEntries(said));
}

function factText(value: Exclude<FactValue, string>, units: ReaderUnits): string {
  if (typeof value === 'number') return String(value);
  switch (value.kind) {
    case 'gauge pressure':
      return `${inPlaces(value, units.pressure, PLACES_PRESSURE[units.pressure])} ${units.pressure} gauge`;
    case 'absolute pressure':
      // Of the weather: two places more than of gas under pressure.
      return `${inPlaces(value, units.pressure, PLACES_PRESSURE[units.pressure] + 2)} ${units.pressure} absolute`;
    case 'pressure difference':
      return `${inPlaces(value, units.pressure, PLACES_PRESSURE[units.pressure])} ${units.pressure}`;
    case 'temperature':
      return `${inPlaces(value, units.temperature, PLACES_TEMPERATURE[units.temperature])} ${units.temperature}`;
    case 'volume':
      return `${inPlaces(value, units.volume, PLACES_VOLUME[units.volume])} ${units.volume}`;
  }
}
