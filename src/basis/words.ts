import type { CautionCode } from './caution.js';
import { fail, filled, needProblem, quote, type Problem, type ProblemCode } from './fault.js';
import { needCode, ownField, ownText } from './own-words.js';
import { unknownWord, wordsUnsound, type ProblemText } from './problem.js';
import { taken, type Fields } from './taken.js';

// The words of every reason and cause, under their stable codes; those of problems and cautions stand in files of their
// own. The codes are for programs, the words for people, and may be reworded or translated. {name} is filled in.

/** Stable codes of the reasons for an outcome, and for a quantity that is withheld. */
export type Reason =
  | 'gas not known to be nitrogen'
  | 'oil side not drained'
  | 'oil side not known'
  | 'reads like system pressure'
  | 'beyond the scale'
  | 'time at rest not known'
  | 'not at rest long enough'
  | 'reads zero'
  | 'empty, cause cleared'
  | 'no mark of the gauge in the band'
  | 'below the lower limit'
  | 'above the upper limit'
  | 'inside the limits'
  | 'not investigated'
  | 'target above the allowable pressure'
  | 'reading above the allowable pressure'
  | 'stop pressure above the allowable pressure'
  | 'not conclusive'
  | 'slip possible';

export const REASON: Readonly<Record<Reason, string>> = {
  'gas not known to be nitrogen':
    'the gas inside is not known to be nitrogen: nothing can be compared, and nothing may be added before it is known ' +
    "or replaced by the maker's method",
  'oil side not drained':
    'the oil side is not drained: the gauge shows the pressure of the oil behind the separator, not the pre-charge',
  'oil side not known':
    'it is not known that the oil side is drained and at zero: the gauge may show the pressure of the oil',
  'reads like system pressure': 'the reading of {reading} agrees with the system pressure of {system}: this is the oil',
  'beyond the scale':
    'the reading of {reading} lies beyond the end of the scale of its gauge, {fullScale}: the pointer cannot have stood ' +
    'there; check the unit, the gauge and what was written down',
  'time at rest not known':
    'it is not known how long oil and gas have been at rest; {minutesNeeded} min are needed, because the gas is cold after ' +
    'draining and warm after filling',
  'not at rest long enough':
    'oil or gas moved {rested} min ago and {minutesNeeded} min at rest are needed: the gas is cold after draining and reads ' +
    'low, warm after filling and reads high',
  'reads zero':
    'the gas side reads {reading}, which such a gauge may not tell from zero ({target} wanted): find the cause before any ' +
    'gas is added, and confirm with a second gauge; through a torn separator gas blows into the oil',
  'empty, cause cleared':
    'the gas side reads {reading}, {target} wanted at {temperature}; its cause is stated as investigated and cleared',
  'no mark of the gauge in the band':
    'no mark of a gauge read to {step} lies between {lower} and {upper}, and the reading of {reading} is beside them: a ' +
    'gauge read to {stepNeeded} or finer decides it',
  'below the lower limit':
    'undercharged by {off}: {reading} read, {target} wanted at {temperature}, lower limit {lower}',
  'above the upper limit':
    'overcharged by {off}: {reading} read, {target} wanted at {temperature}, upper limit {upper}',
  'inside the limits': '{reading} read, {target} wanted at {temperature}, limits {lower} and {upper}',
  'not investigated': 'the cause of the empty gas side has not been stated as investigated and cleared',
  'target above the allowable pressure':
    'at {temperature} the target of {target} is above the allowable pressure of {allowable}: no quantity is given; let ' +
    'it cool, check the specification',
  'reading above the allowable pressure':
    'the reading of {reading} is above the allowable pressure of {allowable}: no quantity is given; make safe by the ' +
    "maker's method",
  'stop pressure above the allowable pressure':
    'target and settling allowance together, {stop}, are above the allowable pressure of {allowable}: fill in stages ' +
    'below it, letting each settle',
  'not conclusive':
    'the instruments leave open whether {reading} is too much, with {target} wanted at {temperature} and an upper limit of ' +
    '{upper}: no gas is vented on it; read again with a better gauge or thermometer',
  'slip possible':
    'in another unit or basis the reading of {reading} at {temperature} would be right: read number, unit and basis on the ' +
    'instruments again before any gas is added or vented',
};

// Common practice, no source.
export const CAUSE: Readonly<Record<Cause, string>> = {
  'valve not open': 'the gas valve or the valve of the charging kit is not open',
  'gauge dead or blocked': 'the gauge is dead or its line is blocked: read with a second gauge',
  'gas valve leaks': 'the gas valve, its core or a seal leaks: leak test with liquid',
  'separator torn': 'the separator (diaphragm, bladder or piston seal) is torn: gas in the oil, oil at the gas valve',
};

/** Stable codes of what may be behind an empty gas side, cheapest to check first. */
export type Cause = 'valve not open' | 'gauge dead or blocked' | 'gas valve leaks' | 'separator torn';

/** Stands for a reading that has the correction of its gauge in it. */
export const CORRECTED = '{corrected} (corrected; the gauge showed {shown})';

/** Follows a verdict where the reading would be right at another temperature of the gas. */
export const EXPLAINED = 'the reading would be right at a gas temperature of {explaining}';

/**
 * Words of one's own in place of the library's, under the stable codes: a translation, for instance. What is left out
 * keeps the library's words. A name in braces is filled in, and must be one that the library's own text has.
 */
export interface Words {
  readonly reasons?: Readonly<Partial<Record<Reason, string>>>;
  readonly causes?: Readonly<Partial<Record<Cause, string>>>;
  readonly cautions?: Readonly<Partial<Record<CautionCode, string>>>;
  readonly problems?: Readonly<Partial<Record<ProblemCode, ProblemText>>>;
  readonly uncertainty?: Readonly<Partial<Record<UncertaintyCode, string>>>;
  /** What would settle a reading that decides nothing. */
  readonly settled?: Readonly<Partial<Record<SettledBy, string>>>;
  readonly slips?: Readonly<Partial<Record<SlipCode, string>>>;
  readonly supply?: Readonly<Partial<Record<SupplyCode, string>>>;
  /** Said after an undercharge or overcharge where another gas temperature would make the reading right. */
  readonly explained?: string;
  /** Stands for a reading that has the correction of its gauge in it. */
  readonly corrected?: string;
}

/**
 * What may be behind an empty gas side, in words.
 *
 * @throws {@link Fault} `unknown word` for a code that there is not; `words not sound` for words that are no texts
 * @example
 * ```ts
 * causeText('valve not open'); // => 'the gas valve or the valve of the charging kit is not open'
 * ```
 */
export function causeText(cause: Cause, words?: Words): string {
  needCode(CAUSE, cause, 'cause');
  return ownText(ownField(ownField(words, 'causes', 'words'), cause, 'words.causes'), 'words.causes') ?? CAUSE[cause];
}

/**
 * A problem in words of one's own, where there are any under its code.
 *
 * @throws {@link Fault} `wrong kind` for anything but a problem; `words not sound` for words that are no texts, or for a
 * name in braces that the problem has no value for
 * @example
 * ```ts
 * const words = { problems: { 'below absolute zero': { wanted: 'mindestens 0 K', remedy: 'Einheit prüfen' } } };
 * try {
 *   temperature(-300, '°C');
 * } catch (error) {
 *   if (isFault(error)) inWords(error.problems[0], words).remedy; // => 'Einheit prüfen'
 * }
 * ```
 */
export function inWords(given: Problem, words?: Words): Problem {
  const problem = copyOf(given);
  needProblem(problem, 'problem');
  const own = ownField(ownField(words, 'problems', 'words'), problem.code, 'words.problems');
  if (own === undefined) return problem;
  const text = (field: keyof ProblemText): string => {
    const text = ownText(ownField(own, field, 'words.problems'), `words.problems.${field}`);
    return filled(
      text ?? fail(wordsUnsound, 'words.problems', 'nothing', { wanted: `a text ${field}` }),
      problem.values,
    );
  };
  const { code, path, found, values, about } = problem;
  const said = { code, path, found, wanted: text('wanted'), remedy: text('remedy'), values };
  return about === undefined ? said : { ...said, about };
}

/** A problem, each field and each value read once. */
function copyOf(given: Problem): Problem {
  const problem = taken(given, PROBLEM);
  const values: unknown = problem?.values;
  return typeof values === 'object' && values !== null ? { ...problem, values: { ...values } } : given;
}

const PROBLEM: Fields = {
  code: 'as it is',
  path: 'as it is',
  found: 'as it is',
  wanted: 'as it is',
  remedy: 'as it is',
  values: 'as it is',
  about: 'as it is',
};

/** What an uncertainty is made of, by stable codes. */
export type ContributionCode =
  | 'gauge'
  | 'gauge temperature'
  | 'gauge step'
  | 'thermometer'
  | 'thermometer step'
  | 'emissivity'
  | 'shell to gas'
  | 'barometer'
  | 'printed pressure'
  | 'printed temperature'
  | 'printed ambient'
  | 'equation of state'
  | 'vessel';

export const CONTRIBUTION: Readonly<Record<ContributionCode, string>> = {
  gauge: 'the accuracy of the pressure gauge',
  'gauge temperature': 'the temperature of the pressure gauge',
  'gauge step': 'the step to which the pressure gauge is read',
  thermometer: 'the accuracy of the thermometer',
  'thermometer step': 'the step to which the thermometer is read',
  emissivity: 'the emissivity of the shell',
  'shell to gas': 'the difference between the temperatures of shell and gas',
  barometer: 'the ambient pressure',
  'printed pressure': 'the step to which the manual prints its pressures',
  'printed temperature': 'the step to which the manual prints its temperatures',
  'printed ambient': 'the ambient pressure that the manual means',
  'equation of state': 'the uncertainty of the equation of state',
  vessel: 'the thermal expansion of the vessel',
};

/** What an uncertainty does not count, by stable codes. */
export type NotCounted = 'temperature of the gauge' | 'uncertainty of the gas model' | 'drift since calibration';

export const NOT_COUNTED: Readonly<Record<NotCounted, string>> = {
  'temperature of the gauge':
    'the temperature of the gauge is not known: its influence (0.04 % of span per kelvin from 20 °C) is not counted',
  'uncertainty of the gas model': 'the source of the gas model states no uncertainty there: none is counted',
  'drift since calibration': 'how far the instrument has drifted since its certificate is not counted',
};

/** Why there is no uncertainty, or no decision on it, by stable codes. */
export type Undecided =
  | 'reading below zero'
  | 'reading above full scale'
  | 'reading in the first tenth of a scale with stop pin'
  | 'no evidence';

export const UNDECIDED: Readonly<Record<Undecided, string>> = {
  'reading below zero': 'the gauge reads below the zero of its scale, where its accuracy does not hold',
  'reading above full scale': 'the reading lies beyond the end of the scale, where the gauge cannot have stood',
  'reading in the first tenth of a scale with stop pin':
    'the gauge has a stop pin and reads in the first tenth of its scale, where its accuracy class does not hold',
  'no evidence': 'the reading is no evidence of the pre-charge: see its verdict',
};

/** What a round leaves out that an uncertainty needs, by stable codes. */
export type Lacking =
  | 'gauge not named'
  | 'gauge not characterised'
  | 'gauge temperature not stated'
  | 'thermometer not named'
  | 'thermometer not characterised'
  | 'limit of the ambient not stated'
  | 'printed steps not stated'
  | 'vessel not stated'
  | 'model error correlation not stated'
  | 'number of readings not stated';

export const LACKING: Readonly<Record<Lacking, string>> = {
  'gauge not named': 'it is not said with which gauge the pressure was read',
  'gauge not characterised': 'scale and accuracy of the gauge are not stated',
  'gauge temperature not stated': 'the temperature of the gauge is not stated, nor that it is not known',
  'thermometer not named': 'it is not said with which thermometer the temperature was read',
  'thermometer not characterised': 'the accuracy of the thermometer is not stated',
  'limit of the ambient not stated': 'it is not stated how far the ambient pressure may be wrong',
  'printed steps not stated': 'the specification does not state the steps to which the manual prints its values',
  'vessel not stated': 'the specification does not state the thermal expansion of the vessel',
  'model error correlation not stated':
    'the round does not state how the errors of the equation of state at two temperatures are correlated',
  'number of readings not stated': 'it is not stated how many readings the reading is the mean of',
};

/** Codes of what an uncertainty is made of, of what it does not count, and of why there is none. */
export type UncertaintyCode = ContributionCode | NotCounted | Undecided | Lacking;

/**
 * What an uncertainty is made of, what it does not count, or why there is none, in words.
 *
 * @param own words in place of the library's
 * @throws {@link Fault} `unknown word` for a code that there is not; `words not sound` for words that are no texts
 * @example
 * ```ts
 * uncertaintyText('shell to gas'); // => 'the difference between the temperatures of shell and gas'
 * ```
 */
export function uncertaintyText(
  code: UncertaintyCode,
  own?: Readonly<Partial<Record<UncertaintyCode, string>>>,
): string {
  const text =
    wordsOf(CONTRIBUTION, code) ?? wordsOf(NOT_COUNTED, code) ?? wordsOf(UNDECIDED, code) ?? wordsOf(LACKING, code);
  if (text === undefined) return fail(unknownWord, 'code', quote(code), { words: 'a code of an uncertainty' });
  return ownText(ownField(own, code, 'own'), 'own') ?? text;
}

/** Why a bottle, or an accumulator, takes no part in a filling or is not completed, by stable codes. */
export type SupplyCode =
  | 'another gas on the label'
  | 'purity not stated'
  | 'purity too low'
  | 'above its rating'
  | 'not above its residual pressure'
  | 'bottle above the rating of the kit'
  | 'bottle above the rating of the regulator'
  | 'nothing to add'
  | 'target above its allowable pressure'
  | 'target above the rating of the kit'
  | 'target above the rating of the regulator'
  | 'target above every bottle'
  | 'reading may be a slip'
  | 'no bottle to use'
  | 'not enough gas'
  | 'no plan found';

export const SUPPLY: Readonly<Record<SupplyCode, string>> = {
  'another gas on the label': 'the label of the bottle names another gas: do not connect it',
  'purity not stated': 'a purity is demanded, and the label of the bottle states none',
  'purity too low': 'the purity on the label of the bottle is lower than what is demanded',
  'above its rating': 'referred to 15 °C, the pressure of the bottle is above its rating: do not use it',
  'not above its residual pressure':
    'the pressure of the bottle is not above its residual pressure: it counts as empty',
  'bottle above the rating of the kit': 'the bottle has more pressure than the charging kit may hold',
  'bottle above the rating of the regulator': 'the bottle has more pressure than the inlet of the regulator may hold',
  'nothing to add': 'the accumulator has the pressure wanted, or more',
  'target above its allowable pressure': 'the pressure wanted is above the allowable pressure of the accumulator',
  'target above the rating of the kit': 'the pressure wanted is above what the charging kit may hold',
  'target above the rating of the regulator': 'the pressure wanted is above what the outlet of the regulator may hold',
  'target above every bottle':
    'the pressure wanted, with the difference that the regulator needs, is above every bottle: a booster is needed, or a ' +
    'bottle of higher pressure',
  'reading may be a slip':
    'in another unit or basis its reading would be right: it is read again before anything is planned for it',
  'no bottle to use': 'there is no bottle that may be used',
  'not enough gas': 'no plan completes more accumulators with these bottles',
  'no plan found': 'no plan was found that completes it too; that there is none is not proven',
};

/**
 * Why a bottle or an accumulator takes no part in a filling, or is not completed, in words.
 *
 * @param own words in place of the library's
 * @throws {@link Fault} `unknown word` for a code that there is not; `words not sound` for words that are no texts
 * @example
 * ```ts
 * supplyText('no bottle to use'); // => 'there is no bottle that may be used'
 * ```
 */
export function supplyText(code: SupplyCode, own?: Readonly<Partial<Record<SupplyCode, string>>>): string {
  needCode(SUPPLY, code, 'code');
  return ownText(ownField(own, code, 'own'), 'own') ?? SUPPLY[code];
}

function wordsOf(catalogue: Readonly<Record<string, string>>, code: string): string | undefined {
  return typeof code === 'string' && Object.hasOwn(catalogue, code) ? catalogue[code] : undefined;
}

/** What would settle a reading that decides nothing, each by itself, by stable codes. */
export type SettledBy =
  'better gauge' | 'finer class' | 'better thermometer' | 'more settling' | 'repeats' | 'nothing alone';

export const SETTLED: Readonly<Record<SettledBy, string>> = {
  'better gauge': 'a gauge with a limit of error of {limit} or less',
  'finer class': 'a gauge of accuracy class {class} or finer, of the same scale',
  'better thermometer': 'a thermometer with a limit of error of {limit} or less',
  'more settling': 'shell and gas within {limit} of each other: more time, shade, no draught',
  repeats: 'the mean of {readings} readings, each taken anew with gauge tapped and thermometer lifted',
  'nothing alone': 'no single change: better instruments together, or gas brought to the target',
};

/** Stable codes of what may have been stated otherwise than the instrument showed it. */
export type SlipCode =
  'unit of pressure' | 'absolute stated as gauge' | 'gauge stated as absolute' | 'unit of temperature';

export const SLIP: Readonly<Record<SlipCode, string>> = {
  'unit of pressure': 'the number {number} was stated in {stated}; the gauge may show {readAs}',
  'absolute stated as gauge':
    'the number {number} {unit} was stated as gauge; the instrument may show absolute pressure, which counts from vacuum',
  'gauge stated as absolute':
    'the number {number} {unit} may be a gauge reading from which the ambient pressure was taken off by mistake',
  'unit of temperature': 'the number {number} was stated in {stated}; the thermometer may show {readAs}',
};
