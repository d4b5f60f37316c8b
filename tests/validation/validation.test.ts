import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { STEPS } from './checks.js';
import { page } from './page.js';

const PAGE = fileURLToPath(new URL('../../docs/validation.md', import.meta.url));

const compared = STEPS.flatMap(({ groups }) =>
  groups.map(({ title, checks = [], columns = [], grid }) => {
    const cells = (grid?.rows ?? []).flatMap(({ head, cells }) =>
      cells.map((cell, i) => ({ ...cell, what: `${head}, ${grid?.heads[i] ?? ''}`, unit: 'relative' })),
    );
    return { title, rows: [...checks, ...columns, ...cells] };
  }),
);

describe.each(compared)('$title', ({ rows }) => {
  test('has rows', () => {
    expect(rows.length).toBeGreaterThan(0);
  });

  // NaN is beyond every allowance.
  test.each(rows)('$what: off by $deviation $unit, within $allowance', ({ deviation, allowance }) => {
    expect(Math.abs(deviation)).toBeLessThanOrEqual(allowance);
  });
});

test('docs/validation.md is what these checks print', async () => {
  const message = 'docs/validation.md is out of date: npm run validation writes it anew';
  await expect(await page(STEPS, PAGE), message).toMatchFileSnapshot(PAGE);
});
