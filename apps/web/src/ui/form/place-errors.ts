import type { FieldValues, Path, UseFormReturn } from 'react-hook-form';
import { fieldFor, refusalsIn, withLabel } from './refused-fields.js';

/**
 * Puts what was refused beside the fields that it is about.
 *
 * @param labels the fields on the screen, by name
 * @param fieldOf how the form calls a path of the body
 * @param isShown whether the form itself shows what is refused of a path, beside a field that is not in `labels`
 * @returns what is left for the head of the form; null when every refusal found its field
 */
export function placeErrors<Values extends FieldValues>(
  hook: UseFormReturn<Values>,
  labels: ReadonlyMap<string, string>,
  thrown: unknown,
  fieldOf: (path: string) => string = (path) => path,
  isShown: (path: string) => boolean = () => false,
): Error | null {
  const refusals = refusalsIn(thrown);
  const names = [...labels.keys()];
  const said = new Map<string, string[]>();
  const homeless = refusals.filter((refusal) => {
    const name = fieldFor(fieldOf(refusal.field), names);
    if (name === null) return !isShown(refusal.field);
    said.set(name, [...(said.get(name) ?? []), withLabel(refusal, labels.get(name)!)]);
    return false;
  });
  for (const [name, sentences] of said)
    hook.setError(name as Path<Values>, { type: 'refused', message: sentences.join(' ') });
  if (refusals.length > 0 && homeless.length === 0) return null;
  if (homeless.length === refusals.length && thrown instanceof Error) return thrown;
  return new Error(homeless.map(({ sentence }) => sentence).join(' '));
}

/** The first field on the sheet that is wrong gets the focus; where it is folded away, it is unfolded. */
export function focusFirstWrong(formId: string): void {
  const form = document.getElementById(formId);
  const wrong = form?.querySelector<HTMLElement>('[aria-invalid="true"]');
  for (let fold = wrong?.closest('details'); fold; fold = fold.parentElement?.closest('details')) fold.open = true;
  (wrong ?? form?.querySelector<HTMLElement>('[role="alert"]'))?.focus();
}
