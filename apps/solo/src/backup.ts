import 'reflect-metadata';
import { createWriteStream } from 'node:fs';
import { rename } from 'node:fs/promises';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { createGzip } from 'node:zlib';
import { backupLines } from '#libs/records/src/index.js';
import { withRecords } from './with-records.js';

const [file] = process.argv.slice(2);
if (!file) throw new Error('Say where to: npm run backup -- lab-2026-11-25.jsonl.gz');

/** Writes everything into one file, while the lab is open or not. */
await withRecords(async ({ records }) => {
  const unfinished = `${file}.unfinished`;
  await pipeline(
    Readable.from(ended(backupLines(records))),
    createGzip(),
    createWriteStream(unfinished, { mode: 0o600, flags: 'wx' }),
  );
  await rename(unfinished, file);
  console.log(`Written to ${file}. It holds everything, password hashes too: keep it where only you can read it.`);
});

async function* ended(lines: AsyncIterable<string>): AsyncGenerator<string> {
  for await (const line of lines) yield `${line}\n`;
}
