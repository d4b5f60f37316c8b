import { caused, cautionsOf, type CausedCaution } from '../basis/caused.js';
import { filled } from '../basis/fault.js';
import { gives, has } from '../basis/has.js';
import { ownField, ownText } from '../basis/own-words.js';
import type { Reason } from '../basis/words.js';
import { assess, type Assessment } from '../charge/assess.js';
import { check, type Check } from '../charge/check.js';
import type { Charge } from '../charge/charge.js';
import { gaugeOf, wrongKind, type GaugePressure } from '../quantity/kind.js';
import { finer, needDivision, write, type Division } from '../quantity/step.js';
import type { PressureUnit } from '../quantity/unit.js';
import type { Instruments } from '../reading/instruments.js';
import { markAt, shown, type Marked, type Reading } from '../reading/reading.js';
import type { Conditions } from '../target/conditions.js';
import { needSpecification, type Specification } from '../target/specification.js';
import { isObject } from '../target/table.js';
import { needConditions, targetAt } from '../target/target.js';
import { bandAbout, type Band } from '../verdict/band.js';
import type { Rule } from '../verdict/rule.js';
import { checkedReading } from '../verdict/judge.js';
import { why } from '../verdict/why.js';
import {
  BLEED_FIRST,
  CAUTIONS_OF,
  isProtective,
  ORDER,
  REMARK,
  REPLACES_GAS,
  STEP,
  type StepRemark,
  type WorkStep,
  type WorkWords,
} from './steps.js';

/** The conditions that are expected, where the order is made before anybody has read. */
export interface Expected extends Conditions {
  readonly gaugeStep: Division<PressureUnit>;
}

/** With what the reading was taken, and how large a risk of a wrong decision may be: as for {@link assess}. */
export interface Assessed {
  readonly instruments: Instruments;
  readonly rule: Rule;
}

/** One step of a check. */
export interface OrderStep {
  readonly step: WorkStep;
  readonly protects: 'people' | 'the result';
  /** `to be decided` before a reading; `withheld` where gas may neither be added nor vented. */
  readonly state: 'to do' | 'not needed' | 'withheld' | 'to be decided';
  /** What is done, with the numbers in place; or why it is not. */
  readonly text: string;
  readonly cautions: readonly CausedCaution<WorkStep>[];
}

/** Numbers of an order, as people read them: pressures on the gauge that was stated, limits rounded inwards. */
export interface OrderNumbers {
  readonly target: string;
  readonly temperature: string;
  readonly lower: string;
  readonly upper: string;
  readonly allowable: string;
  readonly minutes: string;
  readonly reading: string;
  /** Where filling stops. */
  readonly stop: string;
  /** Where bleeding stops: of gas to vent, or of a filling that settled above its band. */
  readonly bleed: string;
  /** Gas to add or to vent. */
  readonly gas: string;
}

/** The work of one check as data. */
export interface WorkOrder {
  /** `before a reading`: what is wanted is known, what is done is not. */
  readonly basis: 'reading' | 'before a reading';
  readonly steps: readonly OrderStep[];
  readonly numbers: OrderNumbers;
  /** What the reading says; the numbers are from here. */
  readonly check: Check | Assessment | 'before a reading';
  readonly cautions: readonly CausedCaution<'the reading' | 'the work'>[];
}

type State = OrderStep['state'];

const NONE = 'not given';

/**
 * The sequence of a check with its numbers, for a maintenance system to make a work order of: secure, isolate, drain, verify
 * zero, fit, read, compare, charge, settle, bleed, re-check, leak test, close up, restore, try out. Every step of the
 * sequence is in it, in order; one that this reading does not need says so and why. Nothing about gas is ordered that
 * {@link check} withholds, or {@link assess} where instruments are stated.
 *
 * The sequence is the common one. The maker's manual outranks it.
 *
 * @param found the reading; or, where the order is made before it, the conditions expected and the step of the gauge
 * @param assessed instruments and rule, where gas is vented on a conclusive decision only
 * @param words texts of one's own, under the codes of steps and remarks; names in braces are those of {@link OrderNumbers},
 * in a remark `{because}`
 * @throws {@link Fault} as {@link check}, or {@link assess}; `words not sound`
 * @example
 * ```ts
 * const { steps, numbers } = workOrder(spec, reading);
 * steps.find(({ step }) => step === 'charge')?.text; // => 'Fill slowly with nitrogen to 154 bar gauge, about 0.047 kg; never above the allowable pressure of 210.0 bar gauge.'
 * [numbers.target, numbers.lower, numbers.upper]; // => ['152.6 bar gauge', '151 bar gauge', '154 bar gauge']
 * ```
 */
export function workOrder(
  spec: Specification,
  found: Reading | Expected,
  assessed?: Assessed,
  words?: WorkWords,
): WorkOrder {
  needSpecification(spec);
  if (!isObject(found)) wrongKind('reading, or conditions expected', found, 'found');
  if (!isReading(found)) return orderBefore(spec, found, words);
  const read = checkedReading(found);
  const assessment = assessed === undefined ? undefined : assessedCheck(spec, read, assessed);
  const result = assessment ?? check(spec, read);
  const reading = assessment?.reading ?? read;
  const { verdict, charge } = result;
  const numbers = numbersOf(spec, reading, verdict, charge, write(shown(reading), reading.gaugeStep));
  const because = why(spec, reading, { because: reasonsFor(charge, verdict.because) });
  const unknown = verdict.outcome === 'gas not known';
  const steps = charge.action === 'vent' ? BLEED_FIRST : ORDER;
  return {
    basis: 'reading',
    steps: steps
      .filter((step) => unknown || !REPLACES_GAS.includes(step))
      .map((step) => stepOf(step, stateOf(step, charge), numbers, because, words)),
    numbers,
    check: result,
    cautions: [
      ...(unknown ? [caused('gas not known', 'the reading' as const)] : []),
      ...result.cautions.map((one) => ({ ...one, cause: 'the reading' as const })),
    ],
  };
}

/** Whether it is a reading: what says anything of evidence is one, be it complete or not. */
function isReading(found: Reading | Expected): found is Reading {
  return ['pressure', 'oilSide', 'gasInside', 'minutesAtRest'].some((field) => gives(found, field));
}

function assessedCheck(spec: Specification, reading: Reading, assessed: Assessed): Assessment {
  if (!isObject(assessed)) wrongKind('instruments and rule', assessed, 'assessed');
  const { instruments, rule } = assessed;
  return assess(spec, reading, instruments, rule);
}

function orderBefore(spec: Specification, expected: Expected, words: WorkWords | undefined): WorkOrder {
  const at = needConditions(expected);
  const gaugeStep = needDivision(expected.gaugeStep, 'gaugeStep');
  const target = targetAt(spec, at);
  const wanted = { target: gaugeOf(target), band: bandAbout(spec, at, target, { gaugeStep }) };
  const numbers = numbersOf(spec, { ...at, gaugeStep }, wanted, { action: 'none' }, NONE);
  const steps = ORDER.filter((step) => !REPLACES_GAS.includes(step));
  return {
    basis: 'before a reading',
    steps: steps.map((step) =>
      stepOf(step, MOVES_GAS.includes(step) ? 'to be decided' : 'to do', numbers, NONE, words),
    ),
    numbers,
    check: 'before a reading',
    cautions: cautionsOf('the work', [
      'work without evidence',
      'secure and drain',
      'nitrogen only',
      'stored pressure',
      'asphyxiation',
    ]),
  };
}

const MOVES_GAS: readonly WorkStep[] = ['charge', 'settle', 'bleed', 're-check'];

function stateOf(step: WorkStep, charge: Charge): State {
  if (!MOVES_GAS.includes(step)) return 'to do';
  switch (charge.action) {
    case 'none':
      return 'not needed';
    case 'vent':
      return step === 'charge' ? 'not needed' : 'to do';
    case 'add':
      return step === 'charge' && charge.stop.action === 'withheld' ? 'withheld' : 'to do';
    case 'withheld':
      // Nothing is moved; but what the reading lacked is made good, and it is read again.
      return step === 'charge' || step === 'bleed' ? 'withheld' : 'to do';
  }
}

function reasonsFor(charge: Charge, because: readonly Reason[]): readonly Reason[] {
  if (charge.action === 'withheld') return charge.because;
  if (charge.action === 'add' && charge.stop.action === 'withheld') return charge.stop.because;
  return because;
}

function stepOf(
  step: WorkStep,
  state: State,
  numbers: OrderNumbers,
  because: string,
  words: WorkWords | undefined,
): OrderStep {
  const remark: StepRemark | undefined =
    state === 'to do' ? undefined : state === 'to be decided' ? 'as the reading decides' : state;
  const own = ownText(ownField(words, remark ?? step, 'words'), 'words');
  const values: Readonly<Record<string, string>> = remark === undefined ? { ...numbers } : { because };
  return {
    step,
    protects: isProtective(step) ? 'people' : 'the result',
    state,
    text: filled(own ?? (remark === undefined ? STEP[step] : REMARK[remark]), values),
    cautions: state === 'to do' ? (CAUTIONS_OF[step] ?? []).map((code) => caused(code, step)) : [],
  };
}

function numbersOf(
  spec: Specification,
  at: Expected | Reading,
  { target, band }: { readonly target: GaugePressure; readonly band: Band },
  charge: Charge,
  reading: string,
): OrderNumbers {
  const { temperature, gaugeStep } = at;
  const fine = finer(gaugeStep);
  const { unit } = gaugeStep;
  const mark = (text: string): string => `${text} ${unit} gauge`;
  const { onGauge } = band;
  const marks = typeof onGauge === 'string' ? undefined : onGauge;
  const stop = has(charge, 'stop') && charge.stop.action === 'stop' ? charge.stop : undefined;
  const stopText =
    stop === undefined
      ? NONE
      : typeof stop.mark === 'string'
        ? mark(markAt(stop.pressure, { ...at, gaugeStep: fine }, 'down').text)
        : mark(stop.mark.value);
  return {
    target: write(target, fine),
    temperature: write(temperature, { step: 0.1, unit: '°C' }),
    lower: marks === undefined ? write(band.lower, { ...fine, toward: 'up' }) : mark(marks.lower),
    upper: marks === undefined ? write(band.upper, { ...fine, toward: 'down' }) : mark(marks.upper),
    allowable: write(spec.allowable, { ...fine, toward: 'down' }),
    minutes: String(Math.ceil(spec.settling.minutes)),
    reading,
    stop: charge.action === 'add' ? stopText : NONE,
    bleed: charge.action === 'vent' ? stopText : bleedTo(target, band, at),
    gas: has(charge, 'gas') ? charge.gas.rounded.mass : NONE,
  };
}

/** Where bleeding stops that follows a filling: at the mark at or below the target, but inside the band. */
function bleedTo(target: GaugePressure, band: Band, gauge: Marked): string {
  const { unit } = gauge.gaugeStep;
  for (const toward of ['down', 'up'] as const) {
    const { si, text } = markAt(target, gauge, toward);
    if (si >= band.lower.pascals && si <= band.upper.pascals) return `${text} ${unit} gauge`;
  }
  return `${markAt(target, { ...gauge, gaugeStep: finer(gauge.gaugeStep) }, 'nearest even').text} ${unit} gauge`;
}
