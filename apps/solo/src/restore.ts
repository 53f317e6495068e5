import 'reflect-metadata';
import { createReadStream } from 'node:fs';
import { createInterface } from 'node:readline';
import { createGunzip } from 'node:zlib';
import { restoreLines, verifyRecord } from '#libs/records/src/index.js';
import { withRecords } from './with-records.js';

const [file] = process.argv.slice(2);
if (!file) throw new Error('Say what from: npm run restore -- lab-2026-11-25.jsonl.gz');

/** Puts a backup into an empty database (an empty data folder, or DATABASE_URL), and verifies the record in it. */
await withRecords(async ({ url, records }) => {
  const lines = createInterface({ input: createReadStream(file).pipe(createGunzip()), crlfDelay: Infinity });
  const rows = await restoreLines(url, lines);
  const { events, faults } = await verifyRecord(records);
  faults.forEach((fault) => console.error(fault));
  console.log(`${rows} rows are back; the record has ${events} events and ${faults.length} faults.`);
  process.exitCode = faults.length === 0 ? 0 : 1;
});
