import type { Item } from '../register/item.js';
import { isPair } from '../rules/parts.js';
import type { Parts } from '../rules/parts.js';
import type { Found } from '../search/best-trains.js';
import type { IndexedFrame, LabIndex } from '../search/lab-index.js';
import type { Link } from './answer.js';

/** Equal units in the order in which a frame would take them. */
export interface UnitPool extends Pick<Link, 'poolKey' | 'pool'> {
  first: Item;
}

function unitPool(units: readonly Item[], { fittedOn }: LabIndex, fitted: ReadonlySet<string>): UnitPool {
  const rank = ({ id }: Item) => (fitted.has(id) ? 0 : fittedOn.has(id) ? 2 : 1);
  const inOrder = units.length === 1 ? units : [...units].sort((a, b) => rank(a) - rank(b));
  const pool = inOrder.map(({ id }) => id);
  return { first: inOrder[0]!, pool, poolKey: leastOf(pool) };
}

/** The order on every frame where none of the units hangs; worked out once a request. */
function standingPool(units: readonly Item[], index: LabIndex, ordered: Map<readonly Item[], UnitPool>): UnitPool {
  const found = ordered.get(units) ?? unitPool(units, index, NOTHING_FITTED);
  ordered.set(units, found);
  return found;
}

const NOTHING_FITTED: ReadonlySet<string> = new Set();

function ledBy(unit: Item, standing: UnitPool): UnitPool {
  const { first, pool, poolKey } = standing;
  return unit === first ? standing : { first: unit, pool: [unit.id, ...pool.filter((id) => id !== unit.id)], poolKey };
}

function leastOf(ids: readonly string[]): string {
  return ids.reduce((least, id) => (id < least ? id : least));
}

/** The units to take: the one that hangs on the frame already, else one that hangs nowhere, else the first by tag. */
export function withUnits(
  { parts, cell, ends, faces, beside, adapterPools }: Found,
  { frame, fitted }: IndexedFrame,
  index: LabIndex,
  ordered: Map<readonly Item[], UnitPool>,
): { parts: Parts; pools: UnitPool[] } {
  const pools: UnitPool[] = [];
  const poolFor = (units: readonly Item[]) =>
    fitted.size > 0 && units.some(({ id }) => fitted.has(id))
      ? unitPool(units, index, fitted)
      : standingPool(units, index, ordered);
  const chosen = <T extends Item | null>(item: T, units: readonly Item[] | undefined): T => {
    if (!item || !units) return item;
    const pool = poolFor(units);
    pools.push(pool);
    return pool.first as T;
  };
  const upper = chosen(parts.ends.upper, ends.units[0]);
  const taken: Parts = {
    frame,
    cell: chosen(parts.cell, cell.units[0]),
    cellAt: parts.cellAt,
    adapters: parts.adapters,
    ends: { upper, lower: isPair(parts.ends) ? upper : chosen(parts.ends.lower, ends.units[1]) },
    faces: chosen(parts.faces, faces.units[0]),
    extensometer: chosen(parts.extensometer, beside.extensometer.units[0]),
    chamber: chosen(parts.chamber, beside.chamber.units[0]),
    guard: chosen(parts.guard, beside.guard.units[0]),
    thermocouple: chosen(parts.thermocouple, beside.thermocouple.units[0]),
  };
  // Adapters are units already: two of one pool may hang in one train.
  for (const [adapter, units] of adapterPools) pools.push(ledBy(adapter, poolFor(units)));
  return { parts: taken, pools };
}
