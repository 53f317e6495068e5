/** Every task that the worker does, with what it carries: ids and limits, never the things themselves. */
export interface TaskTable {
  /** Make a new plan from the facts and publish it. */
  replan: { because: string; byId: string | null };
  /** Plan a trial plan anew after a change of it. */
  'plan-trial': { trialId: string };
  /** Rank the single changes that would remove most lateness. */
  'what-would-help': { byId: string };
  /** Where a request would land if it came now. It is not kept yet, so that the asks themselves are carried. */
  'where-would-it-land': {
    batches: { methodId: string; materialId: string | null; ask: Record<string, unknown>; specimenCount: number }[];
    dueAt: string | null;
    specimensAt: string | null;
  };
  /** Read a stored curve file of a specimen, and reduce it to results. */
  'read-curves': { fileId: string; jobId: string; specimenId: string; byId: string };
  /** Draw the PDF of a report that was issued, and keep it. */
  'issue-report': { reportId: string };
  /** Mail the notices of one event to those of its people who want them at once. */
  'send-notices': { noticeIds: string[] };
  /** Mail one notice to the person it is for: another try. */
  'send-notice': { noticeId: string };
  /** Mail what one person has neither read nor been mailed yet, all in one. */
  'send-digest': { personId: string };
  /** Tell another program of one event. */
  'deliver-webhook': { deliveryId: string };
  /** Tell those concerned of what fell due by itself, such as a calibration. */
  remind: Record<string, never>;
  /** Forget what retention allows to forget. */
  tidy: Record<string, never>;
}

export type TaskName = keyof TaskTable;
export type TaskPayload<Name extends TaskName> = TaskTable[Name];

/** What a run of a task may know and say. Progress is 0 to 100. */
export interface TaskContext {
  taskId: string;
  progress(pct: number, message: string): Promise<void>;
  /** Whether somebody asked to stop; long work looks now and then. */
  cancelled(): Promise<boolean>;
}

/**
 * Queues by how their work behaves: planning takes a processor for seconds, computing for a moment, telling waits for others.
 * The figure is how many tasks of a queue one worker process runs at a time.
 */
export const QUEUES = { planning: 1, computing: 2, telling: 4 } as const;
export type QueueName = keyof typeof QUEUES;
export const QUEUE_NAMES = Object.keys(QUEUES) as QueueName[];

export interface TaskRules {
  queue: QueueName;
  /** How often it is tried before it counts as failed. */
  attempts: number;
  /** How long to wait after the first failure, ms; doubled each time. */
  backoffMs: number;
}

const planning: TaskRules = { queue: 'planning', attempts: 4, backoffMs: 500 };
const computing: TaskRules = { queue: 'computing', attempts: 4, backoffMs: 500 };
const telling: TaskRules = { queue: 'telling', attempts: 8, backoffMs: 2_000 };

export const TASKS: Record<TaskName, TaskRules> = {
  replan: planning,
  'plan-trial': planning,
  'what-would-help': planning,
  'where-would-it-land': { ...computing, attempts: 1 },
  'read-curves': computing,
  'issue-report': computing,
  'send-notices': telling,
  'send-notice': telling,
  'send-digest': telling,
  'deliver-webhook': telling,
  remind: telling,
  tidy: telling,
};

export const TASK_NAMES = Object.keys(TASKS) as TaskName[];
