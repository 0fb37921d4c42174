/** A copy of a JSON-native value with the keys of every object in order of their UTF-16 code units and without
 * undefined fields: its JSON is the same whoever wrote it, so that a checksum survives a copy through another tool. */
export function sorted<T>(value: T): T {
  if (Array.isArray(value)) return value.map((each) => sorted(each ?? null)) as T
  if (value === null || typeof value !== 'object') return value
  const from = value as Record<string, unknown>
  const copy: Record<string, unknown> = {}
  for (const key of Object.keys(from).sort()) {
    // Defined, not assigned: a key named "__proto__" in somebody's file stays a plain field.
    if (from[key] !== undefined) {
      Object.defineProperty(copy, key, {
        value: sorted(from[key]),
        enumerable: true,
        writable: true,
        configurable: true
      })
    }
  }
  return copy as T
}
