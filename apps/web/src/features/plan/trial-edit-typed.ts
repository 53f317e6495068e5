import type { TrialEdit } from '#libs/contract/src/index.js';
import { parseNumber } from '#libs/units/src/index.js';
import type { Moments } from '../../ui/moments.js';

export type EditKind = 'frame-down' | 'extra-shift' | 'extra-item' | 'technician-off' | 'hold' | 'weight';

/** A change of a trial plan as it is typed; each kind takes some of the fields. */
export interface EditTyped {
  kind: EditKind;
  frameId: string;
  personId: string;
  likeItemId: string;
  startsAt: string;
  endsAt: string;
  why: string;
  weight: string;
}

type FieldOfEdit = Exclude<keyof EditTyped, 'kind'> | 'jobId';

/** What each kind of change needs. */
const NEEDS: Record<EditKind, readonly FieldOfEdit[]> = {
  'frame-down': ['frameId', 'startsAt', 'endsAt', 'why'],
  'extra-shift': ['frameId', 'personId', 'startsAt', 'endsAt'],
  'extra-item': ['likeItemId'],
  'technician-off': ['personId', 'startsAt', 'endsAt'],
  hold: ['jobId', 'why'],
  weight: ['jobId', 'weight'],
};

const MISSING: Record<FieldOfEdit, string> = {
  frameId: 'Choose the frame.',
  personId: 'Choose the technician.',
  likeItemId: 'Choose the item.',
  startsAt: 'Give the beginning.',
  endsAt: 'Give the end.',
  why: 'Say why.',
  weight: 'Give a number above 0.',
  jobId: 'Choose a job on the lanes first.',
};

export function takes(kind: EditKind, field: FieldOfEdit): boolean {
  return NEEDS[kind].includes(field);
}

/** What is missing of a change, by field. @param jobId the job chosen on the lanes */
export function missingOf(typed: EditTyped, jobId: string | null): Record<string, string> {
  const given: Record<FieldOfEdit, string | null> = { ...typed, jobId, weight: weightOf(typed) ? typed.weight : '' };
  const missing = NEEDS[typed.kind].filter((field) => !given[field]?.trim());
  return Object.fromEntries(missing.map((field) => [field, MISSING[field]]));
}

/** The change as the server takes it; nothing of it is missing. */
export function editOf(typed: EditTyped, jobId: string | null, { fromLocalInput }: Moments): TrialEdit {
  const { kind, frameId, personId, likeItemId, why } = typed;
  const span = { startsAt: fromLocalInput(typed.startsAt) ?? '', endsAt: fromLocalInput(typed.endsAt) ?? '' };
  switch (kind) {
    case 'frame-down':
      return { kind, frameId, ...span, why };
    case 'extra-shift':
      return { kind, frameId, personId, ...span };
    case 'technician-off':
      return { kind, personId, ...span };
    case 'extra-item':
      return { kind, likeItemId };
    case 'hold':
      return { kind, jobId: jobId ?? '', why };
    case 'weight':
      return { kind, jobId: jobId ?? '', weight: weightOf(typed) ?? 0 };
  }
}

function weightOf({ weight }: EditTyped): number | null {
  const read = parseNumber(weight);
  return 'reason' in read || read.value <= 0 ? null : read.value;
}
