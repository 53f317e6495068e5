import { useEffect, useLayoutEffect, useRef } from 'react';
import type { RefObject } from 'react';
import type { FieldValues, UseFormReturn } from 'react-hook-form';
import { forgetKept, readKept, writeKept } from '../local-storage.js';

/**
 * Fields that nobody has touched follow what comes from the server.
 *
 * @returns the newest start of the form
 */
export function useStart<Values extends FieldValues>(hook: UseFormReturn<Values>, initial: Values): RefObject<Values> {
  const start = useRef(initial);
  useEffect(() => {
    if (isSame(start.current, initial)) return;
    start.current = initial;
    hook.reset(initial, { keepDirtyValues: true });
  }, [hook, initial]);
  return start;
}

/** The start of a form, with what this device kept of it. */
export function withKept<Values extends FieldValues>(initial: Values, keepAs: string | undefined): Values {
  return { ...initial, ...(keepAs ? readKept<Partial<Values>>(keepAs) : null) };
}

/** Keeps what is typed on this device; a form that began {@link withKept} still knows what it would be without. */
export function useKeepTyped<Values extends FieldValues>(
  hook: UseFormReturn<Values>,
  start: RefObject<Values>,
  keepAs: string | undefined,
): void {
  useLayoutEffect(() => {
    if (keepAs) hook.reset(start.current, { keepValues: true });
  }, [hook, start, keepAs]);
  useEffect(() => {
    if (!keepAs) return;
    return hook.subscribe({
      formState: { values: true },
      callback: ({ values }) => (isSame(values, start.current) ? forgetKept(keepAs) : writeKept(keepAs, values)),
    });
  }, [hook, start, keepAs]);
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

function isSame(values: unknown, others: unknown): boolean {
  return JSON.stringify(values) === JSON.stringify(others);
}
