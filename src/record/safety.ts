// Numbers about what can hurt in a judged round: by specification, of gas at its upper limit, and of a release into a room.
import { collect, under, type Problem } from '../basis/fault.js';
import type { CautionCode } from '../basis/caution.js';
import { has } from '../basis/has.js';
import type { Trace } from '../basis/relation.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import { amountOf } from '../quantity/kind.js';
import type { PressureUnit } from '../quantity/unit.js';
import { pressureWhenHot, type Hot } from '../safety/hot.js';
import { leakTest, type LeakShown } from '../safety/leak.js';
import { oxygenAfterRelease, type Release } from '../safety/oxygen.js';
import { purge, type Purged } from '../safety/purge.js';
import { ratings, type ChargingLine, type Ratings } from '../safety/ratings.js';
import { storedEnergy, type StoredEnergy } from '../safety/stored-energy.js';
import type { Specification } from '../target/specification.js';
import { band } from '../verdict/band.js';
import type { Read } from '../verdict/compare.js';
import type { Judged } from './accumulator.js';
import type { AdmittedSafety } from './admit-safety.js';
import { add, type Findings } from './problems.js';
import type { SafetyJson } from './safety-shape.js';
import { codesOf, energyJson, hotJson, leakJson, purgeJson, ratingsJson } from './write-safety.js';

/** The safety numbers of a round, and the cautions that belong to them. */
export interface Safety {
  readonly json: SafetyJson;
  readonly cautions: readonly CautionCode[];
}

/** A specification that accumulators of the round follow, by its name and in the unit of the first that follows it. */
export interface Followed {
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
  admitted: AdmittedSafety,
  judged: readonly Judged[],
  bottles: readonly Holds[],
  findings: Findings,
): Safety | undefined {
  const problems: Problem[] = [];
  const found = collect(problems, '', (): Safety => {
    const followed = followedIn(judged);
    const specifications = followed.map((one) => ({ one, ...numbersOf(admitted, one, judged) }));
    const { room } = admitted;
    const releases = room === undefined ? [] : releasesOf(room, followed, bottles);
    return {
      json: {
        specifications: specifications.map(({ one, hot, energy, rated, leak, purged }) => ({
          specification: one.name,
          ...(hot && { hot: hotJson(hot, one.unit) }),
          ...(energy && { energy: energyJson(energy) }),
          ...(rated && { ratings: ratingsJson(rated, one.unit) }),
          ...(leak && { leakTest: leakJson(leak, one.unit) }),
          ...(purged && { purge: purgeJson(purged) }),
        })),
        releases: releases.map(({ json }) => json),
      },
      cautions: [
        ...specifications.flatMap(({ hot, energy, rated, leak, purged }) =>
          [hot, energy, rated, leak, purged].flatMap(codesOf),
        ),
        ...releases.flatMap(({ json }) => json.cautions),
      ],
    };
  });
  add(findings, '$.safety', problems.map(inDocument));
  return found;
}

/** The numbers of one specification; undefined is what the round does not ask for. */
interface Numbers {
  readonly hot: Hot | undefined;
  readonly energy: StoredEnergy | undefined;
  readonly rated: Ratings | undefined;
  readonly leak: LeakShown | undefined;
  readonly purged: Purged | undefined;
}

/** The numbers of one specification, as far as the round states what they rest on. */
export function numbersOf(
  { hottest, inService, line, leakTest: test, purge: purging }: Omit<AdmittedSafety, 'room'>,
  { name, spec, fullest }: Pick<Followed, 'name' | 'spec' | 'fullest'>,
  judged: readonly Judged[],
  trace?: Trace,
): Numbers {
  const hot = hottest && pressureWhenHot(spec, 'upper limit', hottest, trace);
  const energy = inService && storedEnergy(spec, fullest, inService, trace);
  const rated =
    line && under('line', () => ratings({ ...line, vessel: vesselOf({ name, spec, fullest }, hot, judged) }, trace));
  const leak = test && leakTest(spec, fullest, test, trace);
  const { gas, gasVolume } = spec;
  const purged = purging && under('purge', () => purge({ ...purging, gas, gasVolume }, trace));
  return { hot, energy, rated, leak, purged };
}

export function followedIn(judged: readonly Judged[]): Followed[] {
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
  { name, spec, fullest }: Pick<Followed, 'name' | 'spec' | 'fullest'>,
  hot: Hot | undefined,
  judged: readonly Judged[],
): ChargingLine['vessel'] {
  const stops = judged
    .filter(({ whose }) => whose.specification === name)
    .flatMap(({ asFound, asLeft }) => {
      const { charge } = (asLeft ?? asFound).check;
      return has(charge, 'stop') && charge.stop.action === 'stop' ? [charge.stop.pressure] : [];
    });
  const pressure = [fullest.pressure, ...(hot ? [hot.pressure] : []), ...stops].reduce((a, b) =>
    b.pascals > a.pascals ? b : a,
  );
  return { allowable: spec.allowable, pressure };
}

/** The accumulator and the bottle that hold most. */
export function releasedIn(
  followed: readonly Holds[],
  bottles: readonly Holds[],
): readonly (Holds & { readonly of: 'accumulator' | 'bottle' })[] {
  const largest = (of: 'accumulator' | 'bottle', list: readonly Holds[]) => {
    const [first] = [...list].sort((a, b) => b.moles - a.moles);
    return first === undefined ? [] : [{ of, name: first.name, moles: first.moles }];
  };
  return [...largest('accumulator', followed), ...largest('bottle', bottles)];
}

/** All of a gas let out into the room of a round. */
export function releaseOf(room: NonNullable<AdmittedSafety['room']>, moles: number): Release {
  return { ...room, gas: nitrogen, released: amountOf(moles) };
}

function releasesOf(
  room: NonNullable<AdmittedSafety['room']>,
  followed: readonly Followed[],
  bottles: readonly Holds[],
): { readonly json: SafetyJson['releases'][number] }[] {
  return releasedIn(followed, bottles).flatMap(({ of, name, moles }) => {
    const found = under('room', () => oxygenAfterRelease(releaseOf(room, moles)));
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

/** What the core says, under the path that it has in the document. */
function inDocument(one: Problem): Problem {
  const path = one.path
    .replace(/^room\.room\b/, 'room.volume')
    .replace(/^room\.(conditions|ventilation)\b/, 'room')
    .replace(/^test\b/, 'leakTest')
    .replace(/^leakTest\.gaugeStep\.step$/, 'leakTest.gaugeStep.value');
  return { ...one, path };
}
