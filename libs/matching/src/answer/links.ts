import type { Adapter, Item, ItemKind } from '../register/item.js';
import { isPair } from '../rules/parts.js';
import type { EndItem, Parts } from '../rules/parts.js';
import type { Link, LinkRole, Train } from './answer.js';
import type { UnitPool } from './unit-pools.js';

/** Calls with each place of a train and its item, from crosshead to base, then with what stands beside the specimen. */
export function forEachPlace(
  { cell, cellAt, adapters, ends, faces, extensometer, chamber, guard, thermocouple }: Parts,
  call: (role: LinkRole, item: Item) => void,
): void {
  const pair = isPair(ends);
  const at = (role: LinkRole, item: Item | null | undefined) => {
    if (item) call(role, item);
  };
  at('load-cell', cellAt === 'crosshead' ? cell : null);
  at('upper-adapter', adapters.upper[0]);
  at('upper-adapter-2', adapters.upper[1]);
  at(pair ? 'ends' : 'upper', ends.upper);
  at('faces', faces);
  at('lower', pair ? null : ends.lower);
  // Adapters are listed from frame to specimen, the drawing goes down to the frame.
  at('lower-adapter-2', adapters.lower[1]);
  at('lower-adapter', adapters.lower[0]);
  at('load-cell', cellAt === 'base' ? cell : null);
  at('extensometer', extensometer);
  at('chamber', chamber);
  at('guard', guard);
  at('thermocouple', thermocouple);
}

/** The places of a train as links. Without a known pool, a link holds its own unit only. */
export function linksOf(parts: Parts, pools: readonly UnitPool[] = []): Link[] {
  const links: Link[] = [];
  forEachPlace(parts, (role, { id: itemId }) => {
    const known = pools.find(({ first }) => first.id === itemId);
    links.push({ role, itemId, poolKey: known?.poolKey ?? itemId, pool: known?.pool ?? [itemId] });
  });
  return links;
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
