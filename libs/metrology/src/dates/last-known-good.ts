/** What shows that an item was right at an instant, UTC ms. */
export interface Evidence {
  atMs: number;
  kind: 'calibration' | 'shift-check';
  /** Whether the item was found right, before any adjustment. */
  good: boolean;
}

/**
 * The last instant before a finding at which an item was shown to be right; whatever it measured after that is in doubt.
 * Null when nothing shows it, so that everything it ever measured is.
 *
 * A calibration that found it wrong but adjusted it makes it right from then on: give that as good, and the finding itself as
 * `foundMs`.
 *
 * @param foundMs when it was found wrong
 */
export function lastKnownGood(evidence: readonly Evidence[], foundMs: number): Evidence | null {
  const good = evidence.filter(({ good, atMs }) => good && atMs < foundMs);
  return good.reduce<Evidence | null>((last, next) => (last && last.atMs >= next.atMs ? last : next), null);
}
