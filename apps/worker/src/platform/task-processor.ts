import type { TaskContext, TaskName, TaskPayload } from '#libs/tasks/src/index.js';

/**
 * Does one kind of task. A run may be repeated, after a crash even when it had finished, so doing it twice has to be
 * the same as doing it once.
 */
export interface TaskProcessor<Name extends TaskName> {
  readonly handles: Name;
  /** @returns what those who asked should know when it is done */
  run(payload: TaskPayload<Name>, context: TaskContext): Promise<Record<string, unknown> | void>;
}

/** A processor of whatever task. */
export interface AnyProcessor {
  readonly handles: TaskName;
  run(payload: Record<string, unknown>, context: TaskContext): Promise<Record<string, unknown> | void>;
}
