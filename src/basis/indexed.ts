/**
 * So many values, each made of its index. As `Array.from({ length }, …)`, whose object would inherit an iterator where all
 * objects do.
 */
export function indexed<T>(length: number, make: (index: number) => T): T[] {
  return Array.from({ __proto__: null, length } as unknown as ArrayLike<never>, (_, i) => make(i));
}
