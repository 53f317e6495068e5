import { useEffect, useLayoutEffect, useRef } from 'react';
import type { FieldValues, UseFormReturn } from 'react-hook-form';
import { readKept, writeKept } from '../local-storage.js';

/** Fields that nobody has touched follow what comes from the server. */
export function useFollow<Values extends FieldValues>(hook: UseFormReturn<Values>, initial: Values): void {
  const followed = useRef(initial);
  useEffect(() => {
    if (JSON.stringify(followed.current) === JSON.stringify(initial)) return;
    followed.current = initial;
    hook.reset(initial, { keepDirtyValues: true });
  }, [hook, initial]);
}

/** Keeps what is typed on this device, and brings it back after a reload; without a name nothing is kept. */
export function useKeepTyped<Values extends FieldValues>(
  hook: UseFormReturn<Values>,
  initial: Values,
  keepAs: string | undefined,
): void {
  const start = useRef(initial);
  useLayoutEffect(() => {
    const kept = keepAs ? readKept<Partial<Values>>(keepAs) : null;
    if (kept) hook.reset({ ...start.current, ...kept }, { keepDefaultValues: true });
  }, [hook, keepAs]);
  useEffect(() => {
    if (!keepAs) return;
    return hook.subscribe({
      formState: { values: true },
      callback: ({ values }) => writeKept(keepAs, values),
    });
  }, [hook, keepAs]);
}

/** Asks before the page is closed or loaded anew while something is typed that is kept nowhere. */
export function useUnloadWarning(unkept: boolean): void {
  useEffect(() => {
    if (!unkept) return;
    const warn = (event: BeforeUnloadEvent) => event.preventDefault();
    addEventListener('beforeunload', warn);
    return () => removeEventListener('beforeunload', warn);
  }, [unkept]);
}
