/**
 * The part of a problem that is nothing but sequences: every frame always open, no shared units, no roster, no precedence.
 * Jobs are 0 … n−1; n is a stand-in before the first and after the last job of a lane.
 */
export interface LaneModel {
  lanes: number;
  jobs: number;
  /** [lane · (n+1) + job] working time, min; −1 where the lane cannot take the job. */
  work: Int32Array;
  /** Families + 1; the last is the stand-in's. */
  families: number;
  familyOf: Int32Array;
  /** Where each lane's matrix begins in `setup`; equal lanes share one. */
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
  /** A length that lane ends are measured by in makespan mode, min. */
  scaleMin: number;
}
