const DONE_WITH: readonly string[] = ['tested', 'invalid', 'not-tested'];

/** Whether a specimen has still to be tested. */
export function isOpen({ fate }: { fate: string }): boolean {
  return !DONE_WITH.includes(fate);
}
