// Lines of the printed report: other people's text made harmless, wrapped, in columns, numbers as people read them.

export const WIDTH = 118;

/** @param {readonly (readonly string[])[]} rows */
export function columns(rows) {
  const widths = rows[0]?.map((_, i) => Math.max(...rows.map((row) => row[i]?.length ?? 0))) ?? [];
  return rows.map((row) => `  ${row.map((cell, i) => cell.padEnd(widths[i] ?? 0)).join('  ')}`.trimEnd());
}

/** One decimal more than the gauge is read to. @param {number | string} step */
export function tenth(step) {
  const decade = 10 ** Math.floor(Math.log10(Number(step)));
  return Number((decade / 10).toPrecision(1));
}

/** Other people's text, without characters that would steer the terminal. @param {string} text */
export function printable(text) {
  return text.replace(/[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, '�');
}

/**
 * @param {string} text
 * @param {string} lead
 */
export function wrap(text, lead) {
  const indent = ' '.repeat(lead.length);
  const lines = [''];
  for (const word of text.split(' ')) {
    const line = lines.at(-1) ?? '';
    if (line !== '' && lead.length + line.length + 1 + word.length > WIDTH) lines.push(word);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines.map((line, i) => (i === 0 ? lead : indent) + line);
}
