import { needComplete, type Signatures, type Signed, type WorkOrder } from 'isochore';
import { expectTypeOf, test } from 'vitest';

declare const order: WorkOrder;
declare const by: Signed;
const all = {
  secure: by,
  'note valves': by,
  isolate: by,
  drain: by,
  'verify zero': by,
  fit: by,
  'leak test': by,
  'close up': by,
  'restore valves': by,
};

test('a step that protects people cannot be left out', () => {
  expectTypeOf(all).toExtend<Signatures>();
  const { drain, ...rest } = all;
  expectTypeOf(drain).toEqualTypeOf<Signed>();
  // @ts-expect-error a signature for draining is missing
  expectTypeOf(() => needComplete(order, rest)).toBeFunction();
});

test('nor for a reason alone: what protected people instead is said', () => {
  const at = '2026-03-14T09:10:00+01:00';
  // @ts-expect-error what protected people instead is missing
  expectTypeOf(() => needComplete(order, { ...all, drain: { by: 'x', at, leftOutBecause: 'y' } })).toBeFunction();
  expectTypeOf(() =>
    needComplete(order, { ...all, drain: { by: 'x', at, leftOutBecause: 'y', instead: 'z' } }),
  ).toBeFunction();
});

test('other steps are left out with a reason, or not needed at all', () => {
  const at = '2026-03-14T09:10:00+01:00';
  expectTypeOf(() => needComplete(order, { ...all, charge: { by: 'x', at, leftOutBecause: 'y' } })).toBeFunction();
});
