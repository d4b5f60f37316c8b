// Prints the checks as docs/validation.md.
import { format, resolveConfig } from 'prettier';
import { digits, type Check, type Column, type Grid, type Group, type Step } from './check.js';

const HEAD = `# Validation

Every number that the library is held against from outside the project: source, expected, obtained, deviation, allowance. A test computes each row again and fails if one leaves its allowance, or if this page is not what it computes; \`npm run validation\` writes it anew. Files are in \`tests/reference\`, with their provenance in its \`README.md\`, in the repository.

- **Deviation** and **allowance** are relative where no unit stands beside them.
- A file of states is summarised by column: the worst deviation, and the state where it is.
- *Below* an allowance of 1e-9 or less stands for agreement to rounding, which may differ between engines in its last place. An allowance of 0 means the same number, to the last bit.

What has no number here is held by other tests: laws as properties, term by term against the equation as the paper prints it (\`tests/gas\`), every printed formula by another evaluator (\`tests/relation\`).
`;

/** The page, as prettier leaves it. */
export async function page(steps: readonly Step[], path: string): Promise<string> {
  const body = steps.map(({ title, groups }) => `## ${title}\n\n${groups.map(printGroup).join('\n\n')}`).join('\n\n');
  return format(`${HEAD}\n${body}\n`, { ...(await resolveConfig(path)), parser: 'markdown' });
}

function printGroup({ title, source, checks, columns, grid }: Group): string {
  const parts = [`### ${title}`, `Source: ${source}`];
  if (checks !== undefined) parts.push(printChecks(checks));
  if (columns !== undefined) parts.push(printColumns(columns));
  if (grid !== undefined) parts.push(printGrid(grid));
  return parts.join('\n\n');
}

function printChecks(checks: readonly Check[]): string {
  return table(
    ['what', 'expected', 'obtained', 'deviation', 'allowance'],
    checks.map((one) => [one.what, one.expected, one.obtained, deviationOf(one), amount(one.allowance, one.unit)]),
  );
}

function printColumns(columns: readonly Column[]): string {
  return table(
    ['what', 'states', 'worst deviation', 'at', 'allowance'],
    columns.map((one) => [
      one.what,
      String(one.states),
      deviationOf(one),
      isRounding(one) || one.allowance === 0 ? '' : one.where,
      amount(one.allowance, one.unit),
    ]),
  );
}

function printGrid({ corner, heads, rows }: Grid): string {
  return table(
    [corner, ...heads],
    rows.map(({ head, cells }) => [head, ...cells.map(({ text }) => text)]),
  );
}

type Compared = Pick<Check, 'deviation' | 'allowance' | 'unit'>;

/** Whether nothing but rounding is allowed, which is not the same on every engine. */
function isRounding({ allowance }: Compared): boolean {
  return allowance > 5e-16 && allowance <= 1e-9;
}

function deviationOf(one: Compared): string {
  if (isRounding(one) && one.deviation <= one.allowance) return `below ${amount(one.allowance, one.unit)}`;
  return amount(one.deviation, one.unit);
}

function amount(x: number, unit: string): string {
  const number = digits(x, 2);
  return x === 0 || unit === 'relative' ? number : `${number} ${unit}`;
}

function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}
