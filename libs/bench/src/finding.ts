/** What stands in the way of an act at the bench. A list of them is what the rules answer with; none means: go on. */
export interface Finding {
  /** Code of the refusal, as programs read it: `bench/shift-check-needed`. */
  code: string;
  /** What was found, what is allowed and what to do, for people. */
  sentence: string;
  /** The same for programs. */
  facts: Record<string, unknown>;
}
