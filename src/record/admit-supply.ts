// The supply of a round from JSON: bottles one by one, so that what is wrong with one hides nothing of another; then rig,
// objectives and what can be ordered. What the numbers mean is checked by the core, when the plan is made.
import type { GaugePressure, QuantityOf } from '../quantity/kind.js';
import type { PressureUnit, TemperatureUnit } from '../quantity/unit.js';
import type { WhereToStopGiven } from '../settling/stop.js';
import type { Bottle } from '../supply/bottle.js';
import type { Objective } from '../supply/objective.js';
import type { BottleSize } from '../supply/order.js';
import type { Rig } from '../supply/kit.js';
import { duplicate, nameOf, repeatedNames, shownName } from './named.js';
import { add, isBroken, listAt, shapeProblems, valueAt, type Findings, type Part } from './problems.js';
import { quantityAt } from './quantities.js';
import { BottleShape, SupplyShell, type BottleJson, type SupplyJson } from './supply-shape.js';

/** A bottle, and the units in which it was read. */
export interface AdmittedBottle {
  readonly bottle: Bottle;
  readonly unit: PressureUnit;
  readonly degrees: TemperatureUnit;
}

/** A supply whose parts are sound one by one. */
export interface AdmittedSupply {
  readonly bottles: readonly AdmittedBottle[];
  readonly rig: Rig;
  /** In the kit before each connection; undefined where it is not stated. */
  readonly kitBefore: GaugePressure | undefined;
  readonly leastPurityPercent: number | 'not demanded';
  readonly objectives: readonly Objective[];
  readonly stopping: Omit<WhereToStopGiven, 'supply'>;
  readonly size: BottleSize | undefined;
  readonly reservePercent: number;
}

type Quantities = <K extends Parameters<typeof quantityAt>[2]>(path: string, kind: K) => QuantityOf<K>;

/** The quantities of a part; where one is undefined there is a problem, and the part is not used. */
const quantitiesOf =
  (part: Part): Quantities =>
  (path, kind) =>
    quantityAt(part, path, kind) as QuantityOf<typeof kind>;

/** The supply that a round states; undefined if it states none, or if anything in it is not sound. */
export function admitSupply(raw: unknown, findings: Findings): AdmittedSupply | undefined {
  const path = '$.supply';
  const json = valueAt(raw, ['supply']);
  if (json === undefined) return undefined;
  const before = findings.found;
  const part: Part = { raw: json, problems: shapeProblems(SupplyShell, json) };
  const at = quantitiesOf(part);
  const rig = {
    kit: { volume: at('kit.volume', 'volume'), rated: at('kit.rated', 'gauge pressure') },
    regulator:
      valueAt(json, ['regulator']) === 'none'
        ? ('none' as const)
        : {
            difference: at('regulator.difference', 'pressure difference'),
            ratedInlet: at('regulator.ratedInlet', 'gauge pressure'),
            ratedOutlet: at('regulator.ratedOutlet', 'gauge pressure'),
          },
  };
  const kitBefore = quantityAt(part, 'kit.before', 'gauge pressure');
  const size = valueAt(json, ['order']) === undefined ? undefined : sizeOf(at);
  add(findings, path, part.problems);
  const bottles = isBroken(part.problems, 'bottles') ? [] : admitBottles(listAt(json, 'bottles'), findings);
  if (findings.found > before) return undefined;
  const { leastPurityPercent, objectives, computedStop, exchange, order } = json as SupplyJson;
  return {
    bottles,
    rig,
    kitBefore,
    leastPurityPercent,
    objectives,
    stopping: { computedStop, ...(exchange === undefined ? {} : { exchange: { ...exchange } }) },
    size,
    reservePercent: order?.reservePercent ?? 0,
  };
}

function sizeOf(at: Quantities): BottleSize {
  return {
    waterVolume: at('order.waterVolume', 'volume'),
    filling: at('order.filling', 'gauge pressure'),
    labelAmbient: at('order.labelAmbient', 'absolute pressure'),
    residual: at('order.residual', 'gauge pressure'),
    onBoard: {
      temperature: at('order.temperature', 'temperature'),
      ambient: at('order.ambient', 'absolute pressure'),
    },
  };
}

function admitBottles(list: readonly unknown[], findings: Findings): AdmittedBottle[] {
  const repeated = repeatedNames(list);
  return list.flatMap((raw, i) => {
    const part: Part = { raw, problems: shapeProblems(BottleShape, raw) };
    const name = nameOf(raw);
    const bottle = bottleOf(raw as BottleJson, quantitiesOf(part));
    if (name !== undefined && repeated.has(name)) part.problems.push(duplicate('bottle', name));
    const { problems } = part;
    add(findings, `$.supply.bottles[${i}]`, problems, shownName(name));
    if (problems.length > 0) return [];
    const { pressure, temperature } = raw as BottleJson;
    return [{ bottle: bottle(), unit: pressure.unit, degrees: temperature.unit }];
  });
}

/** A bottle, made once it is known that its shape is sound; its quantities are admitted before. */
function bottleOf(json: BottleJson, at: Quantities): () => Bottle {
  const waterVolume = at('waterVolume', 'volume');
  const filling = at('label.filling', 'gauge pressure');
  const rated = at('label.rated', 'gauge pressure');
  const ambient = at('label.ambient', 'absolute pressure');
  const read = {
    pressure: at('pressure', 'gauge pressure'),
    temperature: at('temperature', 'temperature'),
    ambient: at('ambient', 'absolute pressure'),
  };
  const within = at('within', 'pressure difference');
  const residual = at('residual', 'gauge pressure');
  return () => {
    const { name, label } = json;
    const { gas, purityPercent } = label;
    return { name, waterVolume, label: { gas, purityPercent, filling, rated, ambient }, read, within, residual };
  };
}
