import 'reflect-metadata';
import { clockFrom } from '#libs/hosting/src/index.js';
import { LabRecords, openMigrated, whenThere } from '#libs/records/src/index.js';
import { prepareQueues } from '#libs/tasks/src/index.js';
import { readConfig } from './config.js';
import { startWorker } from './platform/start-worker.js';

const STOP_WITHIN_MS = 15_000; // what is still under way then is done again by another process

const config = readConfig();
const records = await whenThere(() => openMigrated(config.databaseUrl, { poolSize: 12, name: 'loadtrain worker' }));
if (!config.redisUrl) await whenThere(() => prepareQueues(config.databaseUrl));
const worker = await startWorker(config, new LabRecords(records, clockFrom(config.clockStartMs)));

const stop = async () => {
  setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
  await worker.stop();
  await records.destroy();
  process.exit(0); // a task that was given up may still be computing
};
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
