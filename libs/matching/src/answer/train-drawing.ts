import { formatQuantity } from '#libs/units/src/index.js';
import type { LinkRole, Train, TrainSegment } from './answer.js';
import type { Item } from '../register/item.js';
import type { Needs } from '../ask/needs.js';
import { ratingAt } from '../register/rating-at.js';
import { cellCapacityFor } from '../rules/cell-capacity.js';

const BESIDE: readonly LinkRole[] = ['extensometer', 'chamber', 'guard', 'thermocouple', 'faces'];
/** Width of a part that says none: a pull rod's, mm. */
const SLIM_MM = 40;

/**
 * The train as stacked segments from crosshead to base, lengths to scale; a pair stands above and below the specimen.
 *
 * @param item looks an item up by its id
 */
export function trainDrawing(train: Train, needs: Needs, item: (id: string) => Item | undefined): TrainSegment[] {
  const placed = train.links.flatMap(({ role, itemId }) => {
    const found = item(itemId);
    return found ? [{ role, item: found }] : [];
  });
  const frame = item(train.frameId);
  const stack = placed.filter(({ role }) => !BESIDE.includes(role));
  const cut = stack.findIndex(({ role }) => role === 'ends' || role === 'upper');
  const above = stack.slice(0, cut + 1).map((each) => segment(each.role, each.item, needs, false));
  const pair = stack[cut]?.role === 'ends' ? [segment('ends', stack[cut].item, needs, true)] : [];
  const below = stack.slice(cut + 1).map((each) => segment(each.role, each.item, needs, false));
  const beside = placed
    .filter(({ role }) => BESIDE.includes(role))
    .map((each) => ({ ...segment(each.role, each.item, needs, false), beside: true }));
  return [bar('crosshead', frame), ...above, specimen(needs), ...pair, ...below, bar('base', frame), ...beside];
}

function segment(role: LinkRole, item: Item, needs: Needs, lowerHalf: boolean): TrainSegment {
  const half = lowerHalf && 'lowerLengthMm' in item.details ? item.details.lowerLengthMm : null;
  const widthMm = 'outsideWidthMm' in item.details ? item.details.outsideWidthMm : SLIM_MM;
  return {
    role,
    itemId: item.id,
    label: item.tag,
    ratingText: ratingText(item, needs),
    lengthMm: half ?? item.lengthMm,
    widthMm,
    beside: false,
  };
}

function ratingText(item: Item, needs: Needs): string {
  const rating =
    item.kind === 'load-cell' ? cellCapacityFor(item, needs) : ratingAt(item, needs.direction, needs.temperature.value);
  if (rating === 0) return '';
  return formatQuantity(rating, needs.loadUnit === 'N' && rating >= 1000 ? 'kN' : needs.loadUnit, 4);
}

function specimen({ specimen: { freeLengthMm, bodyWidthMm } }: Needs): TrainSegment {
  return {
    role: 'specimen',
    itemId: null,
    label: 'Specimen',
    ratingText: '',
    lengthMm: freeLengthMm,
    widthMm: bodyWidthMm,
    beside: false,
  };
}

function bar(role: 'crosshead' | 'base', frame: Item | undefined): TrainSegment {
  const widthMm = frame?.kind === 'frame' ? frame.details.columnClearanceMm : 0;
  const label = role === 'crosshead' ? 'Crosshead' : 'Base';
  return {
    role,
    itemId: frame?.id ?? null,
    label: frame ? `${label} of ${frame.tag}` : label,
    ratingText: '',
    lengthMm: 0,
    widthMm,
    beside: false,
  };
}
