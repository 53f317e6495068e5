import { SystemClock } from '#libs/calendar/src/index.js';
import { LabError } from '#libs/errors/src/index.js';

/** How much is written. `quiet` writes errors only. */
export const LOG_LEVELS = ['quiet', 'normal', 'detailed'] as const;
export type LogLevel = (typeof LOG_LEVELS)[number];

type Facts = Record<string, unknown>;

const WORDS_KEPT = 2_000;

/**
 * One line of JSON for each thing that happens, on standard output. Facts are ids, counts and times: never names, figures
 * of a test, passwords or tokens. Nest may use it as its logger.
 */
export class Log {
  constructor(
    private readonly level: LogLevel,
    private readonly part: string,
    private readonly write: (line: string) => void = (line) => void process.stdout.write(line),
  ) {}

  log(message: unknown, ...rest: unknown[]): void {
    if (this.level !== 'quiet') this.line('info', message, rest);
  }

  warn(message: unknown, ...rest: unknown[]): void {
    if (this.level !== 'quiet') this.line('warning', message, rest);
  }

  error(message: unknown, ...rest: unknown[]): void {
    this.line('error', message, rest);
  }

  fatal(message: unknown, ...rest: unknown[]): void {
    this.line('fatal', message, rest);
  }

  debug(message: unknown, ...rest: unknown[]): void {
    if (this.level === 'detailed') this.line('debug', message, rest);
  }

  verbose(message: unknown, ...rest: unknown[]): void {
    this.debug(message, ...rest);
  }

  private line(level: string, message: unknown, rest: unknown[]): void {
    const told =
      message instanceof Error ? { message: message.message, stack: message.stack } : { message: String(message) };
    this.write(
      `${JSON.stringify({ at: MACHINE_CLOCK.now().toISOString(), level, part: this.part, ...told, ...factsOf(rest) })}\n`,
    );
  }
}

/** Our own calls hand over facts; Nest hands over a stack and the name of a part of it. */
function factsOf(rest: unknown[]): Facts {
  const facts: Facts = {};
  for (const one of rest) {
    // What people are told may hold names and figures; a log keeps the code of it.
    if (one instanceof LabError) facts.code = one.code;
    else if (one instanceof Error) Object.assign(facts, { error: one.message, stack: one.stack?.slice(0, WORDS_KEPT) });
    else if (typeof one === 'object' && one !== null) Object.assign(facts, one);
    else if (typeof one === 'string') facts[one.includes('\n') ? 'stack' : 'where'] = one.slice(0, WORDS_KEPT);
  }
  return facts;
}

/** A log tells what the machine did, also where the lab's clock was set to another time. */
const MACHINE_CLOCK = new SystemClock();
