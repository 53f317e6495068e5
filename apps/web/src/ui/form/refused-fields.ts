/** What is wrong with one field of what was sent. */
export interface FieldRefusal {
  /** Its path in the body: `batches[1].ask.width`. */
  field: string;
  /** A sentence that can stand alone. */
  sentence: string;
  /** The sentence without the name of the field at its head, where it begins with one: `is missing.` */
  rest?: string | undefined;
}

/** The refusals that an error carries, field by field; none where it is about no field. */
export function refusalsIn(error: unknown): readonly FieldRefusal[] {
  const found = (error as { refusals?: unknown } | null)?.refusals;
  return Array.isArray(found) ? (found as FieldRefusal[]) : [];
}

/** A path of a body as a form names its fields: `batches[1].ask.width` is `batches.1.ask.width`. */
export function nameOf(path: string): string {
  return path.replace(/\[(\w+)\]/g, '.$1');
}

/**
 * The field of a form that a refused path belongs to: the field of that name, or the nearest one that holds it.
 *
 * @returns null where the form has no such field
 */
export function fieldFor(path: string, names: readonly string[]): string | null {
  for (let name = nameOf(path); name; name = name.slice(0, Math.max(0, name.lastIndexOf('.'))))
    if (names.includes(name)) return name;
  return null;
}

/** The sentence as people read it beside the field: with the name by which the form calls it. */
export function withLabel({ sentence, rest }: FieldRefusal, label: string): string {
  return rest === undefined ? sentence : `${label} ${rest}`;
}
