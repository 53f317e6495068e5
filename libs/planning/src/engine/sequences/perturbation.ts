import type { Random } from '../random.js';
import { applyExchange, applySwap } from './apply.js';
import type { Descent } from './descent.js';
import type { MachineSequences } from './machine-sequences.js';
import type { SequenceModel } from './model.js';

/** Longest block that a perturbation moves; in short sequences at most this part of them. */
const LONGEST = 10;
const PART_OF_SEQUENCE = 0.4;
const SHORTEST_LIMIT = 3;
/** How many random moves make one perturbation, at least and at most. */
interface Strength {
  least: number;
  most: number;
}
const SEVERAL_MACHINES: Strength = { least: 1, most: 3 };
/** On one machine the descent easily undoes a single move. */
const ONE_MACHINE: Strength = { least: 2, most: 3 };
/** Without changeovers a descent is short, and so must the perturbation be. */
const WITHOUT_CHANGEOVERS: Strength = { least: 1, most: 2 };

/** Makes a few random moves and queues the jobs around them for the descent. */
export function perturb(s: MachineSequences, descent: Descent, random: Random): void {
  const { least, most } = strengthFor(s.model);
  const times = least + random.below(most - least + 1);
  for (let n = 0; n < times; n++) {
    const job = random.below(s.model.jobs);
    const machine = s.machineOf[job]!;
    if (s.model.machines > 1 && random.below(2) === 0) across(s, descent, random, machine, s.placeOf[job]!);
    else within(s, descent, random, machine, s.placeOf[job]!);
  }
}

function strengthFor({ families, machines }: SequenceModel): Strength {
  if (families === 1) return WITHOUT_CHANGEOVERS;
  return machines === 1 ? ONE_MACHINE : SEVERAL_MACHINES;
}

const longestIn = ({ model: { jobs, machines } }: MachineSequences): number =>
  Math.max(SHORTEST_LIMIT, Math.min(LONGEST, Math.round((PART_OF_SEQUENCE * jobs) / machines)));

function within(s: MachineSequences, descent: Descent, random: Random, machine: number, i: number): void {
  const last = s.length[machine]!;
  if (last - i < 1) return;
  const longest = longestIn(s);
  const j = i + random.below(Math.min(longest, last - i));
  const h = j + 1 + random.below(Math.min(longest, last - j));
  applySwap(s, machine, i, j, j + 1, h);
  descent.pushAround(machine, i, i);
  descent.pushAround(machine, i + h - j, i + h - j);
  descent.pushAround(machine, h, h);
}

function across(s: MachineSequences, descent: Descent, random: Random, machine: number, i: number): void {
  const { model, seq, stride } = s;
  const other = (machine + 1 + random.below(model.machines - 1)) % model.machines;
  if (model.work[other * (model.jobs + 1) + seq[machine * stride + i]!]! < 0) return;
  const g = 1 + random.below(s.length[other]! + 1);
  const swap =
    g <= s.length[other]! &&
    model.work[machine * (model.jobs + 1) + seq[other * stride + g]!]! >= 0 &&
    random.below(2) === 0;
  applyExchange(s, machine, i, i, other, g, swap ? g : g - 1);
  descent.pushAround(machine, i, i);
  descent.pushAround(other, g, g);
}
