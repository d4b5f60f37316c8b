/** What a call gives while all objects inherit a field. */
export function inheriting<T>(name: PropertyKey, value: unknown, run: () => T): T {
  const inherited = Object.prototype as unknown as Record<PropertyKey, unknown>;
  inherited[name] = value;
  try {
    return run();
  } finally {
    Reflect.deleteProperty(inherited, name);
  }
}
