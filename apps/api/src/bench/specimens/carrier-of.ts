import { isMeasured } from '#libs/bench/src/index.js';
import type { Carrier, LoadPerStress, Readings } from '#libs/bench/src/index.js';
import { loadAt, plasticTorque } from '#libs/matching/src/index.js';
import type { Ask, Geometry, Item, Method, Needs } from '#libs/matching/src/index.js';
import { dimensionKeys, measuredGeometry } from './dimensions-of.js';

interface Facts {
  trainItems: readonly { role: string; item: Item }[];
  lab: { items: readonly Item[] };
  frameId: string | null;
  work: { needs: Needs; method: Method; ask: Ask };
}

/** What carried a specimen: the cell and the frame of the train, and the load that a stress means on the lengths of the specimen. */
export function carrierOf({ trainItems, lab, frameId, work }: Facts, dimensions: Readings): Carrier {
  const { method, ask, needs } = work;
  const frame = lab.items.find(({ id }) => id === frameId);
  const { value } = loadPerStress(measuredGeometry(ask, dimensions), method);
  return {
    cell: cellOf(trainItems, needs),
    loadUnit: needs.loadUnit,
    loadPerStress: Number.isFinite(value) && value > 0 ? value : null,
    isMeasured: isMeasured(dimensionKeys(work), dimensions),
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
export function loadPerStress(geometry: Geometry, method: Method): LoadPerStress {
  const isPlastic = method.testType === 'torsion' && method.reduction['torsionStress'] === 'plastic';
  return isPlastic ? plasticTorque(1, geometry) : loadAt(1, geometry, method);
}
