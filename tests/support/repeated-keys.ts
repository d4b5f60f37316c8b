// Keys given twice in valid JSON text, by recursive descent: slow and plain, to compare with.

const SPACE = /[ \t\r\n]*/y;
const STRING = /"(?:[^"\\]|\\.)*"/y;
const SCALAR = /[^\s,\]}]+/y;

/** Paths of the keys that stand in their object already, in the order of the text. */
export function firstRepeats(text: string): string[] {
  const repeats: string[] = [];
  let i = 0;

  const take = (what: RegExp): string => {
    what.lastIndex = i;
    const [taken] = what.exec(text) ?? [''];
    i += taken.length;
    return taken;
  };
  /** Whether the next mark is this one; it is then behind us. */
  const skip = (mark: string): boolean => {
    take(SPACE);
    if (text[i] !== mark) return false;
    i += 1;
    return true;
  };
  const member = (path: string, seen: string[]): void => {
    take(SPACE);
    const key = String(JSON.parse(take(STRING)));
    const at = `${path}${/^[A-Za-z_]\w*$/.test(key) ? `.${key}` : `[${JSON.stringify(key)}]`}`;
    if (seen.includes(key)) repeats.push(at);
    seen.push(key);
    skip(':');
    value(at);
  };
  const value = (path: string): void => {
    if (skip('{')) {
      const seen: string[] = [];
      if (skip('}')) return;
      do member(path, seen);
      while (skip(','));
      skip('}');
    } else if (skip('[')) {
      let index = 0;
      if (skip(']')) return;
      do value(`${path}[${index++}]`);
      while (skip(','));
      skip(']');
    } else if (take(STRING) === '') take(SCALAR);
  };

  value('$');
  return repeats;
}
