// From sound shapes to quantities and specifications: by the same doors that a caller of the core uses.
// One part that is wrong does not hide what is wrong with another: each is admitted by itself, and what the core then
// says about a part that is already reported is left out.
import { collect, type Problem } from '../basis/fault.js';
import { nitrogen } from '../gas/nitrogen/nitrogen.js';
import type { Kind, QuantityOf } from '../quantity/kind.js';
import { needSpan } from '../reading/checks.js';
import { needPrinted, needVessel, type Instruments } from '../reading/instruments.js';
import { specification, type Specification, type SpecificationGiven } from '../target/specification.js';
import type { Stated } from '../target/table.js';
import type { RoundSpecification } from './parts.js';
import { isBroken, shapeProblems, valueAt, type Part } from './problems.js';
import { numberAt, quantityAt, soundAt, withoutUndefined } from './quantities.js';
import { SpecificationShape } from './shape.js';
import { statedAt, type Tables } from './stated.js';
import { needSize } from '../target/tolerance.js';

/** What the manual says for an uncertainty; undefined where nothing is said. */
export interface Manual {
  readonly printed: Instruments['printed'] | undefined;
  readonly vessel: Instruments['vessel'] | undefined;
}

/** A specification from JSON; undefined, with its problems, if it or a table that it uses is not sound. */
export function admitSpecification(
  raw: unknown,
  tables: Tables,
): { spec: Specification | undefined; manual: Manual; problems: readonly Problem[] } {
  const part: Part = { raw, problems: shapeProblems(SpecificationShape, raw) };
  const at = <K extends Kind>(path: string, kind: K): QuantityOf<K> | undefined => quantityAt(part, path, kind);
  const ambient = at('ambient', 'absolute pressure');
  // What is stated by a table that is not sound: that is said once, where the table stands.
  const unsound: string[] = [];
  const stated = (path: string): Stated | undefined => {
    const found = statedAt(part, path, tables, ambient);
    if (found !== 'not sound') return found;
    unsound.push(path);
    return undefined;
  };
  const allowed = (path: string): unknown => {
    if (valueAt(raw, [path]) === undefined) return undefined;
    // A limit that is there, but not sound, stays one: without any, the core would ask for a tolerance.
    const limit = (field: string): object =>
      valueAt(raw, [path, field]) === undefined ? {} : { [field]: stated(`${path}.${field}`) };
    const tolerance = withoutUndefined({
      plusMinus: at(`${path}.plusMinus`, 'pressure difference'),
      below: at(`${path}.below`, 'pressure difference'),
      above: at(`${path}.above`, 'pressure difference'),
      plusMinusPercentOfGauge: soundAt(part, `${path}.plusMinusPercentOfGauge`),
      applies: soundAt(part, `${path}.applies`),
    });
    return { ...tolerance, ...limit('minimum'), ...limit('maximum') };
  };
  const given = withoutUndefined({
    precharge: stated('precharge'),
    nominal: stated('nominal'),
    ambient,
    tolerance: allowed('tolerance'),
    toleranceAfterCharging: allowed('toleranceAfterCharging'),
    separator: soundAt(part, 'separator'),
    gasVolume: at('gasVolume', 'volume'),
    allowable: at('allowable', 'gauge pressure'),
  });
  const settling = withoutUndefined({
    allowance: at('settling.allowance', 'pressure difference'),
    minutes: soundAt(part, 'settling.minutes'),
  });
  // The shape knows no other gas.
  const admit = (): Specification =>
    specification({ gas: nitrogen, ...given, settling } as unknown as SpecificationGiven);
  // Parts may be missing here: the core then reports them, and only what is not reported yet is kept. Where all are, it has
  // nothing to find, and would take longer for `null` than for a whole specification.
  const isEmpty = Object.keys({ ...given, ...settling }).length === 0;
  const spec = isEmpty ? undefined : collectNew(part.problems, admit, unsound);
  const manual = { printed: printedOf(part), vessel: vesselOf(part) };
  const isSound = part.problems.length + unsound.length === 0;
  return { spec: isSound ? spec : undefined, manual, problems: part.problems };
}

function printedOf(part: Part): Manual['printed'] {
  const json = soundAt(part, 'printed') as RoundSpecification['printed'];
  if (json === undefined) return undefined;
  const pressure =
    typeof json.pressure === 'string' ? json.pressure : quantityAt(part, 'printed.pressure', 'pressure difference');
  const temperature = quantityAt(part, 'printed.temperature', 'temperature difference');
  const ambientLimit = quantityAt(part, 'printed.ambientLimit', 'pressure difference');
  if (pressure === undefined || temperature === undefined || ambientLimit === undefined) return undefined;
  const byTable = valueAt(part.raw, ['precharge', 'table']) !== undefined;
  collect(part.problems, 'printed.pressure', () => needPrinted(pressure, byTable));
  collect(part.problems, 'printed.temperature', () => needSpan(temperature));
  collect(part.problems, 'printed.ambientLimit', () => needSize(ambientLimit));
  return { pressure, temperature, ambientLimit };
}

function vesselOf(part: Part): Manual['vessel'] {
  const json = soundAt(part, 'vessel') as RoundSpecification['vessel'];
  if (json === undefined) return undefined;
  const linearExpansion_per_K = numberAt(part, 'vessel.linearExpansion.value');
  const limit_per_K = numberAt(part, 'vessel.limit.value');
  if (linearExpansion_per_K === undefined || limit_per_K === undefined) return undefined;
  const vessel = { linearExpansion_per_K, limit_per_K, treated: json.treated };
  const found: Problem[] = [];
  collect(found, '', () => needVessel(vessel));
  const inDocument = { linearExpansion_per_K: 'vessel.linearExpansion.value', limit_per_K: 'vessel.limit.value' };
  part.problems.push(...found.map((one) => ({ ...one, path: inDocument[one.path as keyof typeof inDocument] })));
  return vessel;
}

/** Runs an admission and keeps those of its problems that are not about a part already reported. */
export function collectNew<T>(problems: Problem[], admit: () => T, reported: readonly string[]): T | undefined {
  const found: Problem[] = [];
  const value = collect(found, '', admit);
  const known = [...problems];
  const isNew = (path: string): boolean => !isBroken(known, path) && !reported.includes(path);
  // The core calls the size of a gauge step `step`; in a document it is a `value`.
  const renamed = found.map((problem) =>
    problem.path === 'gaugeStep.step' ? { ...problem, path: 'gaugeStep.value' } : problem,
  );
  problems.push(...renamed.filter((problem) => isNew(problem.path)));
  return value;
}
