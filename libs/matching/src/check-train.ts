import type { Link, LimitStops, Train, Verdict } from './answer.js';
import type { Adapter, Item, ItemKind, TimeWindow } from './item.js';
import { judgeTrain } from './judge-train.js';
import type { Lab } from './lab.js';
import type { Needs } from './needs.js';
import type { EndItem, Parts } from './parts.js';
import { together } from './rules/calibration-in-force.js';
import { limitStopsOf } from './space.js';
import { indexLab } from './search/lab-index.js';
import { RequestContext } from './search/request-context.js';
import { DEFAULT_SETTINGS } from './settings.js';
import type { MatchSettings } from './settings.js';

/** What the rules say about one train that somebody put together. */
export interface TrainCheck {
  verdicts: readonly Verdict[];
  passes: boolean;
  /** When all of its units are usable and somebody authorised is on shift. */
  windows: readonly TimeWindow[];
  limitStops: LimitStops;
}

/**
 * Judges one given train by every rule, unit by unit: at the bench when an equal unit stands in, in trial plans, and to re-check a
 * candidate. Nothing is searched.
 *
 * @param period when the test would run, half-open, UTC
 * @returns null when the train is not one: no frame, no cell, nothing that holds the specimen, or an unknown item
 */
export function checkTrain(
  lab: Lab,
  train: Pick<Train, 'frameId'> & { links: readonly Pick<Link, 'role' | 'itemId'>[] },
  needs: Needs,
  period: TimeWindow,
  settings: MatchSettings = DEFAULT_SETTINGS,
): TrainCheck | null {
  const { byId } = indexLab(lab);
  const parts = partsOf(train, byId);
  if (!parts) return null;
  const context = new RequestContext(needs, settings, period, lab.technicians);
  const verdicts = judgeTrain(parts, context, (id) => byId.get(id)?.tag ?? id);
  return {
    verdicts,
    passes: verdicts.every(({ outcome }) => outcome !== 'fail'),
    windows: together(parts, context),
    limitStops: limitStopsOf(parts, needs, settings),
  };
}

/** Links as parts; the cell's place follows from its place among the links. */
export function partsOf(
  { frameId, links }: Pick<Train, 'frameId'> & { links: readonly Pick<Link, 'role' | 'itemId'>[] },
  byId: ReadonlyMap<string, Item>,
): Parts | null {
  if (links.some(({ itemId }) => !byId.has(itemId))) return null;
  const at = (role: Link['role']) => byId.get(links.find((link) => link.role === role)?.itemId ?? '');
  const frame = byId.get(frameId);
  const cell = at('load-cell');
  const upper = at('ends') ?? at('upper');
  const lower = at('ends') ?? at('lower');
  if (frame?.kind !== 'frame' || cell?.kind !== 'load-cell' || !isEnd(upper) || !isEnd(lower)) return null;
  const endAt = links.findIndex(({ role }) => role === 'ends' || role === 'upper');
  const cellAt = links.findIndex(({ role }) => role === 'load-cell');
  const adapters = (...roles: Link['role'][]) =>
    roles.map(at).filter((item): item is Adapter => item?.kind === 'adapter');
  return {
    frame,
    cell,
    cellAt: cellAt < endAt ? 'crosshead' : 'base',
    adapters: {
      upper: adapters('upper-adapter', 'upper-adapter-2'),
      lower: adapters('lower-adapter', 'lower-adapter-2'),
    },
    ends: { upper, lower },
    faces: only('jaw-face', at('faces')),
    extensometer: only('extensometer', at('extensometer')),
    chamber: only('chamber', at('chamber')),
    guard: only('guard', at('guard')),
    thermocouple: only('transducer', at('thermocouple')),
  };
}

function isEnd(item: Item | undefined): item is EndItem {
  return item?.kind === 'grip' || item?.kind === 'fixture' || item?.kind === 'platen';
}

function only<K extends ItemKind>(kind: K, item: Item | undefined): Extract<Item, { kind: K }> | null {
  return item?.kind === kind ? (item as Extract<Item, { kind: K }>) : null;
}
