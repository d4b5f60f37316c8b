/** Whether every surrogate in a text has its other half: a text with half a pair has no UTF-8 (RFC 3629, 3). */
export function isWellFormed(text: string): boolean {
  return !/[\uD800-\uDFFF]/u.test(text);
}

/** A text with every half of a surrogate pair replaced by the replacement character. */
export function wellFormed(text: string): string {
  return text.replace(/[\uD800-\uDFFF]/gu, '\uFFFD');
}
