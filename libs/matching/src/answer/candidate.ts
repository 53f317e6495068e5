import type { Candidate, Link, ScorePart, Verdict } from './answer.js';
import { changeoverBetween } from './changeover.js';
import type { Warming } from './changeover.js';
import type { Item, ItemKind } from '../register/item.js';
import { judgeTrain } from './judge-train.js';
import type { SharedVerdicts } from './judge-train.js';
import { limitStopsOf } from './limit-stops.js';
import { forEachPlace, linksOf } from './links.js';
import { withUnits } from './unit-pools.js';
import type { UnitPool } from './unit-pools.js';
import type { Rig } from '../register/lab.js';
import { massOnCellKg } from '../rules/parts.js';
import type { Parts } from '../rules/parts.js';
import { together } from '../rules/calibration-in-force.js';
import { ratingAt } from '../register/rating-at.js';
import { accuracyPoints, forceFitPoints, scarcePoints } from '../search/score.js';
import { cellCapacityFor } from '../rules/cell-capacity.js';
import { capacityOf } from '../rules/frame-capacity.js';
import { warmingOf } from './warming.js';
import type { IndexedFrame } from '../search/lab-index.js';
import type { RequestContext } from '../search/request-context.js';
import type { Found } from '../search/best-trains.js';
import type { Search } from '../search/search.js';

/** What the trains of one answer share. */
export interface Shared {
  search: Search;
  /** Equal units in the order of frames where none of them hangs, by their list. */
  pools: Map<readonly Item[], UnitPool>;
  verdicts: SharedVerdicts;
}

/** A found train with everything that people and the planner want to know about it. */
export function candidateOf(found: Found, at: IndexedFrame, shared: Shared): Candidate {
  const { parts, pools } = withUnits(found, at, shared.search.index, shared.pools);
  return new FoundCandidate(parts, linksOf(parts, pools), found.points, at.rig, shared);
}

/**
 * Verdicts, steps of the changeover and parts of the score are for people only, so that they are worked out on first use. JSON holds
 * them all.
 */
class FoundCandidate implements Candidate {
  readonly frameId: string;
  readonly cellAt: Candidate['cellAt'];
  readonly windows: Candidate['windows'];
  readonly limitStops: Candidate['limitStops'];
  readonly soakMin: number;
  readonly rampMin: number;
  readonly hungMassKg: number;
  readonly governing: Candidate['governing'];
  readonly #parts: Parts;
  readonly #rig: Rig;
  readonly #shared: Shared;
  readonly #warming: Warming | null;
  #verdicts: Candidate['verdicts'] | null = null;
  #scoreParts: Candidate['scoreParts'] | null = null;
  #changeover: Candidate['changeover'] | null = null;

  constructor(
    parts: Parts,
    readonly links: readonly Link[],
    readonly score: number,
    rig: Rig,
    shared: Shared,
  ) {
    const { context } = shared.search;
    const { needs, settings } = context;
    this.frameId = parts.frame.id;
    this.cellAt = parts.cellAt;
    this.windows = together(parts, context);
    this.limitStops = limitStopsOf(parts, needs, settings);
    this.#warming = warmingOf(parts, needs, rig, settings);
    this.soakMin = this.#warming?.soakMin ?? 0;
    this.rampMin = this.#warming?.rampMin ?? 0;
    this.hungMassKg = massOnCellKg(parts);
    this.governing = governing(parts, context);
    this.#parts = parts;
    this.#rig = rig;
    this.#shared = shared;
  }

  get verdicts(): Candidate['verdicts'] {
    const { search, verdicts } = this.#shared;
    return (this.#verdicts ??= judgeTrain(this.#parts, search.context, (id) => this.#item(id)?.tag ?? id, verdicts));
  }

  get changeover(): Candidate['changeover'] {
    const { settings } = this.#shared.search.context;
    return (this.#changeover ??= changeoverBetween(this.#rig, this, settings, (id) => this.#item(id), this.#warming));
  }

  get scoreParts(): Candidate['scoreParts'] {
    const changeMin = this.changeover.minutes - this.rampMin - this.soakMin;
    return (this.#scoreParts ??= scored(
      this.#parts,
      this.links,
      changeMin,
      this.verdicts,
      this.#shared.search.context,
    ));
  }

  toJSON(): Candidate {
    const { frameId, cellAt, links, verdicts, windows, score, scoreParts, changeover } = this;
    const { limitStops, soakMin, rampMin, hungMassKg, governing } = this;
    return {
      frameId,
      cellAt,
      links,
      verdicts,
      windows,
      score,
      scoreParts,
      changeover,
      limitStops,
      soakMin,
      rampMin,
      hungMassKg,
      governing,
    };
  }

  #item(id: string): Item | undefined {
    return this.#shared.search.index.byId.get(id);
  }
}

function scored(
  parts: Parts,
  links: readonly Link[],
  changeMin: number,
  verdicts: readonly Verdict[],
  { needs, cellNeed, settings }: RequestContext,
): Candidate['scoreParts'] {
  const cautions = verdicts.filter(({ outcome }) => outcome === 'caution').length;
  const share = Math.round((100 * needs.peakHigh.value) / cellCapacityFor(parts.cell, needs));
  const part = (name: ScorePart, points: number, sentence: string) => ({ part: name, points, sentence });
  return [
    part('changeover', settings.weights.changeoverPerMin * changeMin, `${changeMin} min of changeover`),
    part('force-fit', forceFitPoints(parts.frame, parts.cell, needs, settings), `the peak is ${share} % of the cell`),
    part(
      'scarce-items',
      links.reduce((sum, { pool }) => sum + scarcePoints(pool.length, settings), 0),
      `${counted(links.filter(({ pool }) => pool.length === 1).length, 'link')} without a second unit`,
    ),
    part(
      'accuracy',
      accuracyPoints(parts.cell, cellNeed, settings),
      'reserve of class and range at the smallest force',
    ),
    part('cautions', settings.weights.caution * cautions, counted(cautions, 'caution')),
  ];
}

/** The link with the least to spare against the load: frame, cell, or one of the rated links. */
function governing(parts: Parts, { needs }: RequestContext): Candidate['governing'] {
  const { frame, cell } = parts;
  const frameN = capacityOf(frame.details, needs.direction);
  const cellN = cellCapacityFor(cell, needs);
  let least: Candidate['governing'] =
    cellN < frameN
      ? { rule: 'cell-capacity', itemId: cell.id, ratingN: cellN }
      : { rule: 'frame-capacity', itemId: frame.id, ratingN: frameN };
  forEachPlace(parts, (_role, item) => {
    if (!CARRYING.includes(item.kind)) return;
    const ratingN = ratingAt(item, needs.direction, needs.temperature.value);
    if (ratingN < least.ratingN) least = { rule: 'weakest-link', itemId: item.id, ratingN };
  });
  return least;
}

/** Kinds that a load goes through and that are rated for it, besides frame and cell. */
const CARRYING: readonly ItemKind[] = ['grip', 'jaw-face', 'fixture', 'platen', 'adapter'];

/** `1 link`, `2 links`. */
function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
