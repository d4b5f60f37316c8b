import type { ExerciseWords } from './derivation-words.js';

export const ENGLISH_EXERCISE: ExerciseWords = {
  heading: 'Exercise {number}',
  ask: {
    target: 'What must the gas gauge show for the pre-charge to be right at this gas temperature?',
    'gas to add': 'How much nitrogen brings the accumulator to its target at this gas temperature?',
    'gas held': 'How much nitrogen is in the accumulator, its oil side drained?',
    diagnosis: 'The reading looks wrong. What is most likely behind it?',
  },
  facts: {
    stated: 'The pre-charge is stated as {pressure} at {temperature}.',
    tolerance: 'The tolerance is plus or minus {tolerance}.',
    ambient: 'The ambient pressure is {ambient}, then as now.',
    'gas temperature': 'The gas temperature was noted as {temperature}.',
    'gas volume': 'The gas volume is {volume}.',
    nitrogen: 'The gas is nitrogen.',
    'factor as stated': 'As the pre-charge is stated, its compression factor is {factor}.',
    'factor at the target': 'At the target for this gas temperature its compression factor is {factor}.',
    'factor as read': 'As read, its compression factor is {factor}.',
    reading: 'The gas gauge shows {pressure}.',
    drained: 'The oil side is drained and was seen at zero.',
    'system pressure': 'The hydraulic system was last seen at {pressure}.',
    'nothing of the oil side': 'The log says nothing of the oil side.',
    'minutes after draining': '{minutes} min after draining the gas gauge shows {pressure}.',
    'at rest': 'Oil and gas have been at rest for an hour.',
    'noted temperature': 'The log says {temperature} for the shell.',
    'noted pressure': 'The log says {pressure} for the gas gauge, which has two scales.',
    'others within':
      'Every other accumulator of the round, with the same instruments but read by somebody else, is within its band.',
    'one of the round': 'Accumulator {name}: {pressure}.',
    'one gauge': 'One gauge was used for all of them, and all are alike.',
    'charged lately': '{days} days ago the accumulator was charged to its target.',
    'oil at the gas valve': 'Oil comes out of the gas valve.',
    'follows the system': 'When the oil side is put under pressure again, the gas gauge follows it up to {pressure}.',
  },
  diagnoses: {
    'not drained': 'The oil side is not drained: the gauge shows the oil.',
    'cold after draining': 'The gas is still cold from draining.',
    'unit slip': 'A number was noted in another unit than it was read in.',
    'shifted gauge': 'The gauge is off: it shows too much or too little by the same everywhere.',
    'torn separator': 'The separator is torn.',
  },
  reasons: {
    'not drained':
      'The gas gauge agrees with the hydraulic system. Through the separator it shows the pressure of the oil, whatever the pre-charge is. Drain, see zero, wait, read again.',
    'cold after draining':
      'The pressure rises from reading to reading while nobody adds gas, and comes to the target: the gas expanded as the oil left, and warms again. Adding gas now would overcharge it.',
    'unit slip':
      'In one other unit the very number is right, and everything else is right as it is. Look at the instrument again before anything is added or vented.',
    'shifted gauge':
      'Most readings of the round are off by the same. That is the instrument, not as many accumulators at once; only the one far from the rest is a finding of its own. Compare the gauge before anything is vented.',
    'torn separator':
      'Charged a few days ago and empty now, with oil where only gas should be, and a gauge that follows the oil. Gas has gone into the oil: vent the system as the maker says, and do not charge.',
  },
  mistakes: {
    'gauge taken for absolute': 'gauge pressure taken for absolute pressure',
    '°C taken for K': 'degrees Celsius taken for kelvins',
    'ideal gas taken for real': 'nitrogen taken for an ideal gas',
    'temperature not taken into account': 'the pressure of the plate taken as it stands, whatever the temperature',
  },
  choice: '{letter}) {answer}',
  right: 'Right is {letter}: {answer}',
  wrong: '{letter}: {answer}. The mistake: {mistake}.',
  slip: 'Here: {slip}.',
  check: 'The check says: {why}.',
  caution:
    'An exercise with an invented accumulator. For a real one the manual of its maker and the rules of the ship hold.',
};
