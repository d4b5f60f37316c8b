import { needCode, ownField, ownText } from './own-words.js';

/** How much is at stake. */
export type Severity = 'danger' | 'caution' | 'note';

/** A caution that goes with a result. It never replaces the maker's manual, local codes or licensed practice. */
export interface Caution {
  readonly code: CautionCode;
  readonly severity: Severity;
  readonly text: string;
}

/** Stable codes of the cautions. */
export type CautionCode =
  | 'reading above the allowable pressure'
  | 'target above the allowable pressure'
  | 'stop pressure above the allowable pressure'
  | 'nitrogen only'
  | 'stored pressure'
  | 'secure and drain'
  | 'asphyxiation'
  | 'maker decides'
  | 'empty gas side'
  | 'large loss'
  | 'not comparable'
  | 'no mark to stop at'
  | 'table and nominal point disagree'
  | 'model uncertainty not stated'
  | 'certificate past due'
  | 'reading high on the scale'
  | 'common shift'
  | 'slip possible'
  | 'bottle above its rating'
  | 'bottle of another gas'
  | 'above the rating of kit or regulator'
  | 'booster needed'
  | 'settled pressures'
  | 'stop may settle high'
  | 'stop may settle low'
  | 'computed stop'
  | 'hot gas above the allowable pressure'
  | 'oxygen below the limit'
  | 'measure oxygen'
  | 'stored energy'
  | 'rating too low'
  | 'gas not known'
  | 'purged by calculation'
  | 'leak may not show'
  | 'work without evidence'
  | 'protection replaced'
  | 'done although withheld';

export const CAUTION: Readonly<Record<CautionCode, readonly [Severity, string]>> = {
  'reading above the allowable pressure': [
    'danger',
    "The gas gauge shows more than the allowable pressure of the accumulator. Make it safe by the maker's method before " +
      'any other work; do not heat it.',
  ],
  'target above the allowable pressure': [
    'danger',
    'At this temperature the target itself is above the allowable pressure. Do not fill. Let the accumulator cool and ' +
      'check the specification.',
  ],
  'stop pressure above the allowable pressure': [
    'danger',
    'Filling to the target with its settling allowance would pass the allowable pressure. No stop pressure is given.',
  ],
  'nitrogen only': [
    'danger',
    'Charge with nitrogen only, never with oxygen or air: with oil they can explode. Check the label and the connection ' +
      'of the bottle.',
  ],
  'stored pressure': [
    'danger',
    'An accumulator is a pressure vessel and stays charged when the system is shut down. Never loosen a part of it under ' +
      'pressure. Bottle, regulator, hose and gauge must be rated for the pressure.',
  ],
  'secure and drain': [
    'danger',
    'Before reading or charging: stop and secure the engine against starting, isolate the accumulator, drain the oil side ' +
      'and verify that it is at zero.',
  ],
  asphyxiation: [
    'danger',
    'Nitrogen displaces air without warning. Ventilate, vent to a safe place, and measure oxygen before entering a closed ' +
      'space.',
  ],
  'maker decides': [
    'caution',
    "The maker's manual, class rules, local codes and licensed practice decide. These numbers are an aid to competent " +
      'persons and replace none of them.',
  ],
  'empty gas side': [
    'danger',
    'Do not fill an empty gas side before the cause is found: through a torn separator gas blows into the oil.',
  ],
  'large loss': [
    'caution',
    'More than half of the gas is missing. That is no slow loss: find where it went before filling, and confirm the ' +
      'reading with a second gauge.',
  ],
  'not comparable': [
    'caution',
    'Without full evidence (oil side drained and zero verified, gas known, at rest) a reading says nothing about the ' +
      'pre-charge. Neither fill nor vent on it.',
  ],
  'no mark to stop at': [
    'caution',
    'No mark of this gauge lies where filling or venting should stop. Use a gauge with a finer scale.',
  ],
  'table and nominal point disagree': [
    'caution',
    "The maker's table and its nominal point differ by more than the printed step. The table is the target; ask the maker " +
      'which is meant.',
  ],
  'model uncertainty not stated': [
    'note',
    'The source of the gas model states no uncertainty of density for this pressure and temperature.',
  ],
  'certificate past due': [
    'caution',
    'The certificate of an instrument was past its due date on the day of the reading. Its correction and uncertainty may ' +
      'no longer hold: have it calibrated.',
  ],
  'reading high on the scale': [
    'note',
    'The reading lies above three quarters of the scale of the gauge, which is more than a gauge under steady pressure is ' +
      'meant for. Use one with a higher scale.',
  ],
  'common shift': [
    'caution',
    'Readings taken with one gauge are off together. Suspect the gauge, its unit, its calibration and the thermometer ' +
      'before as many leaks: compare them with others before gas is added or vented anywhere.',
  ],
  'slip possible': [
    'caution',
    'In another unit or basis the reading would be right. Neither add nor vent on it: followed as it is, it may overfill ' +
      'the accumulator. Read number, unit and basis again, on gauge and thermometer.',
  ],
  'bottle above its rating': [
    'danger',
    'Referred to 15 °C, the pressure of a bottle is above its rating. Do not use or move it, keep away from it and from ' +
      'heat, and call its supplier.',
  ],
  'bottle of another gas': [
    'danger',
    'The label of a bottle names another gas than the charge gas. Do not connect it; set it apart. The colour of a bottle ' +
      'is no proof of what is in it.',
  ],
  'above the rating of kit or regulator': [
    'danger',
    'A bottle, or a pressure wanted, is above what the charging kit or the regulator may hold. Do not connect them; use ' +
      'a kit and a regulator that are rated for it.',
  ],
  'booster needed': [
    'caution',
    'A pressure wanted is above every bottle: gas does not flow uphill. A booster, worked by its own manual, or a bottle of ' +
      'higher pressure is needed.',
  ],
  'settled pressures': [
    'note',
    'The plan counts every vessel at its own constant temperature: its pressures are those after settling. While gas flows ' +
      'the accumulator is warmer and the bottle colder, and gauges show otherwise.',
  ],
  'stop may settle high': [
    'caution',
    'If the gas gives or takes its heat before the stop, it settles above the band. Wait, read again, and bleed down.',
  ],
  'stop may settle low': [
    'caution',
    'If the gas keeps the heat of compression until the stop, it settles below the band. Wait, read again, and fill again.',
  ],
  'computed stop': [
    'caution',
    'This stop goes beyond what the specification allows for settling, on the statement that it permits a computed one. ' +
      "Hold that against the maker's manual, and never pass the allowable pressure.",
  ],
  'hot gas above the allowable pressure': [
    'danger',
    'At the hottest temperature stated the gas alone would be above the allowable pressure of the accumulator. Do not ' +
      'leave it so: ask the maker for a lower pre-charge, or keep it cool.',
  ],
  'oxygen below the limit': [
    'danger',
    'After this release oxygen falls below the limit that was stated. Nobody stays in the space, and nobody enters it, ' +
      'not even to help, without breathing apparatus and somebody outside.',
  ],
  'measure oxygen': [
    'danger',
    'A computed oxygen fraction never clears a space. Ventilate, and measure oxygen at several heights, before and while ' +
      'anybody is inside, by the rules for enclosed spaces. Cold gas lies low.',
  ],
  'stored energy': [
    'danger',
    'All of this energy is set free at once if the vessel bursts. No safe distance follows from the number: distances and ' +
      'barriers are for codes and licensed persons to decide.',
  ],
  'rating too low': [
    'danger',
    'A part is rated for less than the pressure that it may see. Do not connect it; do not open the bottle.',
  ],
  'gas not known': [
    'danger',
    'A gas that is not known to be nitrogen may be air or oxygen, which can explode with oil. Add nothing to it. ' +
      "Depressurise by the maker's method, purge, recharge.",
  ],
  'purged by calculation': [
    'caution',
    'The fraction left is computed for gas that mixes fully at each filling. In a narrow gas side it may not: wait between ' +
      'filling and venting, and have what is left analysed where it matters.',
  ],
  'leak may not show': [
    'caution',
    'A test that shows no leak has shown no more than that it is smaller than the least that the test can show.',
  ],
  'work without evidence': [
    'caution',
    'This order was made before a reading: it says what is wanted, and the reading decides what is done.',
  ],
  'protection replaced': [
    'danger',
    'A step that protects people was left out and replaced by something else. Who decides on this work must know it and ' +
      'agree.',
  ],
  'done although withheld': [
    'danger',
    'Gas was added or vented although the order withheld it. Nothing is known of this accumulator: make it safe, and check ' +
      'it again from the beginning.',
  ],
};

/**
 * The caution of a code, with the library's words or one's own.
 *
 * @throws {@link Fault} `unknown word` for a code that there is not; `words not sound` for words that are no texts
 * @example
 * ```ts
 * caution('asphyxiation').severity; // => 'danger'
 * caution('asphyxiation', { asphyxiation: 'Stickstoff verdrängt Luft.' }).text; // => 'Stickstoff verdrängt Luft.'
 * ```
 */
export function caution(code: CautionCode, words?: Readonly<Partial<Record<CautionCode, string>>>): Caution {
  needCode(CAUTION, code, 'code');
  const [severity, text] = CAUTION[code];
  return { code, severity, text: ownText(ownField(words, code, 'words'), 'words') ?? text };
}

/** The cautions that belong to every round of checks, whatever the readings. */
export const USUAL: readonly CautionCode[] = [
  'secure and drain',
  'nitrogen only',
  'stored pressure',
  'asphyxiation',
  'maker decides',
];
