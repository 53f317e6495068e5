import type { Random } from '../random.js';
import { applyExchange, applySwap } from './apply.js';
import type { Descent } from './descent.js';
import type { Lanes } from './lanes.js';

/** Longest block that a kick carries. */
const LONGEST = 10;
/** Most changes in one kick. */
const MOST = 3;

/** Changes the sequences at random, near one place, and queues what it touched. */
export function kick(s: Lanes, descent: Descent, random: Random): void {
  const times = 1 + random.below(MOST);
  for (let n = 0; n < times; n++) {
    const job = random.below(s.model.jobs);
    const lane = s.laneOf[job]!;
    if (s.model.lanes > 1 && random.below(2) === 0) across(s, descent, random, lane, s.placeOf[job]!);
    else within(s, descent, random, lane, s.placeOf[job]!);
  }
}

function within(s: Lanes, descent: Descent, random: Random, lane: number, i: number): void {
  const last = s.length[lane]!;
  if (last - i < 1) return;
  const j = i + random.below(Math.min(LONGEST, last - i));
  const h = j + 1 + random.below(Math.min(LONGEST, last - j));
  applySwap(s, lane, i, j, j + 1, h);
  descent.pushAround(lane, i, i);
  descent.pushAround(lane, i + h - j, i + h - j);
  descent.pushAround(lane, h, h);
}

function across(s: Lanes, descent: Descent, random: Random, lane: number, i: number): void {
  const { model, seq, stride } = s;
  const other = (lane + 1 + random.below(model.lanes - 1)) % model.lanes;
  if (model.work[other * (model.jobs + 1) + seq[lane * stride + i]!]! < 0) return;
  const g = 1 + random.below(s.length[other]! + 1);
  const swap =
    g <= s.length[other]! &&
    model.work[lane * (model.jobs + 1) + seq[other * stride + g]!]! >= 0 &&
    random.below(2) === 0;
  applyExchange(s, lane, i, i, other, g, swap ? g : g - 1);
  descent.pushAround(lane, i, i);
  descent.pushAround(other, g, g);
}
