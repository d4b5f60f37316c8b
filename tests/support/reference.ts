import { readFileSync } from 'node:fs';

// The files of tests/reference: plain CSV, one header line, no quoted cells. Where each comes from: its README.md.

/** A row of a reference file as printed: the digits themselves may matter. */
export type Printed<Column extends string> = Readonly<Record<Column, string>>;
/** A row of a reference file as numbers. */
export type Row<Column extends string> = Readonly<Record<Column, number>>;

/** The text of a file in tests/reference. */
export function referenceText(file: string): string {
  return readFileSync(new URL(`../reference/${file}`, import.meta.url), 'utf8');
}

/** The named columns of a reference file, as printed. */
export function printedRows<Column extends string>(file: string, columns: readonly Column[]): Printed<Column>[] {
  const [header = '', ...lines] = referenceText(file).trim().split(/\r?\n/);
  const names = header.split(',');
  return lines.map((line) => {
    const cells = line.split(',');
    return Object.fromEntries(
      columns.map((column) => {
        const cell = cells[names.indexOf(column)];
        if (cell === undefined || cell === '') throw new Error(`${file}: no ${column} in "${line}"`);
        return [column, cell];
      }),
    ) as Printed<Column>;
  });
}

/** The named columns of a reference file, as numbers. */
export function numberRows<Column extends string>(file: string, columns: readonly Column[]): Row<Column>[] {
  return printedRows(file, columns).map(
    (row) =>
      Object.fromEntries(
        columns.map((column) => {
          const value = Number(row[column]);
          if (!Number.isFinite(value)) throw new Error(`${file}: ${column} is "${row[column]}"`);
          return [column, value];
        }),
      ) as Row<Column>,
  );
}

/** How far a value lies from a reference value, relative to the reference. */
export function relativeError(value: number, reference: number): number {
  return Math.abs(value - reference) / Math.abs(reference);
}
