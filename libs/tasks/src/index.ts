export { TASK_NAMES } from './task-table.js';
export type { Lane, TaskContext, TaskName, TaskPayload, TaskRules, TaskTable } from './task-table.js';
export { openCrew, openQueues, prepareQueues } from './queues.js';
export type { Crew, CrewOptions, QueuedTask, Queues } from './queues.js';
export type { QueuePlace } from './queue-link.js';
