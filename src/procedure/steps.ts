import type { CautionCode } from '../basis/caution.js';

// The steps of a check, in the order in which they protect people: common practice, no source. The codes are for programs
// and stable; the texts may be reworded or translated. {name} is filled in from the numbers of the order.

/** Stable codes of the steps without which somebody may be hurt. */
export type ProtectiveStep =
  'secure' | 'note valves' | 'isolate' | 'drain' | 'verify zero' | 'fit' | 'leak test' | 'close up' | 'restore valves';

/** Stable codes of the steps of a check, in the order in which they are done. */
export type WorkStep =
  | ProtectiveStep
  | 'read'
  | 'compare'
  | 'depressurise'
  | 'purge'
  | 'charge'
  | 'settle'
  | 'bleed'
  | 're-check'
  | 'try out';

/** Stable codes of what may be said of a step besides its own text. */
export type StepRemark = 'not needed' | 'withheld' | 'as the reading decides';

/** Texts of one's own, under the stable codes of steps and remarks; what is left out keeps the library's words. */
export type WorkWords = Readonly<Partial<Record<WorkStep | StepRemark, string>>>;

export const PROTECTIVE: readonly ProtectiveStep[] = [
  'secure',
  'note valves',
  'isolate',
  'drain',
  'verify zero',
  'fit',
  'leak test',
  'close up',
  'restore valves',
];

export function isProtective(step: WorkStep): step is ProtectiveStep {
  return (PROTECTIVE as readonly WorkStep[]).includes(step);
}

/** Only of a gas that is not known to be nitrogen. */
export const REPLACES_GAS: readonly WorkStep[] = ['depressurise', 'purge'];

/** Every step, in order. */
export const ORDER: readonly WorkStep[] = [
  'secure',
  'note valves',
  'isolate',
  'drain',
  'verify zero',
  'fit',
  'read',
  'compare',
  'depressurise',
  'purge',
  'charge',
  'settle',
  'bleed',
  're-check',
  'leak test',
  'close up',
  'restore valves',
  'try out',
];

/** Where gas is vented on the reading: there is nothing to let settle before. */
export const BLEED_FIRST: readonly WorkStep[] = [
  ...['secure', 'note valves', 'isolate', 'drain', 'verify zero', 'fit', 'read', 'compare', 'depressurise', 'purge'],
  ...['charge', 'bleed', 'settle', 're-check', 'leak test', 'close up', 'restore valves', 'try out'],
] as readonly WorkStep[];

export const STEP: Readonly<Record<WorkStep, string>> = {
  secure: 'Stop the engine and secure it against starting; put up notices where it can be started.',
  'note valves': 'Note the position of every valve that will be moved, before it is moved.',
  isolate: 'Shut off the accumulator from the hydraulic system.',
  drain: 'Drain the oil side to the tank, slowly.',
  'verify zero': 'Verify on a gauge of the oil side that it is at zero and stays there.',
  fit:
    'Fit the charging kit with gas valve and bleed valve shut. Bottle, regulator, hose and gauge must be rated for the ' +
    'pressure; the allowable pressure of the accumulator is {allowable}.',
  read: 'When oil and gas have been at rest for {minutes} min, read pressure and shell temperature, and the barometer.',
  compare:
    'Compare with the target of {target} at {temperature}: on the gauge from {lower} to {upper}. Read: {reading}.',
  depressurise:
    "The gas is not known to be nitrogen: add nothing to it. Let it all out to a safe place by the maker's method.",
  purge: 'Fill with nitrogen and vent again until what is left of the other gas is as little as is wanted.',
  charge: 'Fill slowly with nitrogen to {stop}, about {gas}; never above the allowable pressure of {allowable}.',
  settle: 'Shut the valves and wait {minutes} min.',
  bleed: 'Where it reads above {upper}, bleed slowly to a safe place, down to {bleed} and no further.',
  're-check':
    'Read pressure and temperature again, and compare with the target at that temperature, not at the first one.',
  'leak test': 'Shut the gas valve, relieve the kit, and test the gas valve with liquid. Nobody holds a face over it.',
  'close up': 'Take off the kit, put on cap and guard, and tighten them as the maker says.',
  'restore valves': 'Return every valve to the position noted before, and compare with the note.',
  'try out': 'Remove notices, start the system, and see that it runs as before and that nothing leaks.',
};

export const REMARK: Readonly<Record<StepRemark, string>> = {
  'not needed': 'Not needed: {because}.',
  withheld: 'Neither fill nor bleed: {because}.',
  'as the reading decides': 'As the reading decides; make the order again with it.',
};

/** The cautions that go with a step. */
export const CAUTIONS_OF: Readonly<Partial<Record<WorkStep, readonly CautionCode[]>>> = {
  secure: ['secure and drain'],
  isolate: ['secure and drain'],
  drain: ['secure and drain'],
  'verify zero': ['secure and drain'],
  fit: ['stored pressure', 'nitrogen only'],
  depressurise: ['gas not known', 'asphyxiation'],
  purge: ['nitrogen only', 'asphyxiation', 'purged by calculation'],
  charge: ['nitrogen only', 'stored pressure'],
  bleed: ['asphyxiation'],
  'leak test': ['stored pressure', 'leak may not show'],
  'close up': ['stored pressure'],
};
