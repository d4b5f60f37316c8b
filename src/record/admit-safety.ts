// What numbers about what can hurt rest on, from JSON. What the numbers mean is checked by the core, when they are made.
import type { QuantityOf } from '../quantity/kind.js';
import type { LeakTest } from '../safety/leak.js';
import type { Release } from '../safety/oxygen.js';
import type { Purge } from '../safety/purge.js';
import type { ChargingLine } from '../safety/ratings.js';
import type { InService, Vessel } from '../safety/stored-energy.js';
import type { Conditions } from '../target/conditions.js';
import { add, shapeProblems, valueAt, type Findings, type Part } from './problems.js';
import { divisionAt, quantityAt } from './quantities.js';
import { SafetyShape, type SafetyGivenJson } from './safety-shape.js';

/** What safety numbers rest on, admitted. */
export interface AdmittedSafety {
  readonly hottest: Conditions | undefined;
  readonly room: Omit<Release, 'gas' | 'released'> | undefined;
  readonly inService: InService | undefined;
  readonly line: Omit<ChargingLine, 'vessel'> | undefined;
  readonly leakTest: LeakTest | undefined;
  readonly purge: Omit<Purge, keyof Vessel> | undefined;
}

/** What a round states of it; undefined if nothing, or nothing sound. */
export function admitSafety(raw: unknown, findings: Findings): AdmittedSafety | undefined {
  const json = valueAt(raw, ['safety']);
  if (json === undefined) return undefined;
  const part: Part = { raw: json, problems: shapeProblems(SafetyShape, json) };
  const at = <K extends Parameters<typeof quantityAt>[2]>(path: string, kind: K): QuantityOf<K> =>
    quantityAt(part, path, kind) as QuantityOf<K>; // where it is undefined there is a problem
  const has = (...path: readonly string[]): boolean => valueAt(json, path) !== undefined;
  const place = (path: string): Conditions => ({
    temperature: at(`${path}.temperature`, 'temperature'),
    ambient: at(`${path}.ambient`, 'absolute pressure'),
  });
  const gauge = (path: string) => at(path, 'gauge pressure');
  const quantities = {
    hottest: has('hottest') ? place('hottest') : undefined,
    room: has('room') ? { room: at('room.volume', 'volume'), conditions: place('room') } : undefined,
    inService: has('inService')
      ? { systemPressure: gauge('inService.systemPressure'), temperature: at('inService.temperature', 'temperature') }
      : undefined,
    line: has('line')
      ? {
          bottle: { rating: gauge('line.bottle.rating'), pressure: gauge('line.bottle.pressure') },
          regulator:
            valueAt(json, ['line', 'regulator']) === 'none'
              ? ('none' as const)
              : {
                  inlet: gauge('line.regulator.inlet'),
                  outlet: gauge('line.regulator.outlet'),
                  setTo: gauge('line.regulator.setTo'),
                },
          relief:
            valueAt(json, ['line', 'relief']) === 'none' ? ('none' as const) : { opens: gauge('line.relief.opens') },
          hose: { rating: gauge('line.hose.rating') },
          gauge: { fullScale: gauge('line.gauge.fullScale') },
        }
      : undefined,
  };
  const bubbles = !has('leakTest')
    ? undefined
    : {
        lossPerYear: at('leakTest.lossPerYear', 'pressure difference'),
        bubble: at('leakTest.bubble', 'volume'),
        gaugeStep: divisionAt(part, 'leakTest.gaugeStep') as LeakTest['gaugeStep'],
      };
  const purged = !has('purge')
    ? undefined
    : {
        high: at('purge.high', 'absolute pressure'),
        low: at('purge.low', 'absolute pressure'),
        temperature: at('purge.temperature', 'temperature'),
      };
  add(findings, '$.safety', part.problems);
  if (part.problems.length > 0) return undefined;
  const { room, leakTest, purge } = json as SafetyGivenJson;
  return {
    ...quantities,
    room: quantities.room && room && { ...quantities.room, ...releaseOf(room) },
    leakTest: bubbles && leakTest && { ...leakTest, ...bubbles },
    purge: purged && purge && { ...purge, ...purged },
  };
}

function releaseOf(
  room: NonNullable<SafetyGivenJson['room']>,
): Pick<Release, 'minutes' | 'ventilation' | 'oxygenBefore' | 'limit'> {
  const { minutes, airChangesPerHour, oxygenBefore, limit } = room;
  const ventilation = airChangesPerHour === 'none' ? airChangesPerHour : { airChangesPerHour };
  return { minutes, ventilation, oxygenBefore, limit: { ...limit } };
}
