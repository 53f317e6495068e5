import type { Item } from '../register/item.js';
import type { Lab } from '../register/lab.js';
import { indexLab } from './lab-index.js';

/** Units that may stand in for an item: those that no rule tells apart from it but for their times; itself is not among them. */
export function equalUnits(lab: Lab, itemId: string): readonly Item[] {
  const { byId, pools } = indexLab(lab);
  const item = byId.get(itemId);
  const pool = item && pools.get(item.kind)?.find(({ units }) => units.some(({ id }) => id === itemId));
  return (pool?.units ?? []).filter(({ id }) => id !== itemId);
}
