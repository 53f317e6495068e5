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
export function wrongItem(facts: BenchFacts, item: Item): LabError {
  const open = facts.train.filter(({ confirmedAt }) => !confirmedAt);
  const expected = open.map(({ itemId }) => tagOf(facts.lab, itemId));
  const { sentence, ...more } = whyWrong(facts, item, open);
  const wanted = `Wanted is ${expected.join(' or ') || 'nothing more'}.`;
  return new LabError('bench/wrong-item', `${sentence} ${wanted}`, { found: item.tag, allowed: expected, ...more });
}

interface Why {
  sentence: string;
  /** Job that has the item now. */
  inUseBy?: string;
  /** Rules that it would break. */
  rules?: string[];
  /** Item for which it could stand in. */
  standInFor?: string;
}

function whyWrong(facts: BenchFacts, item: Item, open: readonly TrainLink[]): Why {
  const inUseBy = facts.busy.get(item.id);
  if (inUseBy) return { sentence: `${item.tag} is in use by ${inUseBy}.`, inUseBy };
  const [nearest] = open
    .filter(({ itemId }) => kindOf(facts.lab, itemId) === item.kind)
    .map((place) => ({ place, problems: problemsWith(facts, item, place) }))
    .sort((a, b) => a.problems.length - b.problems.length);
  if (!nearest) return { sentence: `${item.tag} (${item.name}) has no place in this train.` };
  const { place, problems } = nearest;
  const planned = tagOf(facts.lab, place.itemId);
  if (problems.length > 0) {
    const said = problems.map(({ sentence }) => sentence).join(' ');
    return {
      sentence: `${item.tag} cannot take the place of ${planned}: ${said}`,
      rules: problems.map(({ rule }) => rule),
    };
  }
  if (equalUnits(facts.lab, place.itemId).some(({ id }) => id === item.id)) {
    return {
      sentence: `${item.tag} is not the one on the sheet, but an equal unit: let it stand in for ${planned}.`,
      standInFor: place.itemId,
    };
  }
  return {
    sentence: `${item.tag} breaks no rule here, but it is not equal to ${planned}, for which the plan was made.`,
  };
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
