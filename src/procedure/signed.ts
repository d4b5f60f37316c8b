import { indexed } from '../basis/indexed.js';
import { collect, fail, failIfAny, fieldNames, problem, quote, type Problem } from '../basis/fault.js';
import { leftOutSilently, notATime, notSigned, signedTooEarly, unknownField, unknownWord } from '../basis/problem.js';
import { taken } from '../basis/taken.js';
import { wrongKind } from '../quantity/kind.js';
import { needDate } from '../reading/certificate.js';
import { all } from '../reading/checks.js';
import { cautionsOf, type CausedCaution } from '../basis/caused.js';
import { needGiven, needSaid } from '../safety/checks.js';
import { isObject } from '../target/table.js';
import type { OrderStep, WorkOrder } from './order.js';
import { BLEED_FIRST, isProtective, ORDER, REPLACES_GAS, type ProtectiveStep, type WorkStep } from './steps.js';

/** Who did a step, and when. */
export interface Signed {
  readonly by: string;
  /** Date and time with seconds and offset, RFC 3339. */
  readonly at: string;
  /** What was found or noted, such as the positions of the valves. */
  readonly note?: string;
  readonly leftOutBecause?: never;
  readonly instead?: never;
}

/** Who left a step out, when and why. */
export interface LeftOutStep extends Omit<Signed, 'leftOutBecause' | 'instead'> {
  readonly leftOutBecause: string;
  readonly instead?: string;
}

/** A step that protects people, left out: what protected them instead is said beside who, when and why. */
export interface ReplacedStep extends LeftOutStep {
  readonly instead: string;
}

/**
 * Who did what and when. The steps that protect people are all in it, or it does not compile; one that was left out says
 * what protected people instead.
 */
export type Signatures = Readonly<Record<ProtectiveStep, Signed | ReplacedStep>> &
  Readonly<Partial<Record<Exclude<WorkStep, ProtectiveStep>, Signed | LeftOutStep>>>;

/** A step in the record of the work. */
export interface RecordedStep {
  readonly step: WorkStep;
  readonly protects: OrderStep['protects'];
  readonly state: 'done' | 'done although withheld' | 'left out' | 'replaced' | 'not needed' | 'withheld';
  readonly by?: string;
  readonly at?: string;
  readonly note?: string;
  readonly leftOutBecause?: string;
  readonly instead?: string;
}

/** The record of a work whose every step is accounted for. */
export interface SignedWork {
  readonly steps: readonly RecordedStep[];
  /** Steps that were not done, those that protect people among them: they stay visible. */
  readonly leftOut: readonly WorkStep[];
  /** Of these, steps that protect people. */
  readonly protectionReplaced: readonly ProtectiveStep[];
  readonly cautions: readonly CausedCaution<'the work'>[];
}

const AS_IT_IS = 'as it is';
const ENTRY = { by: AS_IT_IS, at: AS_IT_IS, note: AS_IT_IS, leftOutBecause: AS_IT_IS, instead: AS_IT_IS } as const;
const TIME = /^(\d{4}-\d\d-\d\d)T([01]\d|2[0-3]):[0-5]\d:([0-5]\d|60)(\.\d{1,9})?(Z|[+-]([01]\d|2[0-3]):[0-5]\d)$/;

type Entry = Partial<Record<keyof typeof ENTRY, string>>;

/**
 * The record of the work on an order, once every step of it is accounted for: signed, or left out with a reason. A step that
 * protects people needs, to be left out, what protected them instead; it is asked for even if the order that is given has
 * lost it. Steps are signed in the order in which they protect people.
 *
 * @param order of {@link workOrder}, as it was or as JSON brought it back
 * @param signatures who did each step and when, by its code
 * @throws {@link Fault} listing every step not accounted for: `step not signed`, `protection left out`,
 * `signed out of order`, `not a time`, `missing`, `not a text`, `unknown field`, `unknown word`, `wrong kind`
 * @example
 * ```ts
 * const by = (minute: number) => ({ by: 'second engineer', at: `2026-03-14T09:${minute}:00+01:00` });
 * const signatures = {
 *   secure: by(10), 'note valves': by(11), isolate: by(12), drain: by(14), 'verify zero': by(15), fit: by(18),
 *   read: by(45), compare: by(46), charge: by(47), settle: by(52), bleed: by(53), 're-check': by(54),
 *   'leak test': { ...by(55), leftOutBecause: 'no liquid on board', instead: 'cap fitted, read again next day' },
 *   'close up': by(56), 'restore valves': by(58), 'try out': by(59),
 * };
 * needComplete(workOrder(spec, reading), signatures).protectionReplaced; // => ['leak test']
 * ```
 */
export function needComplete(order: Pick<WorkOrder, 'steps'>, signatures: Signatures): SignedWork {
  const states = statesOf(order);
  if (!isObject(signatures)) wrongKind('signatures by step', signatures, 'signatures');
  const problems: Problem[] = [];
  const unknown = Object.keys(signatures).filter((name) => !(ORDER as readonly string[]).includes(name));
  if (unknown.length > 0) problems.push(problem(unknownField, 'signatures', fieldNames(unknown, ', ')));
  const steps: RecordedStep[] = [];
  let before: { readonly at: string; readonly instant: number } | undefined;
  for (const [step, state] of states) {
    const protects = isProtective(step) ? 'people' : 'the result';
    const given: unknown = Object.hasOwn(signatures, step) ? signatures[step] : undefined;
    if (given === undefined) {
      if (state === 'not needed' || state === 'withheld') steps.push({ step, protects, state });
      else problems.push(problem(notSigned, `signatures.${step}`, 'nothing'));
      continue;
    }
    const entry = collect(problems, `signatures.${step}`, () => entryOf(given, isProtective(step)));
    if (entry === undefined) continue;
    const { at = '', leftOutBecause } = entry;
    const instant = instantOf(at);
    if (before !== undefined && instant < before.instant)
      problems.push(problem(signedTooEarly, `signatures.${step}.at`, quote(at), { before: before.at }));
    before = { at, instant };
    steps.push({ step, protects, state: recordedAs(step, state, leftOutBecause), ...entry });
  }
  failIfAny(problems);
  const replaced = steps.filter(({ state }) => state === 'replaced').map(({ step }) => step as ProtectiveStep);
  return {
    steps,
    leftOut: steps.filter(({ state }) => state === 'left out' || state === 'replaced').map(({ step }) => step),
    protectionReplaced: replaced,
    cautions: cautionsOf('the work', [
      ...(steps.some(({ state }) => state === 'done although withheld') ? (['done although withheld'] as const) : []),
      ...(replaced.length > 0 ? (['protection replaced'] as const) : []),
    ]),
  };
}

function recordedAs(step: WorkStep, ordered: State, leftOutBecause: string | undefined): RecordedStep['state'] {
  if (leftOutBecause !== undefined) return isProtective(step) ? 'replaced' : 'left out';
  return ordered === 'withheld' ? 'done although withheld' : 'done';
}

type State = OrderStep['state'];

/**
 * The steps of an order with their states, in its own order. What an order has lost on its way is to be done all the same,
 * and so is every step that protects people, whatever state it has come to.
 */
function statesOf(order: Pick<WorkOrder, 'steps'>): readonly (readonly [WorkStep, State])[] {
  const given: unknown = order?.steps;
  if (!Array.isArray(given)) return wrongKind('work order with its steps', order, 'order');
  const list = given as readonly unknown[];
  const found = indexed(Math.min(list.length, ORDER.length), (i) => stepAt(list[i], i));
  const places = found.map(([step]) => step);
  const steps = places.indexOf('bleed') < places.indexOf('settle') ? BLEED_FIRST : ORDER;
  return steps.flatMap((step) => {
    const [, state] = found.find(([own]) => own === step) ?? [];
    if (state === undefined) return REPLACES_GAS.includes(step) ? [] : [[step, 'to do'] as const];
    return [[step, isProtective(step) ? 'to do' : state] as const];
  });
}

const STATES: readonly State[] = ['to do', 'not needed', 'withheld', 'to be decided'];

function stepAt(given: unknown, i: number): readonly [WorkStep, State] {
  const path = `order.steps[${i}]`;
  if (!isObject(given)) return wrongKind('step of a work order', given, path);
  const { step, state } = given as Partial<OrderStep>;
  if (step === undefined || !ORDER.includes(step))
    return fail(unknownWord, `${path}.step`, quote(step), { words: ORDER.join(', ') });
  if (state === undefined || !STATES.includes(state))
    return fail(unknownWord, `${path}.state`, quote(state), { words: STATES.join(', ') });
  return [step, state];
}

/** A signature, each part of it read once and checked. */
function entryOf(given: unknown, protective: boolean): Entry {
  needGiven(given, 'signature: by and at');
  const { by, at, note, leftOutBecause, instead } = taken(given as Entry, ENTRY);
  all(
    ['by', () => needSaid(by, 'who did it, or left it out')],
    ['at', () => needTime(at)],
    ['note', () => (note === undefined ? undefined : needSaid(note, 'what was noted'))],
    [
      'leftOutBecause',
      () => (leftOutBecause === undefined ? undefined : needSaid(leftOutBecause, 'why it was left out')),
    ],
    ['instead', () => (instead === undefined ? undefined : needSaid(instead, 'what protected people instead'))],
  );
  if (protective && leftOutBecause !== undefined && instead === undefined) fail(leftOutSilently, '', 'a reason alone');
  return Object.fromEntries(
    Object.entries({ by, at, note, leftOutBecause, instead }).filter(([, text]) => text !== undefined),
  );
}

function needTime(at: unknown): void {
  const date = typeof at === 'string' ? TIME.exec(at)?.[1] : undefined;
  if (date === undefined || !isDate(date)) fail(notATime, '', quote(at));
}

function isDate(date: string): boolean {
  return (
    collect([], '', () => {
      needDate(date);
      return true;
    }) ?? false
  );
}

function instantOf(at: string): number {
  // A leap second counts as the second before it: its order is kept, and the engine knows none.
  // eslint-disable-next-line no-restricted-globals -- reads the text it is given, not the clock
  return Date.parse(at.replace(/:60(?=[.Z+-])/, ':59'));
}
