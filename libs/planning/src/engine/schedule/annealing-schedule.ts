import type { Budget } from '../budget.js';
import type { Random } from '../random.js';
import type { Schedule } from './schedule.js';

/** Temperature at the start of a phase, in mean costs of a task. */
const START_TEMPERATURE = 0.03;
/** The same for makespans: there the cost is the end of one job, and moves change it by whole jobs. */
const START_TEMPERATURE_OF_MAKESPAN = 0.1;
/** The temperature rises to so many times the usual one while phases find nothing better. */
const MOST_REHEATING = 256;
/** How much longer each phase is than the one before. */
const GROWTH = 1.4;
/** Rounds of the first phase, per task. */
const FIRST_PHASE = 400;

/** How much worse a move may be: the temperature falls over a phase, and each phase is longer than the one before. */
export class AnnealingSchedule {
  private round = 0;
  private phase: number;
  private startTemperature: number;
  /** Doubled after each phase that found nothing better. */
  private reheating = 1;
  private least = Infinity;

  /** Share of the budget that was spent when the phase began. */
  private spentBefore: number;

  constructor(
    private readonly schedule: Schedule,
    private readonly budget: Budget,
  ) {
    this.phase = FIRST_PHASE * schedule.tasks;
    this.spentBefore = budget.spentShare();
    this.startTemperature = this.highestTemperature();
  }

  /** How much the next move may cost. */
  allowance(random: Random): number {
    const temperature = this.startTemperature * Math.max(0, 1 - this.progress()) ** 3;
    this.round++;
    return -temperature * Math.log(random.unit() + 1e-12) + 1e-9;
  }

  isPhaseOver(): boolean {
    return this.round >= this.phase;
  }

  /** How many tasks to perturb before the next phase: none after one that found something better. */
  get perturbations(): number {
    return this.reheating - 1;
  }

  nextPhase(least: number): void {
    this.reheating = least < this.least - 1e-9 ? 1 : Math.min(MOST_REHEATING, 2 * this.reheating);
    this.least = least;
    this.round = 0;
    this.spentBefore = this.budget.spentShare();
    this.phase = Math.floor(this.phase * GROWTH);
    this.startTemperature = this.highestTemperature();
  }

  /** How far the phase is, 0 to 1. One that the budget would cut short is over when the budget is, so that it cools in any case. */
  private progress(): number {
    const left = 1 - this.spentBefore;
    const spent = left > 0 ? (this.budget.spentShare() - this.spentBefore) / left : 1;
    return Math.max(this.round / this.phase, spent);
  }

  private highestTemperature(): number {
    const { model, cost, tasks } = this.schedule;
    const start = model.makespan ? START_TEMPERATURE_OF_MAKESPAN : START_TEMPERATURE;
    return (this.reheating * start * cost) / Math.max(1, tasks);
  }
}
