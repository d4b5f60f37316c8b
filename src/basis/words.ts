// The words of every reason and caution, under their stable codes. The codes are for programs, the words for people, and
// may be reworded or translated. {name} is filled in by the calculation that gives the reason.

/** Stable codes of the reasons for an outcome, and for a quantity that is withheld. */
export type Reason = keyof typeof REASON;

export const REASON = {
  'gas not known to be nitrogen':
    'the gas inside is not known to be nitrogen: nothing can be compared, and nothing may be added before it is known ' +
    "or replaced by the maker's method",
  'oil side not drained':
    'the oil side is not drained: the gauge shows the pressure of the oil behind the separator, not the pre-charge',
  'oil side not known':
    'it is not known that the oil side is drained and at zero: the gauge may show the pressure of the oil',
  'reads like system pressure': 'the reading of {reading} agrees with the system pressure of {system}: this is the oil',
  'time at rest not known':
    'it is not known how long oil and gas have been at rest; {needed} min are needed, because the gas is cold after ' +
    'draining and warm after filling',
  'not at rest long enough':
    'oil or gas moved {rested} min ago and {needed} min at rest are needed: the gas is cold after draining and reads ' +
    'low, warm after filling and reads high',
  'reads zero':
    'the gas side reads {reading}, which such a gauge may not tell from zero ({target} wanted): find the cause before any ' +
    'gas is added, and confirm with a second gauge; through a torn separator gas blows into the oil',
  'empty, cause cleared':
    'the gas side reads {reading}, {target} wanted at {temperature}; its cause is stated as investigated and cleared',
  'no mark of the gauge in the band':
    'no mark of a gauge read to {step} lies between {lower} and {upper}, and the reading of {reading} is beside them: a ' +
    'gauge read to {needed} or finer decides it',
  'below the lower limit':
    'undercharged by {off}: {reading} read, {target} wanted at {temperature}, lower limit {lower}{explained}',
  'above the upper limit':
    'overcharged by {off}: {reading} read, {target} wanted at {temperature}, upper limit {upper}{explained}',
  'inside the limits': '{reading} read, {target} wanted at {temperature}, limits {lower} and {upper}',
  'not investigated': 'the cause of the empty gas side has not been stated as investigated and cleared',
  'target above the allowable pressure':
    'at {temperature} the target of {pressure} is above the allowable pressure of {allowable}: no quantity is given; let ' +
    'it cool, check the specification',
  'reading above the allowable pressure':
    'the reading of {pressure} is above the allowable pressure of {allowable}: no quantity is given; make safe by the ' +
    "maker's method",
  'stop pressure above the allowable pressure':
    'target and settling allowance together, {pressure}, are above the allowable pressure of {allowable}: fill in stages ' +
    'below it, letting each settle',
} as const;

/** Follows a verdict where the reading would be right at another temperature of the gas. */
export const EXPLAINED = '; the reading would be right at a gas temperature of {explaining}';

/** Fills the placeholders of a text; asks only for those that stand in it. */
export function fill(template: string, value: (name: string) => string | undefined): string {
  return template.replace(/\{(\w+)\}/g, (_, name: string) => value(name) ?? missing(name, template));
}

function missing(name: string, template: string): never {
  throw new Error(`no value for {${name}} in "${template}"`); // a defect of ours; a test fills every template
}
