// Numbers about what can hurt in a judged round: by specification, of gas at its upper limit, and of a release into a room.
import { collect, under, type Problem } from '../basis/fault.js';
import type { CautionCode } from '../basis/caution.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { amountOf, type QuantityOf } from '../quantity/kind.js';
import type { PressureUnit } from '../quantity/unit.js';
import { pressureWhenHot, type Hot } from '../safety/hot.js';
import { oxygenAfterRelease, type Release } from '../safety/oxygen.js';
import { ratings, type ChargingLine, type Ratings } from '../safety/ratings.js';
import { storedEnergy, type InService, type StoredEnergy } from '../safety/stored-energy.js';
import type { Conditions } from '../target/conditions.js';
import type { Specification } from '../target/specification.js';
import { band } from '../verdict/band.js';
import type { Read } from '../verdict/compare.js';
import type { Judged } from './accumulator.js';
import { add, shapeProblems, valueAt, type Findings, type Part } from './problems.js';
import { differenceJson, gaugeJson, quantityAt, temperatureJson } from './quantities.js';
import { SafetyShape, type SafetyGivenJson, type SafetyJson } from './safety-shape.js';

/** What safety numbers rest on, admitted. */
export interface AdmittedSafety {
  readonly hottest: Conditions | undefined;
  readonly room: Omit<Release, 'gas' | 'released'> | undefined;
  readonly inService: InService | undefined;
  readonly line: Omit<ChargingLine, 'vessel'> | undefined;
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
  add(findings, '$.safety', part.problems);
  if (part.problems.length > 0) return undefined;
  const { room } = json as SafetyGivenJson;
  return { ...quantities, room: quantities.room && room && { ...quantities.room, ...releaseOf(room) } };
}

function releaseOf(
  room: NonNullable<SafetyGivenJson['room']>,
): Pick<Release, 'minutes' | 'ventilation' | 'oxygenBefore' | 'limit'> {
  const { minutes, airChangesPerHour, oxygenBefore, limit } = room;
  const ventilation = airChangesPerHour === 'none' ? airChangesPerHour : { airChangesPerHour };
  return { minutes, ventilation, oxygenBefore, limit: { ...limit } };
}

/** The safety numbers of a round, and the cautions that belong to them. */
export interface Safety {
  readonly json: SafetyJson;
  readonly cautions: readonly CautionCode[];
}

/** A specification that accumulators of the round follow, by its name and in the unit of the first that follows it. */
interface Followed {
  readonly name: string;
  readonly spec: Specification;
  readonly unit: PressureUnit;
  /** Gas at its upper limit, at the reference temperature. */
  readonly fullest: Read;
  readonly moles: number;
}

/** A bottle and the gas in it, mol. */
export interface Holds {
  readonly name: string;
  readonly moles: number;
}

/** Computes what the round states enough for; where the core refuses it, its problems are found. */
export function safetyOf(
  { hottest, room, inService, line }: AdmittedSafety,
  judged: readonly Judged[],
  bottles: readonly Holds[],
  findings: Findings,
): Safety | undefined {
  const problems: Problem[] = [];
  const found = collect(problems, '', (): Safety => {
    const followed = followedIn(judged);
    const specifications = followed.map((one) => {
      const hot = hottest && pressureWhenHot(one.spec, 'upper limit', hottest);
      const energy = inService && storedEnergy(one.spec, one.fullest, inService);
      const rated = line && under('line', () => ratings({ ...line, vessel: vesselOf(one, hot, judged) }));
      return { one, hot, energy, rated };
    });
    const releases = room === undefined ? [] : releasesOf(room, followed, bottles);
    return {
      json: {
        specifications: specifications.map(({ one, hot, energy, rated }) => ({
          specification: one.name,
          ...(hot && { hot: hotJson(hot, one.unit) }),
          ...(energy && { energy: energyJson(energy) }),
          ...(rated && { ratings: ratingsJson(rated, one.unit) }),
        })),
        releases: releases.map(({ json }) => json),
      },
      cautions: [
        ...specifications.flatMap(({ hot, energy, rated }) => [hot, energy, rated].flatMap(codesOf)),
        ...releases.flatMap(({ json }) => json.cautions),
      ],
    };
  });
  add(findings, '$.safety', problems.map(inDocument));
  return found;
}

function followedIn(judged: readonly Judged[]): Followed[] {
  const seen = new Map<string, Followed>();
  for (const { whose, asFound } of judged) {
    if (seen.has(whose.specification)) continue;
    const { spec, reading } = asFound;
    const { referenceTemperature: temperature, ambient } = spec;
    const { upper } = band(spec, { temperature, ambient }, reading.gaugeStep);
    const fullest = { pressure: upper, temperature, ambient };
    const { moles } = storedEnergy(spec, fullest).amount;
    seen.set(whose.specification, { name: whose.specification, spec, unit: reading.gaugeStep.unit, fullest, moles });
  }
  return [...seen.values()];
}

/** The highest that is wanted in a vessel: at its upper limit, when hot, or where a filling stops. */
function vesselOf(
  { name, spec, fullest }: Followed,
  hot: Hot | undefined,
  judged: readonly Judged[],
): ChargingLine['vessel'] {
  const stops = judged
    .filter(({ whose }) => whose.specification === name)
    .flatMap(({ asFound, asLeft }) => {
      const { charge } = (asLeft ?? asFound).check;
      return 'stop' in charge && charge.stop.action === 'stop' ? [charge.stop.pressure] : [];
    });
  const pressure = [fullest.pressure, ...(hot ? [hot.pressure] : []), ...stops].reduce((a, b) =>
    b.pascals > a.pascals ? b : a,
  );
  return { allowable: spec.allowable, pressure };
}

function releasesOf(
  room: NonNullable<AdmittedSafety['room']>,
  followed: readonly Followed[],
  bottles: readonly Holds[],
): { readonly json: SafetyJson['releases'][number] }[] {
  const largest = (list: readonly Holds[]): Holds | undefined =>
    list.reduce<Holds | undefined>(
      (most, one) => (most === undefined || one.moles > most.moles ? one : most),
      undefined,
    );
  const releases = [
    { of: 'accumulator' as const, one: largest(followed) },
    { of: 'bottle' as const, one: largest(bottles) },
  ];
  return releases.flatMap(({ of, one }) => {
    if (one === undefined) return [];
    const { name, moles } = one;
    const found = under('room', () => oxygenAfterRelease({ ...room, gas: nitrogen, released: amountOf(moles) }));
    const { by, ventilation, fraction } = found.lowest;
    return [
      {
        json: {
          of,
          name,
          outcome: found.outcome,
          room: found.room,
          gasVolume: { value: found.gasVolume.cubicMetres, unit: 'm3' as const },
          lowest: { by, ventilation, fraction },
          minutesToLimit: found.minutesToLimit,
          cautions: found.cautions.map(({ code }) => code),
        },
      },
    ];
  });
}

function codesOf(found: { readonly cautions: readonly { readonly code: CautionCode }[] } | undefined): CautionCode[] {
  return found === undefined ? [] : found.cautions.map(({ code }) => code);
}

type BySpecification = SafetyJson['specifications'][number];

function hotJson(hot: Hot, unit: PressureUnit): NonNullable<BySpecification['hot']> {
  const { outcome, pressure, allowable, belowAllowable, mostNow } = hot;
  return {
    outcome,
    pressure: gaugeJson(pressure, unit),
    allowable: gaugeJson(allowable, unit),
    belowAllowable: differenceJson(belowAllowable, unit),
    mostNow: { pressure: gaugeJson(mostNow.pressure, unit), temperature: temperatureJson(mostNow.temperature, '°C') },
    cautions: codesOf(hot),
  };
}

function energyJson(found: StoredEnergy): NonNullable<BySpecification['energy']> {
  const { charged, inService, worse, tnt } = found;
  const of = worse === 'in service' && inService !== 'not asked' ? inService : charged;
  return {
    charged: { value: charged.energy_J, unit: 'J' },
    ...(inService === 'not asked' ? {} : { inService: { value: inService.energy_J, unit: 'J' } }),
    worse,
    governs: of.governs,
    tnt: { value: tnt.kilograms, unit: 'kg' },
    cautions: codesOf(found),
  };
}

function ratingsJson(found: Ratings, unit: PressureUnit): NonNullable<BySpecification['ratings']> {
  return {
    outcome: found.outcome,
    problems: found.problems.map(({ code, part, limit, pressure }) => ({
      code,
      part,
      limit: gaugeJson(limit, unit),
      pressure: gaugeJson(pressure, unit),
    })),
    cautions: codesOf(found),
  };
}

/** What the core says, under the path that it has in the document. */
function inDocument(one: Problem): Problem {
  const path = one.path.replace(/^room\.room\b/, 'room.volume').replace(/^room\.(conditions|ventilation)\b/, 'room');
  return { ...one, path };
}
