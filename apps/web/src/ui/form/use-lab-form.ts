import { useCallback, useEffect, useId, useRef, useState } from 'react';
import type { FormEvent } from 'react';
import { useForm } from 'react-hook-form';
import type { Control, DefaultValues, FieldValues, UseFormReturn } from 'react-hook-form';
import { forgetKept } from '../local-storage.js';
import { useKeepTyped, useStart, useUnloadWarning, withKept } from './keep-typed.js';
import { focusFirstWrong, placeErrors } from './place-errors.js';

export interface LabFormOptions<Values extends FieldValues> {
  /** What the form starts from. When it changes, fields that nobody has touched follow it. */
  initial: Values;
  /** Sends what was typed. What it throws is shown: at its fields where it names some, at the head otherwise. */
  send: (values: Values, button: string) => unknown;
  /** What the form itself can tell to be wrong when it is sent, by field. */
  check?: (values: Values, button: string) => Readonly<Partial<Record<string, string>>>;
  /** How the form calls a path of the server, where the two differ. */
  fieldOf?: (path: string) => string;
  /** Whether the form itself shows what the server refuses of a path, beside a field that is not of `ui/form`. */
  isShown?: (path: string) => boolean;
  /** Under this name, what is typed survives a reload of the page on this device. */
  keepAs?: string;
  /** What the fields hold once they are sent: what was sent, or the start again. */
  after?: 'keep' | 'clear';
}

/** A form: its values, what is wrong with them, and whether they are on their way. */
export interface LabForm<Values extends FieldValues> {
  /** Ties a button outside of the form to it. */
  id: string;
  control: Control<Values>;
  hook: UseFormReturn<Values>;
  /** A field says how it is called, for as long as it is shown. */
  enter: (name: string, label: string) => () => void;
  submit: (event: FormEvent<HTMLFormElement>) => void;
  pending: boolean;
  /** Something is typed that is not sent yet. */
  dirty: boolean;
  /** Why the form as a whole was refused; what is about one field stands beside it. */
  error: Error | null;
  /** Shows a refusal that came by another way as if this form had been sent. */
  refuse: (thrown: unknown) => void;
  /** Takes back what was refused, since it is about something else than what is typed now. */
  forgive: () => void;
  /** Throws away what is typed. */
  discard: () => void;
}

/** Fills in and sends something: refusals stand where they belong, and none loses what was typed. */
export function useLabForm<Values extends FieldValues>(options: LabFormOptions<Values>): LabForm<Values> {
  const { initial, send, check, fieldOf, isShown, keepAs, after = 'keep' } = options;
  const id = useId();
  const [first] = useState(() => withKept(initial, keepAs));
  const hook = useForm<Values>({
    defaultValues: first as DefaultValues<Values>,
    shouldFocusError: false,
  });
  const { isSubmitting: pending, isDirty: dirty } = hook.formState;
  const [error, setError] = useState<Error | null>(null);
  const labels = useRef(new Map<string, string>());
  const start = useStart(hook, initial);
  useKeepTyped(hook, start, keepAs);
  useUnloadWarning(dirty && !keepAs);

  const enter = useCallback((name: string, label: string) => {
    const shown = labels.current;
    shown.set(name, label);
    return () => void shown.delete(name);
  }, []);
  const showWrong = useFocusWrong(id);
  const refuse = (thrown: unknown) => {
    setError(placeErrors(hook, labels.current, thrown, fieldOf, isShown));
    showWrong();
  };

  const forgive = () => {
    setError(null);
    hook.clearErrors();
  };

  function startFrom(values: Values) {
    hook.reset(values);
    if (keepAs) forgetKept(keepAs);
  }

  async function sendTyped(values: Values, button: string) {
    const found = Object.entries(check?.(values, button) ?? {});
    const wrong = found.flatMap(([field, sentence]) => (sentence ? [{ field, sentence }] : []));
    if (wrong.length > 0) return refuse({ refusals: wrong });
    try {
      await send(values, button);
    } catch (thrown) {
      return refuse(thrown);
    }
    startFrom(after === 'clear' ? start.current : values);
  }

  function submit(event: FormEvent<HTMLFormElement>) {
    event.preventDefault();
    if (hook.formState.isSubmitting) return;
    setError(null);
    const { submitter } = event.nativeEvent as SubmitEvent;
    const button = submitter?.getAttribute('value') ?? '';
    void hook.handleSubmit((values) => sendTyped(values, button), showWrong)(event);
  }

  function discard() {
    setError(null);
    startFrom(start.current);
  }

  return { id, control: hook.control, hook, enter, submit, pending, dirty, error, refuse, forgive, discard };
}

/** Says that something is wrong: the first such field takes the focus. */
function useFocusWrong(id: string): () => void {
  const [refusedTimes, setRefusedTimes] = useState(0);
  // What is wrong is drawn first, and can then take the focus.
  useEffect(() => {
    if (refusedTimes > 0) focusFirstWrong(id);
  }, [refusedTimes, id]);
  return () => setRefusedTimes((times) => times + 1);
}
