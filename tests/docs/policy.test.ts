// docs/embedding.md says so: under a content-security policy without unsafe-eval nothing is even tried.
import { readFileSync } from 'node:fs';
import { afterEach, expect, test, vi } from 'vitest';
import { ROOT } from './examples.js';

/** Counts what is compiled from text by `new Function` from now on. */
function compilations(): { count: number } {
  const seen = { count: 0 };
  vi.stubGlobal(
    'Function',
    new Proxy(Function, {
      construct: (target, texts: string[]) => {
        seen.count += 1;
        return Reflect.construct(target, texts);
      },
    }),
  );
  return seen;
}

afterEach(() => {
  vi.unstubAllGlobals();
});

test('isochore/record compiles no code, neither when it is loaded nor when it reports', async () => {
  const seen = compilations();
  const { reportRoundText } = await import('isochore/record');
  const report = reportRoundText(readFileSync(`${ROOT}/examples/round.json`, 'utf8'), { problems: 'report the rest' });
  expect(report.accumulators.length).toBeGreaterThan(0);
  expect(seen.count).toBe(0);
});

test('full zod would', async () => {
  const seen = compilations();
  const z = await import('zod');
  z.object({ hours: z.number() });
  expect(seen.count).toBeGreaterThan(0);
});
