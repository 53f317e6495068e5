import type { Random } from '../random.js';
import { applyExchange, applySwap } from './apply.js';
import type { Descent } from './descent.js';
import type { Lanes } from './lanes.js';
import type { LaneModel } from './model.js';

/** How long a block may be that a kick carries, and in short lanes which part of them: more would not be a kick but a new lane. */
const LONGEST = 10;
const PART_OF_LANE = 0.4;
const SHORTEST_LIMIT = 3;
/** How many changes make one kick, at least and at most. */
interface Strength {
  least: number;
  most: number;
}
const SEVERAL_LANES: Strength = { least: 1, most: 3 };
/** In one lane a single change is easily undone: nothing but the lane's own order can give way. */
const ONE_LANE: Strength = { least: 2, most: 3 };
/** Without changeovers the way back is short, and so has the kick to be. */
const WITHOUT_CHANGEOVERS: Strength = { least: 1, most: 2 };

/** Changes the sequences at random, near one place, and queues what it touched. */
export function kick(s: Lanes, descent: Descent, random: Random): void {
  const { least, most } = strengthFor(s.model);
  const times = least + random.below(most - least + 1);
  for (let n = 0; n < times; n++) {
    const job = random.below(s.model.jobs);
    const lane = s.laneOf[job]!;
    if (s.model.lanes > 1 && random.below(2) === 0) across(s, descent, random, lane, s.placeOf[job]!);
    else within(s, descent, random, lane, s.placeOf[job]!);
  }
}

function strengthFor({ families, lanes }: LaneModel): Strength {
  if (families === 1) return WITHOUT_CHANGEOVERS;
  return lanes === 1 ? ONE_LANE : SEVERAL_LANES;
}

const longestIn = ({ model: { jobs, lanes } }: Lanes): number =>
  Math.max(SHORTEST_LIMIT, Math.min(LONGEST, Math.round((PART_OF_LANE * jobs) / lanes)));

function within(s: Lanes, descent: Descent, random: Random, lane: number, i: number): void {
  const last = s.length[lane]!;
  if (last - i < 1) return;
  const longest = longestIn(s);
  const j = i + random.below(Math.min(longest, last - i));
  const h = j + 1 + random.below(Math.min(longest, last - j));
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
