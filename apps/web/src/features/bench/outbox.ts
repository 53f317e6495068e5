import {
  ApiError,
  ConnectionError,
  call,
  isStillInProgress,
  newIdempotencyKey,
  wasDoneAlready,
} from '../../api-client/call.js';
import type { Call, Verb } from '../../api-client/api.js';

/** One act at the bench that must arrive, once: kept on this device until the server has answered. */
interface Kept {
  key: string;
  verb: Verb;
  path: string;
  body: unknown;
  /** Whose act it is: nobody else's session may send it. */
  by?: string;
}

export interface OutboxState {
  waiting: number;
  /** The last try found no server. */
  lost: boolean;
}

interface Waiting {
  done: (answer: unknown) => void;
  refused: (error: unknown) => void;
}

const STORE = 'loadtrain.bench.outbox';
const FIRST_WAIT_MS = 1000;
const LONGEST_WAIT_MS = 8000;

/** The acts of one person that wait for the server, in order, over lost networks and reloads of the page. */
export class Outbox {
  private readonly waiting = new Map<string, Waiting>();
  private readonly listeners = new Set<() => void>();
  private running = false;
  private isOpen = false;
  private lost = false;
  private shown: OutboxState;

  constructor(private readonly personId: string) {
    this.shown = { waiting: this.own().length, lost: false };
  }

  /** How it stands now; the same object until that changes. */
  readonly state = (): OutboxState => this.shown;

  readonly subscribe = (tell: () => void): (() => void) => {
    this.listeners.add(tell);
    return () => void this.listeners.delete(tell);
  };

  /** Begins to send, also what a page before this one left. @returns what ends it: nothing is sent once the person has signed out */
  open(): () => void {
    this.isOpen = true;
    void this.run();
    return () => {
      this.isOpen = false;
    };
  }

  /**
   * Sends an act: over a lost network it is repeated with the same key until it is answered, also after a reload of the page.
   *
   * @returns the answer, or undefined when the act was done and its answer is lost; rejects with {@link ApiError} when the server
   *   says no
   */
  send<Answer>({ verb, path, body }: Call<Answer>): Promise<Answer | undefined> {
    const key = newIdempotencyKey();
    const answered = new Promise<Answer | undefined>((resolve, reject) => {
      this.waiting.set(key, { done: (answer) => resolve(answer as Answer), refused: reject });
    });
    this.write([...readAll(), { key, verb, path, body, by: this.personId }]);
    void this.run();
    return answered;
  }

  private async run(): Promise<void> {
    if (this.running) return;
    this.running = true;
    let waitMs = FIRST_WAIT_MS;
    for (let [act] = this.own(); act && this.isOpen; [act] = this.own()) {
      const hasAnswer = await this.tryOnce(act);
      if (!hasAnswer) await pause(waitMs);
      waitMs = hasAnswer ? FIRST_WAIT_MS : Math.min(LONGEST_WAIT_MS, waitMs * 2);
    }
    this.running = false;
  }

  /** @returns whether the act has its answer, a yes or a no */
  private async tryOnce(act: Kept): Promise<boolean> {
    const waiting = this.waiting.get(act.key);
    try {
      const answer = await call(act, { key: act.key });
      this.settled(act);
      waiting?.done(answer);
    } catch (error) {
      if (mayComeBack(error)) {
        this.lost = true;
        this.write(readAll());
        return false;
      }
      this.settled(act);
      if (wasDoneAlready(error)) waiting?.done(undefined);
      else waiting?.refused(error);
    }
    return true;
  }

  /** Takes out one act by its key: another window of this device may have changed the list meanwhile. */
  private settled({ key }: Kept): void {
    this.lost = false;
    this.waiting.delete(key);
    this.write(readAll().filter((kept) => kept.key !== key));
  }

  private own(): Kept[] {
    return readAll().filter(({ by = this.personId }) => by === this.personId);
  }

  private write(acts: Kept[]): void {
    localStorage.setItem(STORE, JSON.stringify(acts));
    this.shown = { waiting: this.own().length, lost: this.lost };
    for (const tell of this.listeners) tell();
  }
}

function readAll(): Kept[] {
  try {
    return JSON.parse(localStorage.getItem(STORE) ?? '[]') as Kept[];
  } catch {
    return [];
  }
}

function mayComeBack(error: unknown): boolean {
  if (error instanceof ConnectionError || isStillInProgress(error)) return true;
  return error instanceof ApiError && [502, 503, 504].includes(error.problem.status);
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => {
    const timer = setTimeout(go, ms);
    function go() {
      clearTimeout(timer);
      removeEventListener('online', go);
      resolve();
    }
    addEventListener('online', go);
  });
}
