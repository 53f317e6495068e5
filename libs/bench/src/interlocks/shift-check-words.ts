/** Why a cell needs a shift check before the next test. */
export type ShiftCheckReason =
  'never-checked' | 'failed' | 'overloaded-since' | 'fitted-since' | 'new-shift' | 'too-old';

export const SHIFT_CHECK_WORDS: Record<ShiftCheckReason, string> = {
  'never-checked': 'this cell was never checked on this frame',
  failed: 'the last check failed',
  'overloaded-since': 'the cell was overloaded since the last check',
  'fitted-since': 'the cell was fitted since the last check',
  'new-shift': 'a shift began since the last check',
  'too-old': 'the last check is too old',
};
