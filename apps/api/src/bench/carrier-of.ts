import type { Carrier } from '#libs/bench/src/index.js';
import { loadAt, plasticTorque } from '#libs/matching/src/index.js';
import type { Ask, Geometry, Item, Method, Needs } from '#libs/matching/src/index.js';
import { dimensionsNeeded, isMeasured, measuredGeometry } from './dimensions.js';

interface Facts {
  trainItems: readonly { role: string; item: Item }[];
  lab: { items: readonly Item[] };
  frameId: string | null;
  work: { needs: Needs; method: Method; ask: Ask };
}

/** What carried a specimen: the cell and the frame of the train, and the load that a stress means on the lengths of the specimen. */
export function carrierOf(
  { trainItems, lab, frameId, work }: Facts,
  dimensions: Readonly<Record<string, readonly number[]>>,
): Carrier {
  const { method, ask, needs } = work;
  const frame = lab.items.find(({ id }) => id === frameId);
  return {
    cell: cellOf(trainItems, needs),
    loadUnit: needs.loadUnit,
    loadPerStress: loadPerStress(measuredGeometry(ask, dimensions), method),
    isMeasured: isMeasured(dimensionsNeeded(method, ask), dimensions),
    travelMm: frame?.kind === 'frame' && needs.loadUnit === 'N' ? frame.details.travelMm : null,
  };
}

function cellOf(trainItems: Facts['trainItems'], { direction }: Needs): Carrier['cell'] {
  const cell = trainItems.find(({ role }) => role === 'load-cell')?.item;
  if (cell?.kind !== 'load-cell') return { tag: 'The cell', capacity: 0 };
  const { capacityN, torqueCapacityNm } = cell.details;
  return { tag: cell.tag, capacity: direction === 'torque' ? torqueCapacityNm : capacityN };
}

/** Of a bar that yields throughout, where the method says so; of an elastic one elsewhere. */
export function loadPerStress(geometry: Geometry, method: Method): number | null {
  const { value } = isPlastic(method) ? plasticTorque(1, geometry) : loadAt(1, geometry, method);
  return Number.isFinite(value) && value > 0 ? value : null;
}

function isPlastic({ testType, reduction }: Method): boolean {
  return testType === 'torsion' && reduction['torsionStress'] === 'plastic';
}
