import { calendarOf, shiftAt } from '#libs/calendar/src/index.js';
import type { LabSettings } from '#libs/contract/src/index.js';
import { shiftCheckNeeded } from '#libs/metrology/src/index.js';
import type { ShiftCheckReason } from '#libs/metrology/src/index.js';
import type { RigLinkEntity, ShiftCheckEntity } from '#libs/records/src/index.js';

interface Facts {
  nowMs: number;
  settings: LabSettings;
  closedDays: readonly string[];
  cellId: string | undefined;
  rig: readonly RigLinkEntity[];
  last: ShiftCheckEntity | null;
}

/** Why the cell needs a shift check before the next test, or null when the last one holds. */
export function shiftCheckReason({ nowMs, settings, closedDays, cellId, rig, last }: Facts): ShiftCheckReason | null {
  const fitted = rig.find(({ itemId }) => itemId === cellId);
  const shift = shiftAt(calendarOf(settings, closedDays), nowMs);
  return shiftCheckNeeded({
    nowMs,
    lastCheck: last && { atMs: last.at.getTime(), passed: last.passed },
    fittedAtMs: fitted?.fittedAt.getTime() ?? nowMs,
    shiftStartMs: shift?.startMs ?? null,
    overloadedAtMs: null,
    longestHours: settings.shiftCheckValidMin / 60,
  });
}
