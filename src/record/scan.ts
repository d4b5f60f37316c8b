import { pathOf } from './problems.js';

/** What a pass over JSON text finds that parsing would hide. */
export interface Scanned {
  /** Whether nesting goes beyond the limit; the pass stops there. */
  readonly isTooDeep: boolean;
  /** Paths of keys given again in their object. Meaningful if the text is valid JSON. */
  readonly duplicates: readonly string[];
}

interface Level {
  /** Keys seen, in an object; undefined in an array. */
  readonly keys: Set<string> | undefined;
  /** Where we are in it: the key last read, or the index. */
  at: string | number;
  expectsKey: boolean;
}

/** Beyond it the whole document counts as uncertain. */
const MOST_DUPLICATES = 1_000_000;

/**
 * One pass over a JSON text, without recursion and without building anything but the keys of the open objects. It does
 * not validate: the parser does that.
 */
export function scan(text: string, deepest: number): Scanned {
  const levels: Level[] = [];
  const duplicates: string[] = [];
  for (let i = 0; i < text.length; i += 1) {
    // Not `text[i]`: it takes five times as long where a program has ever had an index on Object.prototype.
    const character = text.charAt(i);
    switch (character) {
      case '{':
      case '[': {
        if (levels.length === deepest) return { isTooDeep: true, duplicates };
        const isObject = character === '{';
        levels.push({ keys: isObject ? new Set() : undefined, at: isObject ? '' : 0, expectsKey: isObject });
        break;
      }
      case '}':
      case ']':
        levels.pop();
        break;
      case ',': {
        const level = levels.at(-1);
        if (level === undefined) break;
        if (typeof level.at === 'number') level.at += 1;
        else level.expectsKey = true;
        break;
      }
      case '"': {
        const end = endOfString(text, i);
        const level = levels.at(-1);
        if (level?.keys !== undefined && level.expectsKey) {
          const key = decoded(text.slice(i, end + 1));
          level.expectsKey = false;
          level.at = key;
          if (level.keys.has(key)) {
            if (duplicates.length === MOST_DUPLICATES) return { isTooDeep: false, duplicates: [...duplicates, '$'] };
            duplicates.push(rooted(pathOf(levels.map((open) => open.at))));
          }
          level.keys.add(key);
        }
        i = end;
        break;
      }
      default:
    }
  }
  return { isTooDeep: false, duplicates };
}

/** A path of {@link pathOf} with the root before it. */
function rooted(path: string): string {
  return path.startsWith('[') ? `$${path}` : `$.${path}`;
}

/** Index of the quote that closes the string opened at `start`; the text's end if none does. */
function endOfString(text: string, start: number): number {
  let i = start + 1;
  for (;;) {
    const quote = text.indexOf('"', i);
    if (quote === -1) return text.length;
    let slashes = 0;
    while (text.charAt(quote - 1 - slashes) === '\\') slashes += 1;
    if (slashes % 2 === 0) return quote;
    i = quote + 1;
  }
}

function decoded(literal: string): string {
  if (!literal.includes('\\')) return literal.slice(1, -1);
  try {
    return String(JSON.parse(literal));
  } catch {
    return literal; // not JSON: the parser will say so
  }
}
