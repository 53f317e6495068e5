import 'reflect-metadata';
import { clockFrom } from '#libs/hosting/src/index.js';
import { LabRecords, openMigrated, whenThere } from '#libs/records/src/index.js';
import { prepareQueues } from '#libs/tasks/src/index.js';
import { readConfig } from './config.js';
import { closeApi } from './platform/close-api.js';
import { createApi } from './platform/create-api.js';

const STOP_WITHIN_MS = 15_000; // what is still under way then is done again by another process

const config = readConfig();
const records = await whenThere(() => openMigrated(config.databaseUrl, { poolSize: 20, name: 'loadtrain api' }));
if (!config.redisUrl) await whenThere(() => prepareQueues(config.databaseUrl));
const api = await createApi(config, new LabRecords(records, clockFrom(config.clockStartMs)));
await api.listen(config.port, config.host);

const stop = async () => {
  setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
  await closeApi(api);
  await records.destroy();
};
for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => void stop());
