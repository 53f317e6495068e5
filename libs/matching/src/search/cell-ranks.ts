import { couplingId, meets } from '../register/couplings.js';
import type { CellPosition, Coupling, Frame, LoadCell } from '../register/item.js';
import { accuracyPoints, cellFitPoints } from './score.js';
import { cheaperFirst, freshest } from './fresh.js';
import type { Fresh } from './fresh.js';
import { traitsOf } from './frame-traits.js';
import type { LabIndex } from './lab-index.js';
import type { Options } from './options.js';
import type { RequestContext } from './request-context.js';

/** A sound cell at one of its places, with its points on any frame that it meets and where it does not hang yet. */
export interface RankedCell extends Fresh<LoadCell> {
  cellAt: CellPosition;
}

/**
 * The sound cells in the order in which frames try them. What a frame adds to the points is the same for all its cells, so that frames
 * with the same seats share one order.
 */
export class CellRanks {
  private readonly all: readonly Fresh<LoadCell>[];
  private readonly bySeats = new Map<string, readonly RankedCell[]>();
  /** Those cells of which a unit hangs somewhere, by its id. */
  private readonly byUnit = new Map<string, Fresh<LoadCell>['option']>();
  private readonly meeting = new Map<number, readonly Fresh<LoadCell>[]>();

  constructor({ cells }: Options, { fittedOn }: LabIndex, { needs, cellNeed, settings }: RequestContext) {
    this.all = freshest(
      cells.sound,
      settings,
      (cell) => cellFitPoints(cell, needs, settings) + accuracyPoints(cell, cellNeed, settings),
    );
    for (const { option } of this.all)
      for (const list of option.units) for (const { id } of list) if (fittedOn.has(id)) this.byUnit.set(id, option);
  }

  /** Those cells of which one of these items is a unit. */
  having(itemIds: ReadonlySet<string>): readonly RankedCell['option'][] {
    const found: RankedCell['option'][] = [];
    for (const id of itemIds) {
      const option = this.byUnit.get(id);
      if (option && !found.includes(option)) found.push(option);
    }
    return found;
  }

  /** Cells that meet the seats of a frame, cheapest first. */
  on(frame: Frame): readonly RankedCell[] {
    const { seats: key } = traitsOf(frame);
    const { cellPositions, crossheadCoupling, baseCoupling } = frame.details;
    const found = this.bySeats.get(key);
    if (found) return found;
    const made = cellPositions.flatMap((cellAt) =>
      this.meetingSeat(cellAt === 'crosshead' ? crossheadCoupling : baseCoupling).map(
        ({ option, points }): RankedCell => ({ option, points, cellAt }),
      ),
    );
    if (cellPositions.length > 1) made.sort(cheaperFirst);
    this.bySeats.set(key, made);
    return made;
  }

  private meetingSeat(seat: Coupling): readonly Fresh<LoadCell>[] {
    const id = couplingId(seat);
    const found =
      this.meeting.get(id) ?? this.all.filter(({ option }) => meets(seat, option.part.details.frameCoupling));
    this.meeting.set(id, found);
    return found;
  }
}
