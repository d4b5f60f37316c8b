// Which steps a reader is told who only asks for the answer.
import { isChecked } from '../../quantity/kind.js';
import { FORM } from '../../quantity/step.js';
import type { DerivedStep, NamedQuantity } from './derivation.js';
import type { Written } from './written.js';
import type { WrittenStep } from './written-step.js';

/** The steps that nothing else was made of, and those whose result the calculation itself gives, such as a target. */
export function answersOf({ steps }: Written, result: unknown): readonly WrittenStep[] {
  const used = new Set(
    steps.flatMap(({ written }) =>
      written.step.from.flatMap(({ origin }) => (origin.from === 'step' ? [origin.step] : [])),
    ),
  );
  const given = quantitiesIn(result);
  const told = new Set<string>();
  const isAnswer = (step: DerivedStep): boolean => {
    if (!used.has(step.number)) return true;
    const key = keyOf(step.result);
    return given.has(key) && !told.has(key) && told.add(key).size > 0;
  };
  return steps.map(({ written }) => written).filter(({ step }) => isAnswer(step));
}

const DEEPEST = 12;
/** A table has up to a thousand rows of three. */
const MOST = 10_000;

/** The quantities of a result, by value and kind. */
function quantitiesIn(result: unknown): ReadonlySet<string> {
  const found = new Set<string>();
  let left = MOST;
  const walk = (value: unknown, depth: number): void => {
    left -= 1;
    if (typeof value !== 'object' || value === null || depth > DEEPEST || left < 0) return;
    const { kind } = value as { readonly kind?: unknown };
    if (typeof kind !== 'string' || !Object.hasOwn(FORM, kind) || !isChecked(value, kind))
      for (const inner of Object.values(value)) walk(inner, depth + 1);
    else {
      const { field } = FORM[kind as keyof typeof FORM];
      found.add(`${(value as Readonly<Record<string, number>>)[field] ?? ''} ${kind}`);
    }
  };
  walk(result, 0);
  return found;
}

function keyOf({ value, meaning, unit }: NamedQuantity): string {
  return `${value} ${typeof meaning === 'string' ? meaning : unit === 'mol' ? 'amount of substance' : unit}`;
}
