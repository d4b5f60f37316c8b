// What a round states of a gauge or thermometer for the sake of uncertainty: the shape, and the way from it to what the
// core takes. Number and due date of a certificate stand with the instrument, as for every other; what the certificate says
// of its accuracy stands here.
import * as z from 'zod/mini';
import { collect, problem, type Problem } from '../basis/fault.js';
import { missing, notADate, notOneOf } from '../basis/problem.js';
import type { QuantityOf } from '../quantity/kind.js';
import type { Certificate } from '../reading/certificate.js';
import { needGauge, type DialGauge, type DigitalGauge } from '../reading/gauge.js';
import { needThermometer, type Thermometer } from '../reading/thermometer.js';
import { gaugePressure, name, pressureDifference, temperature, temperatureDifference } from './measured.js';
import { valueAt, type Part } from './problems.js';
import { quantityAt } from './quantities.js';

type Difference = typeof pressureDifference | typeof temperatureDifference;

/** As a certificate states it. Needs the due date of the instrument. */
const certified = <D extends Difference>(difference: D) => ({
  correction: z.optional(difference),
  expandedUncertainty: z.optional(difference),
  coverageFactor: z.optional(z.number()),
});

const thermometer = {
  accuracy: z.strictObject({ limit: z.optional(temperatureDifference), ...certified(temperatureDifference) }),
  step: temperatureDifference,
  shellToGas: temperatureDifference,
};

/** In one of the ways that the core knows: exactly one of those that may be left out in `accuracy`. */
const CharacteristicsShape = z.discriminatedUnion('type', [
  z.strictObject({
    type: z.literal('dial gauge'),
    fullScale: gaugePressure,
    accuracy: z.strictObject({
      accuracyClass: z.optional(z.number()),
      limit: z.optional(pressureDifference),
      ...certified(pressureDifference),
    }),
    zero: z.enum(['with stop pin', 'without stop pin']),
  }),
  z.strictObject({
    type: z.literal('digital gauge'),
    fullScale: gaugePressure,
    accuracy: z.strictObject({
      percentOfReading: z.optional(z.number()),
      percentOfSpan: z.optional(z.number()),
      digits: z.optional(z.number()),
      ...certified(pressureDifference),
    }),
    temperatureInfluence: z.union([
      z.strictObject({ from: temperature, percentOfSpanPerKelvin: z.number() }),
      z.literal('not known'),
    ]),
  }),
  z.strictObject({ type: z.literal('contact thermometer'), ...thermometer }),
  z.strictObject({
    type: z.literal('infrared thermometer'),
    ...thermometer,
    emissivity: z.strictObject({ assumed: z.number(), limit: z.number() }),
    surroundings: temperature,
  }),
]);

/** An instrument of a round. */
export const InstrumentShape = z.strictObject({
  name,
  /** Such as `pressure gauge`. */
  kind: name,
  /** Number of its certificate. */
  certificate: z.optional(name),
  /** When its calibration is due: readings after that day carry a caution. */
  due: z.optional(z.iso.date()),
  /** Scale and accuracy, for an uncertainty. */
  characteristics: z.optional(CharacteristicsShape),
});

/** An instrument as listed. */
export type InstrumentJson = z.infer<typeof InstrumentShape>;

/** What an instrument can measure with a known accuracy. */
export type Characterised =
  { readonly gauge: DialGauge | DigitalGauge } | { readonly thermometer: Thermometer } | undefined;

const CERTIFIED = ['correction', 'expandedUncertainty', 'coverageFactor'] as const;
const LIMIT = ['limit'] as const;
const WAYS: Readonly<Record<string, readonly (readonly string[])[]>> = {
  'dial gauge': [['accuracyClass'], LIMIT, CERTIFIED],
  'digital gauge': [['percentOfReading', 'percentOfSpan', 'digits'], CERTIFIED],
  'contact thermometer': [LIMIT, CERTIFIED],
  'infrared thermometer': [LIMIT, CERTIFIED],
};

/** The characteristics of an instrument whose shape is sound, with the problems of them added; undefined if there are none. */
export function admitCharacteristics(part: Part): Characterised {
  const { raw, problems } = part;
  const json = valueAt(raw, ['characteristics']) as InstrumentJson['characteristics'];
  const due = valueAt(raw, ['due']) as InstrumentJson['due'];
  if (json === undefined) return undefined;
  problems.push(...accuracyProblems(json.type, json.accuracy, due));
  const isGauge = json.type === 'dial gauge' || json.type === 'digital gauge';
  const kind = isGauge ? 'pressure difference' : 'temperature difference';
  const at = <K extends Parameters<typeof quantityAt>[2]>(path: string, of: K): QuantityOf<K> =>
    quantityAt(part, `characteristics.${path}`, of) as QuantityOf<K>; // where it is undefined there is a problem
  const value = (path: string): unknown => valueAt(raw, ['characteristics', ...path.split('.')]);
  const has = (field: string): boolean => value(`accuracy.${field}`) !== undefined;
  const accuracy = has('accuracyClass')
    ? { accuracyClass: value('accuracy.accuracyClass') }
    : has('limit')
      ? { limit: at('accuracy.limit', kind) }
      : has('digits')
        ? (value('accuracy') as object)
        : {
            certificate: {
              correction: at('accuracy.correction', kind),
              expandedUncertainty: at('accuracy.expandedUncertainty', kind),
              coverageFactor: value('accuracy.coverageFactor'),
              due,
            } as Certificate<never>,
          };
  const whole = { ...gaugeOrThermometer(json, at), accuracy: { ...accuracy } };
  if (problems.length > 0) return undefined;
  const found: Problem[] = [];
  if (isGauge) {
    const gauge = whole as unknown as DialGauge | DigitalGauge;
    collect(found, '', () => needGauge(gauge));
    // It stands at its reference here: what is wrong with that is said of the reference.
    problems.push(...found.filter(({ path }) => path !== 'temperature.is').map(inDocument));
    return { gauge };
  }
  const asked = whole as unknown as Thermometer;
  collect(found, '', () => needThermometer(asked));
  problems.push(...found.map(inDocument));
  return { thermometer: asked };
}

type At = <K extends Parameters<typeof quantityAt>[2]>(path: string, of: K) => QuantityOf<K>;
type CharacteristicsJson = NonNullable<InstrumentJson['characteristics']>;

/** All but its accuracy. The temperature of a gauge belongs to the hour: here it stands at its reference. */
function gaugeOrThermometer(json: CharacteristicsJson, at: At): object {
  switch (json.type) {
    case 'dial gauge':
      return {
        type: json.type,
        fullScale: at('fullScale', 'gauge pressure'),
        temperature: 'not known',
        zero: json.zero,
      };
    case 'digital gauge': {
      const { temperatureInfluence: influence } = json;
      const from = at('temperatureInfluence.from', 'temperature');
      return {
        type: json.type,
        fullScale: at('fullScale', 'gauge pressure'),
        temperature:
          influence === 'not known'
            ? influence
            : { is: from, from, percentOfSpanPerKelvin: influence.percentOfSpanPerKelvin },
      };
    }
    case 'contact thermometer':
    case 'infrared thermometer': {
      const { type } = json;
      const own = {
        type,
        step: at('step', 'temperature difference'),
        shellToGas: at('shellToGas', 'temperature difference'),
      };
      if (type === 'contact thermometer') return own;
      return { ...own, emissivity: { ...json.emissivity }, surroundings: at('surroundings', 'temperature') };
    }
  }
}

/** Whether accuracy is stated in exactly one way, and with a due date where that is as a certificate has it. */
function accuracyProblems(type: string, accuracy: object, due: string | undefined): Problem[] {
  const ways = WAYS[type] ?? [];
  const stated = ways.flat().filter((field) => valueAt(accuracy, [field]) !== undefined);
  const form = stated.join(' with ');
  if (!ways.some((way) => way.join(' with ') === form)) {
    const words = ways.map((way) => way.join(' with ')).join('; ');
    return [problem(notOneOf, 'characteristics.accuracy', form === '' ? 'none of them' : form, { words })];
  }
  if (due !== undefined || !stated.includes('correction')) return [];
  return [
    problem(missing, 'due', 'nothing', { wanted: `${notADate.wanted}, for an accuracy as a certificate has it` }),
  ];
}

/** What the core says of a gauge or thermometer, under the path that it has in the document. */
function inDocument(one: Problem): Problem {
  const path = one.path
    .replace(/^accuracy\.certificate\b/, 'accuracy')
    .replace(/^temperature\./, 'temperatureInfluence.');
  return { ...one, path: `characteristics.${path}` };
}
