import type { Changeover, ChangeoverStep, Train } from './answer.js';
import type { Item } from '../register/item.js';
import type { Rig } from '../register/lab.js';
import { MAY_STAY } from '../search/score.js';
import type { MatchSettings } from '../ask/settings.js';

/** What a chamber has to do for the next test; null when none is used. */
export interface Warming {
  chamberId: string;
  fromC: number;
  toC: number;
  rampMin: number;
  soakMin: number;
}

/**
 * The work from what hangs on a frame to a train: what comes off, stays, goes on, is checked and warmed, with the lab's minutes.
 * What stands beside the specimen may stay when the next test has no use for it.
 *
 * @param item looks an item up by its id; one that is unknown is left out
 */
export function changeoverBetween(
  rig: Rig,
  train: Pick<Train, 'links'>,
  settings: MatchSettings,
  item: (id: string) => Item | undefined,
  warming: Warming | null = null,
): Changeover {
  const wanted = new Set(train.links.map(({ itemId }) => itemId));
  const hanging = rig.itemIds.flatMap((id) => item(id) ?? []);
  const off = hanging
    .filter(({ id, kind }) => !wanted.has(id) && !MAY_STAY.includes(kind))
    .map((each) => step('take-off', each, settings));
  const keep = hanging
    .filter(({ id, kind }) => wanted.has(id) || MAY_STAY.includes(kind))
    .map((each) => kept(each, wanted.has(each.id)));
  const fresh = [...wanted].filter((id) => !rig.itemIds.includes(id)).flatMap((id) => item(id) ?? []);
  const on = fresh.map((each) => step('put-on', each, settings));
  const check = fresh.filter(({ kind }) => kind === 'load-cell').map((cell) => checked(cell, settings));
  const steps = [...off, ...keep, ...on, ...check, ...warm(warming)];
  return { minutes: steps.reduce((sum, { minutes }) => sum + minutes, 0), steps };
}

function step(kind: 'take-off' | 'put-on', item: Item, settings: MatchSettings): ChangeoverStep {
  const why = kind === 'take-off' ? `${item.tag} comes off` : `${item.tag} goes on`;
  return { step: kind, itemId: item.id, minutes: settings.changeMin[item.kind], why };
}

function kept({ id, tag }: Item, used: boolean): ChangeoverStep {
  return { step: 'keep', itemId: id, minutes: 0, why: used ? `${tag} stays` : `${tag} may stay aside` };
}

function checked({ id, tag }: Item, settings: MatchSettings): ChangeoverStep {
  return { step: 'check', itemId: id, minutes: settings.shiftCheckMin, why: `${tag} was fitted: shift check` };
}

function warm(warming: Warming | null): ChangeoverStep[] {
  if (!warming || warming.rampMin + warming.soakMin === 0) return [];
  const { chamberId, fromC, toC, rampMin, soakMin } = warming;
  return [
    { step: 'warm', itemId: chamberId, minutes: rampMin + soakMin, why: `from ${fromC} °C to ${toC} °C, then soak` },
  ];
}
