/**
 * A refusal or failure that people are told about.
 *
 * `code` is stable and made of a subject and a reason (`request/changed-meanwhile`); `message` is one plain sentence with
 * what was found, what was allowed and what to do; `facts` hold the figures, each with its unit in its name.
 * It carries no HTTP status and does not say whether a retry could help: the api and the worker decide that from the code.
 */
export class LabError extends Error {
  readonly code: string;
  readonly facts: Readonly<Record<string, unknown>>;

  /** @param options.cause the error that led here, kept for the log and never shown to people */
  constructor(code: string, sentence: string, facts: Record<string, unknown> = {}, options?: { cause?: unknown }) {
    super(sentence, options);
    this.name = new.target.name;
    this.code = code;
    this.facts = facts;
  }
}
