const nameOf = (key: string) => `loadtrain.${key}`;

/** What is kept on this device under a key; null where nothing is, or it cannot be read. */
export function readKept<Value>(key: string): Value | null {
  try {
    return JSON.parse(localStorage.getItem(nameOf(key)) ?? 'null') as Value | null;
  } catch {
    return null;
  }
}

export function writeKept(key: string, value: unknown): void {
  localStorage.setItem(nameOf(key), JSON.stringify(value));
}

export function forgetKept(key: string): void {
  localStorage.removeItem(nameOf(key));
}
