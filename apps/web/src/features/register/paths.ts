/** The value at a path like `details.ends.0.sizeMm`; undefined where the way ends early. */
export function readPath(from: unknown, path: string): unknown {
  return path
    .split('.')
    .reduce<unknown>(
      (place, key) => (place === null || place === undefined ? undefined : (place as Record<string, unknown>)[key]),
      from,
    );
}

/** A copy with the value at that path set; numbers in the path make lists. */
export function withPath<Whole>(whole: Whole, path: string, value: unknown): Whole {
  const [key = '', ...rest] = path.split('.');
  const isList = Array.isArray(whole) || (whole === undefined && /^\d+$/.test(key));
  const copy = (isList ? [...((whole as unknown[] | undefined) ?? [])] : { ...whole }) as Record<string, unknown>;
  copy[key] = rest.length === 0 ? value : withPath(copy[key], rest.join('.'), value);
  return copy as Whole;
}

/** A plain value as text; empty for nothing and for what is no plain value. */
export function asText(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' || typeof value === 'boolean' ? String(value) : '';
}
