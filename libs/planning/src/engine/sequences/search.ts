import type { Budget } from '../budget.js';
import type { Random } from '../random.js';
import {
  AnnealingSchedule,
  ONE_MACHINE,
  ONE_MACHINE_WITHOUT_CHANGEOVERS,
  SEVERAL_MACHINES,
} from './annealing-schedule.js';
import { crossover, orderCrossover } from './crossover.js';
import { Descent } from './descent.js';
import { dispatch, meansOf, RULE_GRID } from './dispatch.js';
import { ElitePool } from './elite-pool.js';
import { Incumbent } from './incumbent.js';
import { MachineSequences } from './machine-sequences.js';
import type { SequenceModel, SequenceSolution } from './model.js';
import { perturb } from './perturbation.js';

/** Share of the jobs that a restart perturbs, for each phase in a row that found nothing better. */
const PERTURBED_AT_RESTART = 1 / 3;
/** The same for phases that shall begin far from all others. */
const PERTURBED_AT_DIVERSE_START = 3;
/** With several machines, so many phases begin far from each other before solutions are crossed. */
const DIVERSE_PHASES = 4;

/**
 * Iterated local search in phases: perturb, descend, accept by annealing.
 * With one machine each phase begins from the best solution, perturbed; with changeovers every second phase after one that
 * found nothing begins from a crossover of two elite solutions. With several machines the first phases begin far from each
 * other, and all later ones begin from a crossover.
 */
export function searchSequences(
  model: SequenceModel,
  budget: Budget,
  random: Random,
  onBetter: (solution: SequenceSolution, evaluations: number) => void,
): SequenceSolution {
  const s = new MachineSequences(model);
  const descent = new Descent(s);
  load(s, bestDispatch(model, budget));
  let best = solutionOf(s);
  let bestOfPhase = best;
  onBetter(best, descent.evaluations);
  const incumbent = new Incumbent(s);
  const descend = (): void => {
    descent.run(
      () => budget.isSpent(),
      () => incumbent.isReached(),
    );
    if (s.value() >= bestOfPhase.value) return;
    bestOfPhase = solutionOf(s);
    if (bestOfPhase.value >= best.value) return;
    best = bestOfPhase;
    onBetter(best, descent.evaluations);
  };
  descent.pushAll();
  descend();
  incumbent.save();
  const several = model.machines > 1;
  const annealing = new AnnealingSchedule(
    several ? SEVERAL_MACHINES : model.families > 1 ? ONE_MACHINE : ONE_MACHINE_WITHOUT_CHANGEOVERS,
  );
  const elitePool = new ElitePool();
  while (!budget.isSpent() && best.value > 0) {
    budget.rounds++;
    if (budget.rounds % 1000 === 0) s.resum();
    perturb(s, descent, random);
    descend();
    if (annealing.accepts(s.cost - incumbent.cost, incumbent.cost, random)) incumbent.save();
    else incumbent.restore();
    if (!annealing.endsPhase()) continue;
    elitePool.add(bestOfPhase);
    const stale = annealing.staleAfter(best.value);
    const isCrossed = several ? annealing.phases >= DIVERSE_PHASES : model.families > 1 && stale % 2 === 1;
    const parents = isCrossed ? elitePool.pair(random) : null;
    if (parents) {
      const mix = several ? crossover : orderCrossover;
      mix(s, parents[0].sequences, parents[1].sequences, random);
      descent.pushAll();
    } else {
      load(s, best.sequences);
      restart(s, descent, random, several ? PERTURBED_AT_DIVERSE_START : stale * PERTURBED_AT_RESTART);
    }
    bestOfPhase = { sequences: [], value: Infinity };
    descend();
    incumbent.save();
  }
  budget.evaluations = descent.evaluations;
  return best;
}

/** Perturbs many places at once. @param share of the jobs; above 1 some places are perturbed again */
function restart(s: MachineSequences, descent: Descent, random: Random, share: number): void {
  const times = Math.ceil(s.model.jobs * share);
  for (let n = 0; n < times; n++) perturb(s, descent, random);
}

function bestDispatch(model: SequenceModel, budget: Budget): number[][] {
  const trial = new MachineSequences(model);
  const means = meansOf(model);
  let best: number[][] = [];
  let least = Infinity;
  for (const rule of RULE_GRID) {
    const sequences = dispatch(model, rule, means);
    load(trial, sequences);
    if (trial.cost < least) [best, least] = [sequences, trial.cost];
    if (budget.isSpent()) break;
  }
  return best;
}

function load(s: MachineSequences, sequences: readonly (readonly number[])[]): void {
  sequences.forEach((jobs, machine) => s.setSequence(machine, jobs));
  s.resum();
}

function solutionOf(s: MachineSequences): SequenceSolution {
  const sequences = Array.from({ length: s.model.machines }, (_, machine) =>
    Array.from(s.seq.subarray(machine * s.stride + 1, machine * s.stride + 1 + s.length[machine]!)),
  );
  return { sequences, value: s.value() };
}
