import { NestFactory } from '@nestjs/core';
import { Log } from '#libs/hosting/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';
import { openWorkers, openQueues } from '#libs/tasks/src/index.js';
import type { WorkerConfig } from '../config.js';
import { PROCESSORS, WorkerModule } from '../worker.module.js';
import { startDispatcher } from './dispatcher.js';
import { rollCall } from './roll-call.js';
import { taskRunner } from './run-task.js';

export interface RunningWorker {
  /** Hands over nothing more, ends what it is at, then stops. */
  stop(): Promise<void>;
}

/**
 * Begins to hand over and to do announced work.
 *
 * @throws Error when a task has no processor or more than one
 */
export async function startWorker(config: WorkerConfig, records: LabRecords): Promise<RunningWorker> {
  const log = new Log(config.log, 'worker');
  const nest = await NestFactory.createApplicationContext(WorkerModule.around(config, records), {
    logger: log,
    abortOnError: false,
  });
  const known = PROCESSORS.map((processor) => nest.get(processor));
  const processors = rollCall(known);
  const onTrouble = (error: Error) =>
    log.warn('queue connection lost, coming back by itself', { trouble: error.message });
  const queues = openQueues(config, onTrouble);
  let stopped = false;
  const run = taskRunner(records.source, processors, log, () => stopped);
  const workers = openWorkers(config, { run, onTrouble, lockMs: config.lockMs });
  const dispatcher = startDispatcher(records.source, config.databaseUrl, queues, log);
  return {
    stop: async () => {
      await dispatcher.stop();
      await workers.close();
      stopped = true;
      await queues.close();
      await nest.close();
    },
  };
}
