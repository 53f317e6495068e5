/** One thing that keeps a train from being used. */
export interface TrainProblem {
  rule: string;
  /** Ids of the items that it is about; empty when it is about the whole train. */
  items: readonly string[];
  sentence: string;
}
