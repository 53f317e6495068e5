import { G_MS2 } from '#libs/units/src/index.js';
import type { Candidate, ForceLadder, LadderMark, Train } from './answer.js';
import type { Item, LoadCell } from '../register/item.js';
import type { Needs } from '../ask/needs.js';
import { ratingAt } from '../register/rating-at.js';
import { capacityOf } from '../rules/frame-capacity.js';
import { cellCapacityFor } from '../rules/cell-capacity.js';
import { calibrationNeedOf } from '../ask/calibration-need.js';
import { isOfClass } from '../rules/usable-windows.js';
import type { MatchSettings } from '../ask/settings.js';

/**
 * The picture of forces on one logarithmic axis: the band asked for, the smallest reading, the hung weight, each link's rating, the
 * verified range and the frame. With no train the band stands alone.
 *
 * @param item looks an item up by its id
 */
export function forceLadder(
  needs: Needs,
  train: (Train & Partial<Pick<Candidate, 'hungMassKg'>>) | null,
  settings: MatchSettings,
  item: (id: string) => Item | undefined,
): ForceLadder {
  const asked: LadderMark[] = [
    mark('band', 'Expected', null, needs.peakLow.value, needs.peakHigh.value),
    mark('smallest', 'Smallest reading', null, needs.smallest.value, needs.smallest.value),
  ];
  const links = train ? trainMarks(needs, train, settings, item) : [];
  const rated = links.filter(({ kind }) => kind === 'rating' || kind === 'frame');
  const least = rated.reduce<LadderMark | null>((found, each) => (!found || each.to < found.to ? each : found), null);
  const marks = [...asked, ...links.map((each) => ({ ...each, governs: each === least }))];
  const ends = marks.flatMap(({ from, to }) => [from, to]).filter((value) => value > 0);
  return {
    unit: needs.loadUnit,
    min: Math.min(...ends),
    max: Math.max(...ends),
    marks,
    governedBy: least?.itemId ?? null,
  };
}

function trainMarks(
  needs: Needs,
  train: Train & Partial<Pick<Candidate, 'hungMassKg'>>,
  settings: MatchSettings,
  item: (id: string) => Item | undefined,
): LadderMark[] {
  const items = train.links.flatMap(({ itemId }) => item(itemId) ?? []);
  const cell = items.find((each): each is LoadCell => each.kind === 'load-cell');
  const frame = item(train.frameId);
  const hungN = G_MS2 * (train.hungMassKg ?? 0);
  return [
    ...(hungN > 0 && needs.loadUnit === 'N' ? [mark('hung-weight', 'Hung weight', null, hungN, hungN)] : []),
    ...(cell ? cellMarks(cell, needs, settings) : []),
    ...items.flatMap((each) => linkMark(each, needs)),
    ...(frame?.kind === 'frame'
      ? [ratingMark('frame', frame.tag, frame.id, capacityOf(frame.details, needs.direction))]
      : []),
  ];
}

function cellMarks(cell: LoadCell, needs: Needs, settings: MatchSettings): LadderMark[] {
  const capacity = cellCapacityFor(cell, needs);
  const need = calibrationNeedOf(cell, needs)!;
  const verified = cell.calibrations.filter((each) => isOfClass(each, need));
  return [
    ratingMark('rating', cell.tag, cell.id, capacity),
    mark('cell-band', 'Reads best', cell.id, settings.cellBandLow * capacity, settings.cellBandHigh * capacity),
    ...verified.map(({ from, to, className }) => mark('verified', `Verified, class ${className}`, cell.id, from, to)),
  ];
}

function linkMark(item: Item, { direction, temperature }: Needs): LadderMark[] {
  const rating = ratingAt(item, direction, temperature.value);
  return rating > 0 ? [ratingMark('rating', item.tag, item.id, rating)] : [];
}

function ratingMark(kind: 'rating' | 'frame', label: string, itemId: string, rating: number): LadderMark {
  return mark(kind, label, itemId, rating, rating);
}

function mark(kind: LadderMark['kind'], label: string, itemId: string | null, from: number, to: number): LadderMark {
  return { kind, label, itemId, from, to, governs: false };
}
