/**
 * A problem that consists of machine sequences alone: every frame is always open, and there are no shared units, no roster and
 * no precedence. Jobs are 0 … n−1; n is a dummy job before the first and after the last job of a machine.
 */
export interface SequenceModel {
  machines: number;
  jobs: number;
  /** [machine · (n+1) + job] working time, min; −1 where the machine cannot take the job. */
  work: Int32Array;
  /** Families + 1; the last is that of the dummy job. */
  families: number;
  familyOf: Int32Array;
  /** Where each machine's matrix begins in `setup`; equal machines share one. */
  setupAt: Int32Array;
  /** [setupAt + from · families + to], min. */
  setup: Int32Array;
  release: Int32Array;
  hasReleases: boolean;
  due: Int32Array;
  /** Cost per minute late. */
  lateRate: Float64Array;
  /** Cost per minute of each job's end. */
  endRate: number;
  /** Cost per minute of changeover. */
  setupRate: number;
  /** Makespan counts, and nothing else. */
  makespan: boolean;
  /** The unit in which the ends of the machines are measured in makespan mode, min. */
  scaleMin: number;
}

/** The jobs of every machine in their order. */
export interface SequenceSolution {
  sequences: number[][];
  /** Makespan in makespan mode, min; otherwise the cost. */
  value: number;
}
