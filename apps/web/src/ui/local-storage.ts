import { useEffect, useState } from 'react';

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

/** State that survives a reload of the page on this device, until `forget` is called. */
export function useLocalStorage<Value>(
  key: string,
  initial: Value,
): [Value, (next: Value | ((now: Value) => Value)) => void, () => void] {
  const [value, setValue] = useState<Value>(() => readKept(key) ?? initial);
  useEffect(() => writeKept(key, value), [key, value]);
  const forget = () => {
    setValue(initial);
    setTimeout(() => forgetKept(key));
  };
  return [value, setValue, forget];
}
