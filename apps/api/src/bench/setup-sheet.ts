import type { SetupStepView, TrainItemView } from '#libs/contract/src/index.js';
import { changeoverBetween, equalUnits, ratingAt } from '#libs/matching/src/index.js';
import type { Item, Lab, LinkRole, MatchSettings, Needs, Rig } from '#libs/matching/src/index.js';
import type { JobEntity, RigLinkEntity, TrainLink } from '#libs/records/src/index.js';

/** From crosshead to base, then what stands beside the specimen: so a train is fitted, and the other way round it comes off. */
const WORKING_ORDER: readonly string[] = [
  ...[
    'load-cell',
    'upper-adapter',
    'upper-adapter-2',
    'upper',
    'ends',
    'lower-adapter',
    'lower-adapter-2',
    'lower',
    'faces',
  ],
  ...['chamber', 'thermocouple', 'extensometer', 'guard'],
];

/** What the sheet is made from, out of all that the bench knows of a job. */
export interface Sheet {
  job: Pick<JobEntity, 'checks'>;
  train: readonly TrainLink[];
  frameId: string | null;
  /** What hangs on the frame now. */
  rig: readonly Pick<RigLinkEntity, 'itemId' | 'role'>[];
  lab: Lab;
  work: { needs: Needs };
  settings: { matching: MatchSettings };
  /** Items that another job has now. */
  busy: ReadonlyMap<string, string>;
}

/** The setup sheet: what is on the frame against what has to be there, in working order. */
export function setupSheet({ job, train, frameId, rig, lab, work: { needs }, settings, busy }: Sheet): SetupStepView[] {
  const items = new Map(lab.items.map((item) => [item.id, item]));
  const now: Rig = { frameId: frameId ?? '', itemIds: rig.map(({ itemId }) => itemId), chamberC: null };
  const links = train.map(({ role, itemId }) => ({
    role: role as LinkRole,
    itemId,
    poolKey: itemId,
    pool: [itemId],
  }));
  const { steps } = changeoverBetween(now, { links }, settings.matching, (id) => items.get(id));
  const placed = steps.flatMap(({ step, itemId, minutes }) => {
    const item = items.get(itemId ?? '');
    if (!item || (step !== 'take-off' && step !== 'keep' && step !== 'put-on')) return [];
    const link = train.find((each) => each.itemId === item.id);
    const role = link?.role ?? rig.find((each) => each.itemId === item.id)?.role ?? item.kind;
    return [{ action: step, role, minutes, item, link }];
  });
  return [...sorted(placed, 'take-off').reverse(), ...sorted(placed, 'keep'), ...sorted(placed, 'put-on')].map(
    ({ action, role, minutes, item, link }) => ({
      action,
      item: { ...itemView(role, item, needs), place: placeOf(item, lab, now.frameId) },
      minutes,
      ...confirmation(action, item.id, link, job.checks),
      standIns: action === 'put-on' ? standIns(lab, item.id, busy) : [],
    }),
  );
}

function sorted<Placed extends { action: string; role: string }>(placed: readonly Placed[], action: string): Placed[] {
  return placed
    .filter((each) => each.action === action)
    .sort((a, b) => WORKING_ORDER.indexOf(a.role) - WORKING_ORDER.indexOf(b.role));
}

/** Name under which a job keeps that an item was taken off. */
export function takenOffKey(itemId: string): string {
  return `off-${itemId}`;
}

/** What only stays aside needs no confirmation. */
function confirmation(action: string, itemId: string, link: TrainLink | undefined, checks: JobEntity['checks']) {
  if (action === 'keep' && !link) return { confirmed: true, confirmedAt: null };
  const at = link ? (link.confirmedAt ?? null) : (checks[takenOffKey(itemId)]?.at ?? null);
  return { confirmed: at !== null, confirmedAt: at };
}

/** Where to fetch it: an item that hangs on another frame has to come off there first. */
function placeOf({ id, place }: Item, lab: Lab, frameId: string): string {
  const on = lab.rigs.find((rig) => rig.frameId !== frameId && rig.itemIds.includes(id));
  const frame = lab.items.find((item) => item.id === on?.frameId);
  return frame ? `frame ${frame.tag}` : place;
}

function standIns(lab: Lab, itemId: string, busy: ReadonlyMap<string, string>): SetupStepView['standIns'] {
  return equalUnits(lab, itemId)
    .filter(({ id, state }) => state === 'in-service' && !busy.has(id))
    .map(({ id, tag }) => ({ itemId: id, tag }));
}

/** An item as the bench shows it. */
export function itemView(role: string, item: Item, needs: Needs): TrainItemView {
  const rating = ratingOf(item, needs);
  return {
    ...{ role, itemId: item.id, tag: item.tag, name: item.name, kind: item.kind, place: item.place },
    ...{ lengthMm: item.lengthMm, massKg: item.massKg },
    rating,
    ratingUnit: rating === null ? null : needs.loadUnit,
  };
}

function ratingOf(item: Item, { direction, temperature }: Needs): number | null {
  if (item.kind === 'load-cell') return direction === 'torque' ? item.details.torqueCapacityNm : item.details.capacityN;
  return ratingAt(item, direction, temperature.value) || null;
}
