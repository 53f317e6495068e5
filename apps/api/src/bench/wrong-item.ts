import { LabError } from '#libs/errors/src/index.js';
import { equalUnits } from '#libs/matching/src/index.js';
import type { Item, Lab } from '#libs/matching/src/index.js';
import type { TrainLink } from '#libs/records/src/index.js';
import type { BenchFacts } from './bench-facts.js';
import { periodOf } from './needed.js';
import { trainFit } from './train-fit.js';
import type { TrainProblem } from './train-fit.js';

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

/** Why an item is not the one for this train: who has it, the rules that it would break, or that an equal unit was meant. */
export function refuseWrongItem(facts: BenchFacts, item: Item): LabError {
  const places = facts.train.filter(
    ({ itemId, confirmedAt }) => !confirmedAt && kindOf(facts.lab, itemId) === item.kind,
  );
  const expected = facts.train.filter(({ confirmedAt }) => !confirmedAt).map(({ itemId }) => tagOf(facts.lab, itemId));
  const known = { found: item.tag, allowed: expected };
  const wanted = `Wanted is ${expected.join(' or ') || 'nothing more'}.`;
  const holder = facts.busy.get(item.id);
  if (holder)
    return new LabError('bench/wrong-item', `${item.tag} is in use by ${holder}. ${wanted}`, {
      ...known,
      inUseBy: holder,
    });
  if (places.length === 0)
    return new LabError('bench/wrong-item', `${item.tag} (${item.name}) has no place in this train. ${wanted}`, known);
  const tried = places
    .map((place) => ({ place, problems: problemsWith(facts, item, place) }))
    .sort((a, b) => a.problems.length - b.problems.length);
  const { place, problems } = tried[0]!;
  const planned = tagOf(facts.lab, place.itemId);
  if (problems.length > 0) {
    const said = problems.map(({ sentence }) => sentence).join(' ');
    return new LabError('bench/wrong-item', `${item.tag} cannot take the place of ${planned}: ${said} ${wanted}`, {
      ...known,
      rules: problems.map(({ rule }) => rule),
    });
  }
  if (equalUnits(facts.lab, place.itemId).some(({ id }) => id === item.id)) {
    return new LabError(
      'bench/wrong-item',
      `${item.tag} is not the one on the sheet, but an equal unit: let it stand in for ${planned}, or fit ${planned}.`,
      { ...known, standInFor: place.itemId },
    );
  }
  return new LabError(
    'bench/wrong-item',
    `${item.tag} breaks no rule here, but it is not equal to ${planned}, for which the plan was made. ${wanted}`,
    known,
  );
}

function problemsWith(
  { lab, train, frameId, work, settings, nowMs, specimensLeft }: BenchFacts,
  item: Item,
  place: TrainLink,
): TrainProblem[] {
  const links = train.map((link) => (link === place ? { role: link.role, itemId: item.id } : link));
  return trainFit(
    lab,
    { frameId: frameId!, links },
    work.needs,
    periodOf(work, nowMs, specimensLeft),
    settings.matching,
  ).problems;
}

function tagOf(lab: Lab, itemId: string): string {
  return lab.items.find(({ id }) => id === itemId)?.tag ?? 'an item';
}

function kindOf(lab: Lab, itemId: string): string | undefined {
  return lab.items.find(({ id }) => id === itemId)?.kind;
}
