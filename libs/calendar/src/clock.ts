/**
 * What time it is in the lab. A process makes one clock and hands it to whoever needs the time; no other file asks the machine.
 * How long something took is another question, which `performance.now()` answers.
 */
export abstract class Clock {
  /** UTC, ms. */
  abstract nowMs(): number;

  now(): Date {
    return new Date(this.nowMs());
  }
}

/** The machine's own clock. */
export class SystemClock extends Clock {
  nowMs(): number {
    return Date.now();
  }
}

/** A clock that was set to another time and runs on from there, for tests and for showing a lab at a certain hour. */
export class SetClock extends Clock {
  private readonly aheadMs: number;

  /** @param startMs what it shows at first, UTC ms */
  constructor(startMs: number) {
    super();
    this.aheadMs = startMs - Date.now();
  }

  nowMs(): number {
    return Date.now() + this.aheadMs;
  }
}
