import { useEffect, useState } from 'react';

/** State that survives a reload of the page on this device, until `forget` is called. */
export function useLocalStorage<Value>(
  key: string,
  initial: Value,
): [Value, (next: Value | ((now: Value) => Value)) => void, () => void] {
  const name = `loadtrain.${key}`;
  const [value, setValue] = useState<Value>(() => read(name) ?? initial);
  useEffect(() => localStorage.setItem(name, JSON.stringify(value)), [name, value]);
  const forget = () => {
    setValue(initial);
    setTimeout(() => localStorage.removeItem(name));
  };
  return [value, setValue, forget];
}

function read<Value>(name: string): Value | null {
  try {
    return JSON.parse(localStorage.getItem(name) ?? 'null') as Value | null;
  } catch {
    return null;
  }
}
