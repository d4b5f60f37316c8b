// What is read once is what was checked: a field may say something else when it is read again.

/** The same, every field of it counted as it is read, under its path; quantities, models and words as they are. */
export function counted(value: unknown, path: string, reads: Map<string, number>): unknown {
  if (typeof value !== 'object' || value === null || '~isochore' in value) return value;
  if (Array.isArray(value)) return value.map((one, i) => counted(one, `${path}[${i}]`, reads));
  const own: Record<string, unknown> = {};
  for (const [key, inner] of Object.entries(value)) {
    const at = `${path}.${key}`;
    const kept = counted(inner, at, reads);
    Object.defineProperty(own, key, {
      enumerable: true,
      get() {
        reads.set(at, (reads.get(at) ?? 0) + 1);
        return kept;
      },
    });
  }
  return own;
}
