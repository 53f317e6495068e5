import { TASK_NAMES } from '#libs/tasks/src/index.js';
import type { TaskName } from '#libs/tasks/src/index.js';
import type { AnyProcessor } from './task-processor.js';

/**
 * Finds the one processor of every task.
 *
 * @throws Error naming the tasks that none or more than one takes: the worker does not start then
 */
export function rollCall(
  processors: readonly AnyProcessor[],
  names: readonly TaskName[] = TASK_NAMES,
): Map<TaskName, AnyProcessor> {
  const takers = names.map((name) => ({ name, found: processors.filter(({ handles }) => handles === name) }));
  const wrong = takers.filter(({ found }) => found.length !== 1);
  if (wrong.length > 0) {
    const said = wrong.map(({ name, found }) => `${name} has ${found.length}`).join(', ');
    throw new Error(`Every task needs exactly one processor, but ${said}.`);
  }
  return new Map(takers.map(({ name, found }) => [name, found[0]!]));
}
