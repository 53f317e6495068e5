export { TASK_NAMES } from './task-table.js';
export type { QueueName, TaskContext, TaskName, TaskPayload, TaskRules, TaskTable } from './task-table.js';
export { openWorkers, openQueues, prepareQueues } from './queues.js';
export type { TaskWorkers, WorkersOptions, QueuedTask, Queues } from './queues.js';
export type { QueuePlace } from './queue-link.js';
