import { wrongItem } from '#libs/bench/src/index.js';
import type { Finding, TrainProblem } from '#libs/bench/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { equalUnits } from '#libs/matching/src/index.js';
import type { Item, Lab } from '#libs/matching/src/index.js';
import type { TrainLink } from '#libs/records/src/index.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { trainFit } from '../job/train-fit.js';
import { periodOf } from '../job/work-of.js';

/** As typed or scanned: case and blanks around do not count. @throws LabError `item/unknown` */
export function itemByTag(lab: Lab, tag: string): Item {
  const wanted = tag.trim().toLowerCase();
  const item = lab.items.find((each) => each.tag.toLowerCase() === wanted);
  if (item) return item;
  throw new LabError(
    'item/unknown',
    `No item of the register has the tag ${tag.trim()}. Scan it again, or look at its label.`,
    { tag },
  );
}

/** Why an item is not the one for this train. */
export function wrongItemOf(facts: BenchFacts, item: Item): Finding {
  const open = facts.train.filter(({ confirmedAt }) => !confirmedAt);
  const itemOf = (id: string) => facts.lab.items.find((each) => each.id === id);
  const tagOf = (id: string) => itemOf(id)?.tag ?? 'an item';
  return wrongItem({
    item,
    expected: open.map(({ itemId }) => tagOf(itemId)),
    inUseBy: facts.busy.get(item.id) ?? null,
    places: open
      .filter(({ itemId }) => itemOf(itemId)?.kind === item.kind)
      .map(({ itemId }) => ({
        ...{ itemId, tag: tagOf(itemId), isEqual: isEqual(facts.lab, itemId, item) },
        problems: problemsWith(facts, replaced(facts.train, itemId, item.id)),
      })),
  });
}

/** Whether an item may take the place of another: nobody has it, no rule speaks against it, and both are equal units. */
export function mayStandIn(facts: BenchFacts, item: Item, plannedId: string): boolean {
  const train = replaced(facts.train, plannedId, item.id);
  return !facts.busy.has(item.id) && isEqual(facts.lab, plannedId, item) && problemsWith(facts, train).length === 0;
}

/** The train with one item in the place of another, not confirmed yet. */
export function replaced(train: readonly TrainLink[], plannedId: string, itemId: string): TrainLink[] {
  return train.map((link) => (link.itemId === plannedId ? { role: link.role, itemId } : link));
}

function isEqual(lab: Lab, plannedId: string, { id }: Item): boolean {
  return equalUnits(lab, plannedId).some((unit) => unit.id === id);
}

function problemsWith(facts: BenchFacts, links: readonly TrainLink[]): TrainProblem[] {
  const { lab, frameId, work, settings, nowMs, specimensLeft } = facts;
  const period = periodOf(work, nowMs, specimensLeft);
  return trainFit(lab, { frameId: frameId!, links }, work.needs, period, settings.matching).problems;
}
