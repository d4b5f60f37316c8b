// The round as a whole: what the readings as found that were taken with one gauge and one thermometer say together.
import { has } from '../basis/has.js';
import type { PressureUnit } from '../quantity/unit.js';
import { together, type Estimate, type RoundReading } from '../verdict/together.js';
import type { PressureDifference } from '../quantity/kind.js';
import type { Judged } from './accumulator.js';
import type { TogetherJson } from './certainty-shape.js';
import { namesOf } from './instruments.js';
import { differenceJson, temperatureDifferenceJson } from './quantities.js';

/** One entry for each gauge and the thermometer beside it, in the order of the round. */
export function wholeRound(judged: readonly Judged[]): TogetherJson[] {
  const by = new Map<string, Judged[]>();
  for (const one of judged) {
    const { pressure, temperature } = namesOf(one.asFound.admitted.used) ?? {};
    if (pressure === undefined) continue;
    const key = JSON.stringify([pressure, temperature]);
    const others = by.get(key);
    if (others === undefined) by.set(key, [one]);
    else others.push(one);
  }
  return [...by.values()].flatMap(ofOneGauge);
}

function ofOneGauge(judged: readonly Judged[]): TogetherJson[] {
  const [first] = judged;
  const { pressure: gauge, temperature: thermometer } = (first && namesOf(first.asFound.admitted.used)) ?? {};
  if (first === undefined || gauge === undefined) return [];
  const readings = judged.map(({ asFound: { admitted, spec, measuring } }): RoundReading => {
    const { reading } = admitted;
    if (measuring === undefined || has(measuring, 'lacking')) return { spec, reading };
    return { spec, reading, instruments: measuring.instruments };
  });
  const found = together(readings);
  const readWith = {
    gauge,
    ...(thermometer === undefined ? {} : { thermometer }),
    readings: readings.length,
    leftOut: found.leftOut.length,
  };
  if (found.outcome === 'too few readings') return [{ ...readWith, outcome: found.outcome, needed: found.needed }];
  const { outcome, shift, candidates } = found;
  const { unit } = first.asFound.admitted.reading.gaugeStep;
  const degrees = first.asFound.admitted.given.temperature.unit;
  const notExplained = found.readings.filter(({ explained }) => outcome === 'common shift' && !explained);
  return [
    {
      ...readWith,
      outcome,
      shift: {
        ratio: { ...shift.ratio },
        difference: estimateJson(shift.difference, unit),
        temperature: {
          value: temperatureDifferenceJson(shift.temperature.value, degrees),
          standard: temperatureDifferenceJson(shift.temperature.standard, degrees),
        },
        better: shift.better,
        explains: shift.explains,
        instruments: shift.instruments,
      },
      candidates: candidates.map(({ slip, remaining, explains }) => ({
        slip: { ...slip },
        remaining: estimateJson(remaining, unit),
        explains,
      })),
      notExplained: notExplained.flatMap(({ index }) => {
        const one = judged[index];
        return one === undefined ? [] : [{ group: one.whose.group, name: one.whose.name }];
      }),
    },
  ];
}

function estimateJson({ value, standard }: Estimate<PressureDifference>, unit: PressureUnit) {
  return { value: differenceJson(value, unit), standard: differenceJson(standard, unit) };
}
