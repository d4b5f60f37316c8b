// What an adjustment card of the invented accumulator shows, to be varied in one place at a time.
import { standardAtmosphere, temperatureDifference } from 'isochore';
import { english, type CardGiven, type Language } from 'isochore/worked';
import { celsius } from './accumulator.js';

/** From 0 °C to 60 °C every 5 K, to the marks of a gauge read to 0.5 bar. */
export const cardGiven = (language: Language = english): CardGiven => ({
  name: 'exhaust valve drive',
  manual: 'instruction book, chapter 7',
  from: celsius(0),
  to: celsius(60),
  every: temperatureDifference(5, 'K'),
  temperatureStep: { step: 1, unit: '°C' },
  ambient: standardAtmosphere,
  gaugeStep: { step: 0.5, unit: 'bar' },
  volumeStep: { step: 0.1, unit: 'L' },
  language,
});
