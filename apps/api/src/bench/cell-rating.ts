import type { Item, Needs } from '#libs/matching/src/index.js';
import type { Bounds } from './typed-results.js';

/** What the train's cell is rated for in the way of the test: N, or N·m. */
export function cellRating(train: readonly { role: string; item: Item }[], { direction, loadUnit }: Needs): Bounds {
  const cell = train.find(({ role }) => role === 'load-cell')?.item;
  if (cell?.kind !== 'load-cell') return { capacity: Infinity, cellTag: 'The cell', loadUnit };
  const { capacityN, torqueCapacityNm } = cell.details;
  return { capacity: direction === 'torque' ? torqueCapacityNm : capacityN, cellTag: cell.tag, loadUnit };
}
