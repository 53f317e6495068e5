import { setupSheet } from '#libs/bench/src/index.js';
import type { ChangeoverStep, SheetLine } from '#libs/bench/src/index.js';
import type { SetupStepView, TrainItemView } from '#libs/contract/src/index.js';
import { changeoverBetween, equalUnits, ratingAt } from '#libs/matching/src/index.js';
import type { Item, Lab, LinkRole, Needs, Rig } from '#libs/matching/src/index.js';
import type { TrainLink } from '#libs/records/src/index.js';
import type { BenchFacts } from '../job/bench-facts.js';

/** The setup sheet of a job with a train and what was confirmed of it so far. */
export function sheetOf(
  facts: BenchFacts,
  { train, checks }: { train: readonly TrainLink[]; checks: BenchFacts['job']['checks'] } = {
    train: facts.train,
    checks: facts.job.checks,
  },
): SheetLine[] {
  return setupSheet({ steps: stepsTo(train, facts), train, rig: facts.rig, checks, problems: facts.fit.problems });
}

/** The same as the bench shows it. */
export function setupView(facts: BenchFacts): SetupStepView[] {
  const items = new Map(facts.lab.items.map((item) => [item.id, item]));
  return sheetOf(facts).map(({ action, role, minutes, item: { id }, confirmed, confirmedAt, problem }) => {
    const item = items.get(id)!;
    return {
      ...{ action, minutes, confirmed, confirmedAt, problem },
      item: { ...itemView(role, item, facts.work.needs), place: placeOf(item, facts.lab, facts.frameId) },
      standIns: action === 'put-on' || problem !== null ? standIns(facts, id) : [],
    };
  });
}

/** The work from the rig to a train, as matching counts it. */
function stepsTo(train: readonly TrainLink[], { lab, rig, frameId, settings }: BenchFacts): ChangeoverStep[] {
  const items = new Map(lab.items.map((item) => [item.id, item]));
  const now: Rig = { frameId: frameId ?? '', itemIds: rig.map(({ itemId }) => itemId), chamberC: null };
  const links = train.map(({ role, itemId }) => ({
    ...{ role: role as LinkRole, itemId, poolKey: itemId, pool: [itemId] },
  }));
  const { steps } = changeoverBetween(now, { links }, settings.matching, (id) => items.get(id));
  return steps.flatMap(({ step, itemId, minutes }) => {
    const item = items.get(itemId ?? '');
    const isWork = step === 'take-off' || step === 'keep' || step === 'put-on';
    return item && isWork ? [{ action: step, item, minutes }] : [];
  });
}

/** Where to fetch it: an item that hangs on another frame has to come off there first. */
function placeOf({ id, place }: Item, lab: Lab, frameId: string | null): string {
  const on = lab.rigs.find((rig) => rig.frameId !== frameId && rig.itemIds.includes(id));
  const frame = lab.items.find((item) => item.id === on?.frameId);
  return frame ? `frame ${frame.tag}` : place;
}

function standIns({ lab, busy }: BenchFacts, itemId: string): SetupStepView['standIns'] {
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
