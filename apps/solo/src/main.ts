import 'reflect-metadata';
import { closeApi } from '#apps/api/src/platform/close-api.js';
import { createApi } from '#apps/api/src/platform/create-api.js';
import { startWorker } from '#apps/worker/src/platform/start-worker.js';
import { InvalidInput, LabError } from '#libs/errors/src/index.js';
import { clockFrom } from '#libs/hosting/src/index.js';
import { LabRecords, migrate, openRecords } from '#libs/records/src/index.js';
import { prepareQueues } from '#libs/tasks/src/index.js';
import { readConfig } from './config.js';
import type { SoloConfig } from './config.js';
import { fillOnFirstStart } from './first-start.js';
import { greeting } from './greeting.js';
import { openForLab } from './open-database.js';
import { refuseTakenPort } from './refuse-taken-port.js';

const TASK_LOCK_MS = 30_000;
const STOP_WITHIN_MS = 20_000; // nothing acknowledged is lost by an end without farewell

/** What has been opened so far, to be closed in the opposite order. */
const open: (() => Promise<unknown>)[] = [];

/** The whole lab in one process: database, API, worker and web page. */
async function start(config: SoloConfig, empty: boolean): Promise<void> {
  await refuseTakenPort(config.port, config.host);
  const database = await openForLab(config, {
    tell: (sentence) => console.error(sentence),
    onTakenOver: () => {
      console.error('Another process has opened the lab on this data folder meanwhile. This one ends.');
      void stop().then(() => process.exit(1));
    },
  });
  open.push(() => database.stop());
  const source = await openRecords(database.url, { poolSize: 25, name: 'loadtrain' });
  open.push(() => source.destroy());
  await migrate(source);
  const records = new LabRecords(source, clockFrom(config.clockStartMs));
  if (!config.redisUrl) await prepareQueues(database.url);
  const first = await fillOnFirstStart(records, empty);
  const address = config.publicUrl ?? `http://localhost:${config.port}`;
  const api = await createApi({ ...config, databaseUrl: database.url }, records);
  open.push(() => closeApi(api));
  await api.listen(config.port, config.host);
  const worker = await startWorker(
    { ...config, databaseUrl: database.url, publicUrl: address, lockMs: TASK_LOCK_MS },
    records,
  );
  open.push(() => worker.stop());
  console.log(await greeting(source, config.port === 0 ? await api.getUrl() : address, first));
}

let stopping: Promise<void> | null = null;

function stop(): Promise<void> {
  setTimeout(() => process.exit(1), STOP_WITHIN_MS).unref();
  return (stopping ??= (async () => {
    for (const close of open.reverse()) await close().catch((error: unknown) => console.error(error));
  })());
}

for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) {
  process.on(signal, () => void stop().then(() => process.exit(0)));
}

try {
  await start(readConfig(), process.argv.includes('--empty'));
} catch (error) {
  const sentences = error instanceof InvalidInput ? error.problems.map(({ sentence }) => sentence) : null;
  console.error(sentences?.join('\n') ?? (error instanceof LabError ? error.message : error));
  await stop();
  process.exit(1);
}
