import { takenOffKey } from './setup-sheet.js';
import type { SetupLink, Sheet } from './setup-sheet.js';

/** What hangs on the frame when work stops: what hung there and was not taken off, and what of the train was confirmed. */
export function leftOnFrame(
  { train, checks }: { train: readonly SetupLink[]; checks: Readonly<Record<string, unknown>> },
  rig: Sheet['rig'],
): { itemId: string; role: string }[] {
  const stayed = rig.filter(({ itemId }) => !(takenOffKey(itemId) in checks));
  const added = train.filter(
    ({ itemId, confirmedAt }) => confirmedAt && !stayed.some((link) => link.itemId === itemId),
  );
  return [...stayed, ...added].map(({ itemId, role }) => ({ itemId, role }));
}
