import type { Frame } from '../register/item.js';
import { bestTrains } from './best-trains.js';
import type { Ends, Parts } from '../rules/parts.js';
import { adapterRoomMm } from '../rules/test-space.js';
import { ADAPTER_CHECKS, failsTogether, WHOLE_CHECKS } from './checks.js';
import type { BesideChoice, CellChoice, Choice } from './class-choices.js';
import { NO_RULES, ruleSets, setOf } from './rule-set.js';
import type { RuleSet } from './rule-set.js';
import { trainOf } from './whole-train.js';
import type { Joinings } from './routes.js';
import type { Search } from './search.js';
import type { Site } from './site.js';

const TEST_SPACE = setOf('test-space');
const { count, union } = ruleSets;
const WHOLE_AND_ADAPTERS = [...WHOLE_CHECKS, ...ADAPTER_CHECKS];

interface Near {
  parts: Parts;
  count: number;
}

/** Pairs of cell and ends that are looked at, and whole trains judged, at most; more only in labs with hundreds of equal choices. */
const MOST_PAIRS = 2000;
const MOST_JUDGED = 40;

/**
 * The train that comes nearest on a frame without a candidate: it fails the fewest rules, and by the smallest shortfall. In a very
 * large lab the search stops early, and the train may fail one rule more than the nearest possible.
 *
 * @returns null when the lab has no cell or no ends of the right kind at all
 */
export function nearestTrain(site: Site, search: Search): Parts | null {
  const { frame } = site.at;
  const own = site.own.fails;
  // Where frame or lab are to blame alone, any train that passes otherwise is as near as can be.
  const [sound] = own === NO_RULES ? [] : bestTrains(site, search, 1, true);
  if (sound) return sound.parts;
  const any = search.anyFor(frame);
  const { choices: besides, masks } = any.beside;
  // A frame without a candidate fails at least what it fails alone, and at least one rule.
  const floor = Math.max(1, count(own));
  const budget = { pairs: MOST_PAIRS, judged: MOST_JUDGED };
  // Cells that fail nothing come first; where a train with one of them fails a single rule, no other cell could do better.
  const near = among(site.sound.cells, null);
  if (near && near.count <= floor) return near.parts;
  return among(any.cells, near)?.parts ?? null;

  function among(cells: readonly CellChoice[], start: Near | null): Near | null {
    let found = start;
    const ends = search.options.ends.all;
    for (const cell of cells) {
      if (found && count(cell.fails) >= found.count) break;
      const known = union(own, cell.fails);
      if (found && count(known) >= found.count) continue;
      const joined = search.joined.to(frame, cell);
      for (let n = 0; n < ends.length; n += 1) {
        if (found && (found.count <= floor || (budget.pairs -= 1) < 0 || budget.judged < 0)) return found;
        if (found && count(ends[n]!.tally.fails) >= found.count) break;
        const end = any.endsAt(n);
        if (found && count(union(known, end.fails)) >= found.count) continue;
        const joinings = joined.with(n);
        const sure = union(union(known, end.fails), joinings.failsSurely);
        if (isHopeless(found, sure, masks)) continue;
        for (const faces of any.facesFor(end.part)) {
          if (isHopeless(found, union(sure, faces.fails), masks)) continue;
          const bits = union(union(known, end.fails), faces.fails);
          found = closest({ frame, cell, end, faces, joinings, besides, masks, bits, budget }, found, search);
        }
      }
    }
    return found;
  }
}

interface Trial {
  frame: Frame;
  cell: CellChoice;
  end: Choice<Ends>;
  faces: Choice<Parts['faces']>;
  joinings: Joinings;
  besides: readonly BesideChoice[];
  /** The different sets of rules that these fail. */
  masks: readonly RuleSet[];
  /** What frame, cell, ends and faces fail. */
  bits: RuleSet;
  budget: { judged: number };
}

/** Tries adapters and what stands beside where there is hope; only what could beat the nearest so far is judged as a whole. */
function closest(trial: Trial, nearest: Near | null, { context }: Search): Near | null {
  const { frame, cell, end, faces, joinings, besides, masks, bits, budget } = trial;
  let near = nearest;
  const sure = union(joinings.failsSurely, bits);
  const room = adapterRoomMm({ frame, cell: cell.part, ends: end.part }, context);
  for (const { adapters, lengthMm, fails } of joinings.all) {
    const known = union(union(bits, fails), spaceBit(lengthMm, room));
    if (cannotWin(near, known)) continue;
    const before: Near | null = near;
    for (const beside of besides) {
      if (cannotWin(near, union(known, beside.fails))) continue;
      if (near && (budget.judged -= 1) < 0) return near;
      const parts = trainOf(frame, cell, end, faces, adapters, beside);
      const fewer = count(
        failsTogether(WHOLE_AND_ADAPTERS, parts, context, union(known, beside.fails), near?.count ?? Infinity),
      );
      if (!near || fewer < near.count) near = { parts, count: fewer };
    }
    if (near !== before && isHopeless(near, sure, masks)) return near;
  }
  return near;
}

function cannotWin(near: Near | null, known: RuleSet): boolean {
  return near !== null && count(known) >= near.count;
}

/** Whether no train that fails all of these, and whatever stands beside it, could come nearer. */
function isHopeless(near: Near | null, sure: RuleSet, masks: readonly RuleSet[]): boolean {
  if (!near) return false;
  if (count(sure) >= near.count) return true;
  for (const mask of masks) if (count(union(sure, mask)) < near.count) return false;
  return true;
}

function spaceBit(lengthMm: number, { least, most }: { least: number; most: number }): RuleSet {
  return lengthMm < least || lengthMm > most ? TEST_SPACE : NO_RULES;
}
