import { needCode, ownField, ownText } from '../basis/own-words.js';

/** What readings say while the gas settles, by stable codes. */
export type SettlingOutcome =
  | 'no change seen'
  | 'warming'
  | 'levelling out'
  | 'cooling or losing gas'
  | 'not levelling out'
  | 'falls further than by cooling'
  | 'rises after filling'
  | 'falls after letting out'
  | 'rises and falls';

/** Codes of what readings say while the gas settles, those of a time constant included. */
export type SettlingCode = SettlingOutcome | 'settles before it is read' | 'no single time constant';

export const SETTLING: Readonly<Record<SettlingCode, string>> = {
  'no change seen': 'the readings differ by less than the step of the gauge: a slower change would not be seen',
  warming: 'the pressure rises: the gas is warming after it expanded; read again before it is judged',
  'levelling out': 'the change slows down: the gas approaches the temperature of the shell',
  'cooling or losing gas':
    'the pressure falls, and the readings do not tell cooling from a loss of gas: read on until it levels out',
  'not levelling out':
    'the change does not slow down as that of gas which settles would: gas is passing somewhere; look for a leak with ' +
    'liquid before any more is added',
  'falls further than by cooling':
    'the pressure has fallen by more than cooling can explain: gas is being lost; look for a leak with liquid',
  'rises after filling':
    'the pressure rises though gas that was added can only cool: a valve passes gas, the shell is being heated, or oil ' +
    'comes in behind the separator',
  'falls after letting out':
    'the pressure falls though gas that has expanded can only warm: gas is being lost, or the shell is cooling',
  'rises and falls': 'the readings go both ways by more than the step of the gauge: nothing can be said from them',
  'settles before it is read': 'the gas had settled before the second reading: read sooner and more often',
  'no single time constant':
    'no single time constant passes the readings within half a step of the gauge: leave out the first minutes, or state a ' +
    'coarser step',
};

/**
 * What readings say while the gas settles, in words.
 *
 * @param own words in place of the library's
 * @throws {@link Fault} `unknown word` for a code that there is not; `words not sound` for words that are no texts
 * @example
 * ```ts
 * settlingText('levelling out'); // => 'the change slows down: the gas approaches the temperature of the shell'
 * ```
 */
export function settlingText(code: SettlingCode, own?: Readonly<Partial<Record<SettlingCode, string>>>): string {
  needCode(SETTLING, code, 'code');
  return ownText(ownField(own, code, 'own'), 'own') ?? SETTLING[code];
}
