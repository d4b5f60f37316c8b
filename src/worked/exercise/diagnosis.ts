// Exercises of diagnosis: readings that look wrong, and what is behind them. The library's own functions say that the case
// is what it is meant to be; if they do not, other numbers are drawn.
import { has } from '../../basis/has.js';
import type { GasModel } from '../../gas/model.js';
import { gauge, pressureDifference } from '../../quantity/pressure.js';
import { temperature } from '../../quantity/temperature.js';
import { roundTo, valueIn } from '../../quantity/step.js';
import type { GaugePressure } from '../../quantity/kind.js';
import type { Reading } from '../../reading/reading.js';
import { settlingCurve } from '../../settling/cooling.js';
import { specification, type Specification } from '../../target/specification.js';
import { target } from '../../target/target.js';
import { judge } from '../../verdict/judge.js';
import { slips } from '../../verdict/slips.js';
import { together } from '../../verdict/together.js';
import { drawnAt, drawnGiven, statedValues } from './arithmetic.js';
import type { Draw } from './draw.js';
import type { Diagnosis, DiagnosisExercise, Fact } from './exercise.js';

const ALL: readonly Diagnosis[] = [
  'not drained',
  'cold after draining',
  'unit slip',
  'shifted gauge',
  'torn separator',
];

/** What a case is made of; undefined where the numbers drawn do not show it. */
type Case = (spec: Specification, reading: Reading, draw: Draw) => Made | undefined;

interface Made {
  readonly facts: readonly Fact[];
  /** The reading that looks wrong. */
  readonly reading: Reading;
}

export function diagnosisExercise(topic: Diagnosis, gas: GasModel, draw: Draw): DiagnosisExercise {
  for (;;) {
    const spec = specification(drawnGiven(gas, draw));
    const made = CASES[topic](spec, soundReading(spec, draw), draw);
    if (made === undefined) continue;
    const choices = draw.shuffled(ALL);
    const { facts, reading } = made;
    const tolerance = has(spec.tolerance, 'plusMinus') ? spec.tolerance.plusMinus : pressureDifference(0, 'bar');
    const stated: readonly Fact[] = [
      { code: 'stated', values: statedValues(spec) },
      { code: 'tolerance', values: { tolerance } },
    ];
    const judged = { spec, reading, verdict: judge(spec, reading) };
    return { topic, facts: [...stated, ...facts], choices, answer: choices.indexOf(topic), judged };
  }
}

/** On the target, on full evidence, read to the bar. */
function soundReading(spec: Specification, draw: Draw): Reading {
  const at = drawnAt(spec, draw);
  return {
    ...at,
    pressure: toBar(target(spec, at)),
    gaugeStep: { step: 1, unit: 'bar' },
    oilSide: 'drained, zero verified',
    gasInside: 'nitrogen',
    minutesAtRest: 60,
  };
}

const toBar = (pressure: GaugePressure): GaugePressure =>
  roundTo(pressure, { step: 1, unit: 'bar', toward: 'nearest even' });

const readAt = ({ temperature: T }: Reading): Fact => ({ code: 'gas temperature', values: { temperature: T } });
const reads = ({ pressure }: Reading): Fact => ({ code: 'reading', values: { pressure } });
const fact = (code: Fact['code'], values: Fact['values'] = {}): Fact => ({ code, values });

const CASES: Readonly<Record<Diagnosis, Case>> = {
  'not drained': (spec, sound, draw) => {
    const systemPressure = gauge(draw.number(195, 260, 5), 'bar');
    const reading: Reading = { ...sound, pressure: systemPressure, systemPressure, oilSide: 'not known' };
    if (judge(spec, reading).outcome !== 'not comparable') return undefined;
    return {
      reading,
      facts: [
        fact('nothing of the oil side'),
        fact('system pressure', { pressure: systemPressure }),
        readAt(reading),
        reads(reading),
      ],
    };
  },

  'cold after draining': (spec, sound, draw) => {
    // Oil that leaves fast leaves the gas this much colder than its shell; it warms again with a time constant.
    const colder = draw.number(10, 18, 1);
    const shell = sound.temperature;
    const cold = { temperature: temperature(shell.kelvins - colder, 'K'), ambient: sound.ambient };
    const { points } = settlingCurve(
      spec,
      { ...cold, pressure: target(spec, cold) },
      {
        shell,
        timeConstantMinutes: draw.number(4, 7, 1),
        minutes: [1, 5, 15, 40],
        within: pressureDifference(0.5, 'bar'),
      },
    );
    const shown = points.map(({ minutes, pressure }) => ({ minutes, pressure: toBar(pressure) }));
    const [first, last] = [shown[0], shown.at(-1)];
    if (first === undefined || last === undefined) return undefined;
    const reading: Reading = { ...sound, pressure: first.pressure, minutesAtRest: first.minutes };
    // By its pressure alone the first would be too low, and the last is right.
    const low = judge(spec, { ...reading, minutesAtRest: 60 }).outcome;
    if (low !== 'undercharged' || judge(spec, { ...sound, pressure: last.pressure }).outcome !== 'within')
      return undefined;
    return {
      reading,
      facts: [
        fact('drained'),
        readAt(reading),
        ...shown.map(({ minutes, pressure }) => fact('minutes after draining', { minutes, pressure })),
      ],
    };
  },

  'unit slip': (spec, sound, draw) => {
    const ofTemperature = draw.one([true, false]);
    const reading: Reading = ofTemperature
      ? { ...sound, temperature: temperature(Math.round(valueIn(sound.temperature, '°F')), '°C') }
      : { ...sound, pressure: gauge(Math.round(valueIn(sound.pressure, 'kgf/cm2')), 'bar') };
    const { candidates } = slips(spec, reading);
    const [first] = candidates;
    const found = first?.slips.length === 1 ? first.slips[0] : undefined;
    const meant = ofTemperature ? 'unit of temperature' : 'unit of pressure';
    const verdict = judge(spec, reading).outcome;
    if (found?.code !== meant || (verdict !== 'undercharged' && verdict !== 'overcharged')) return undefined;
    const noted = ofTemperature
      ? [fact('noted temperature', { temperature: reading.temperature }), reads(reading)]
      : [readAt(reading), fact('noted pressure', { pressure: reading.pressure })];
    return { reading, facts: [fact('drained'), fact('at rest'), ...noted, fact('others within')] };
  },

  'shifted gauge': (spec, sound, draw) => {
    const by = draw.number(4, 7, 1);
    // Each accumulator is a bar off by itself at most, and one leaks.
    const own = [0, 1, 0, -1, 0, 0, 1, -1, 0];
    const leaking = draw.number(0, own.length - 1, 1);
    const readings = draw.shuffled(own).map((off, i): Reading => {
      const lost = i === leaking ? 14 : 0;
      return { ...sound, pressure: toBar(gauge(valueIn(sound.pressure, 'bar') + by + off - lost, 'bar')) };
    });
    const found = together(readings.map((reading) => ({ spec, reading })));
    const reading = readings.find((one) => judge(spec, one).outcome === 'overcharged');
    if (found.outcome !== 'common shift' || reading === undefined) return undefined;
    return {
      reading,
      facts: [
        fact('drained'),
        fact('at rest'),
        fact('one gauge'),
        readAt(reading),
        ...readings.map(({ pressure }, i) => fact('one of the round', { name: String(i + 1), pressure })),
      ],
    };
  },

  'torn separator': (spec, sound, draw) => {
    const systemPressure = gauge(draw.number(195, 260, 5), 'bar');
    const reading: Reading = { ...sound, pressure: gauge(0, 'bar') };
    const verdict = judge(spec, reading);
    if (verdict.outcome !== 'gas side empty' || !verdict.causes.includes('separator torn')) return undefined;
    return {
      reading,
      facts: [
        fact('charged lately', { days: draw.number(2, 6, 1) }),
        fact('drained'),
        readAt(reading),
        reads(reading),
        fact('follows the system', { pressure: systemPressure }),
        fact('oil at the gas valve'),
      ],
    };
  },
};
