/**
 * Puts a value at a dotted path, making what is missing on the way: `details.ends.0.type` makes a list at `ends`.
 * Only for paths out of the table of item fields, never for what somebody sent.
 */
export function put(target: object, path: string, value: unknown): void {
  const keys = path.split('.');
  let inner = target as Record<string, unknown>;
  keys.slice(0, -1).forEach((key, index) => {
    const next = inner[key];
    const made = typeof next === 'object' && next !== null ? next : /^\d+$/.test(keys[index + 1]!) ? [] : {};
    inner[key] = made;
    inner = made as Record<string, unknown>;
  });
  inner[keys.at(-1)!] = value;
}

/** A copy of what JSON can say, made of nothing else. */
export function plainCopy<Value>(value: Value): Value {
  return JSON.parse(JSON.stringify(value)) as Value;
}
