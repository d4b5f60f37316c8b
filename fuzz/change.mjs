// Changes of a recipe at a place of it: what leads from a sound input to one that is wrong in one place, deep inside.

/** @import { Change } from './draw.mjs' */
/** @import { Field, Recipe } from './recipe.mjs' */

/** How many places a recipe has. @param {Recipe} recipe @returns {number} */
function places(recipe) {
  return inner(recipe).reduce((sum, one) => sum + places(one), 1);
}

/** The parts of a recipe, one level down. @param {Recipe} recipe @returns {readonly Recipe[]} */
export function inner(recipe) {
  switch (recipe.t) {
    case 'list':
    case 'call':
      return recipe.of;
    case 'fields':
      return recipe.of.map(([, one]) => one);
    case 'wrap':
    case 'deep':
    case 'many':
    case 'text':
      return [recipe.of];
    default:
      return [];
  }
}

/** The part at a place, in the order in which it would be printed. @param {Recipe} recipe @param {number} at @returns {Recipe} */
function partAt(recipe, at) {
  if (at === 0) return recipe;
  let left = at - 1;
  for (const one of inner(recipe)) {
    const size = places(one);
    if (left < size) return partAt(one, left);
    left -= size;
  }
  return recipe;
}

/** Parts in place of one part; none of them takes it out. @typedef {(part: Recipe) => readonly Recipe[]} Put */

/** @param {Recipe} recipe @param {number} at @param {Put} put @param {string} [key] @returns {Recipe} */
function replaced(recipe, at, put, key) {
  if (at === 0) return put(recipe)[0] ?? { t: 'value', v: undefined };
  let left = at - 1;
  /** @param {Recipe} one @returns {readonly Recipe[]} */
  const changed = (one) => {
    const size = places(one);
    const here = left;
    left -= size;
    if (here < 0 || here >= size) return [one];
    return here === 0 ? put(one) : [replaced(one, here, put, key)];
  };
  switch (recipe.t) {
    case 'list':
      return { ...recipe, of: recipe.of.flatMap(changed) };
    case 'call':
      return { ...recipe, of: recipe.of.flatMap(changed) };
    case 'fields':
      return {
        ...recipe,
        of: recipe.of.flatMap(([name, one]) =>
          changed(one).map(
            (now, i) =>
              /** @type {Field} */ ([now !== one && key !== undefined ? key : i === 0 ? name : `${name}2`, now]),
          ),
        ),
      };
    case 'wrap':
      return { ...recipe, of: changed(recipe.of)[0] ?? recipe.of };
    case 'deep':
      return { ...recipe, of: changed(recipe.of)[0] ?? recipe.of };
    case 'many':
      return { ...recipe, of: changed(recipe.of)[0] ?? recipe.of };
    case 'text':
      return { ...recipe, of: changed(recipe.of)[0] ?? recipe.of };
    default:
      return recipe;
  }
}

/** A recipe with one change. @param {Recipe} recipe @param {Change} change @returns {Recipe} */
export function changed(recipe, change) {
  const count = places(recipe);
  if (count < 2) return recipe;
  const at = 1 + (change.at % (count - 1)); // the list of arguments itself stays
  switch (change.op) {
    case 'put':
      return replaced(recipe, at, () => [change.junk]);
    case 'drop':
      return replaced(recipe, at, () => []);
    case 'twice':
      return replaced(recipe, at, (part) => [part, part]);
    case 'wrap':
      return replaced(recipe, objectFrom(recipe, at), (part) => [{ t: 'wrap', how: change.how, of: part }]);
    case 'tweak':
      return replaced(recipe, at, (part) => [tweaked(part, change)]);
    case 'add':
      return replaced(recipe, objectFrom(recipe, at), (part) => [added(part, change)]);
    case 'swap': {
      const other = partAt(recipe, 1 + (change.n % (count - 1)));
      return replaced(recipe, at, () => [other]);
    }
    case 'rename':
      return replaced(recipe, at, (part) => [{ ...part }], change.key);
    case 'other build':
      return replaced(recipe, at, (part) =>
        part.t === 'call' && /^[a-z]+$/i.test(part.f) ? [{ ...part, f: `other.${part.f}` }] : [part],
      );
  }
}

/** The nearest place, backwards, at which an object stands. @param {Recipe} recipe @param {number} at */
function objectFrom(recipe, at) {
  for (let place = at; place > 0; place -= 1) {
    const { t } = partAt(recipe, place);
    if (t !== 'value' && t !== 'stock') return place;
    if (at - place > 12) break;
  }
  return at;
}

/** @param {Recipe} part @param {Change} change @returns {Recipe} */
function added(part, { key, junk }) {
  if (part.t === 'list') return { ...part, of: [...part.of, junk] };
  if (part.t === 'fields') return { ...part, of: [...part.of.filter(([name]) => name !== key), [key, junk]] };
  return part;
}

/** A number or a text a little, or vastly, different. @param {Recipe} part @param {Change} change @returns {Recipe} */
function tweaked(part, { n, junk }) {
  if (part.t !== 'value') return part;
  const { v } = part;
  if (typeof v === 'number') return { t: 'value', v: ofNumber(v, n) };
  if (typeof v === 'string') return { t: 'value', v: ofText(v, n, junk) };
  return { t: 'value', v: v === null ? undefined : null };
}

/** @param {number} x @param {number} n */
function ofNumber(x, n) {
  const ways = [
    -x,
    x * 10,
    x / 10,
    x * 1e5,
    x / 1e5,
    x * 1e300,
    x / 1e300,
    x * (1 + 2 ** -52),
    x * (1 - 2 ** -53),
    x + 1,
    x - 1,
    0,
    String(x),
    `${x}e${n % 400}`,
    BigInt(Math.trunc(Number.isFinite(x) ? x : 0)),
    x * (n / 5e4),
  ];
  return ways[n % ways.length];
}

/** @param {string} text @param {number} n @param {Recipe} junk */
function ofText(text, n, junk) {
  const at = n % (text.length + 1);
  const more = junk.t === 'value' && typeof junk.v === 'string' ? junk.v : String(n);
  const ways = [
    text.slice(0, at) + more + text.slice(at),
    text.slice(0, at) + text.slice(at + 1),
    text.toUpperCase(),
    ` ${text}`,
    text.repeat(1 + (n % 30)),
    Number(text),
  ];
  return ways[n % ways.length];
}
