import { existsSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { randomBytes } from 'node:crypto';
import { join } from 'node:path';
import { freePort } from './free-port.js';

/** What is kept beside the embedded database. */
export interface ServerMemory {
  port: number;
  password: string;
}

const FILE = 'embedded.json';

/**
 * Reads what was kept in a folder, or makes it for a new database.
 *
 * @throws Error when a database is there but its password is not
 */
export async function recall(folder: string, hasData: boolean): Promise<ServerMemory> {
  const file = join(folder, FILE);
  const kept = existsSync(file) ? parse(readFileSync(file, 'utf8')) : null;
  if (kept) return kept;
  if (hasData)
    throw new Error(
      `${file} is gone or cannot be read; it held the password of the database beside it. Put it back from a copy.`,
    );
  const fresh = { port: await freePort(0), password: randomBytes(24).toString('base64url') };
  remember(folder, fresh);
  return fresh;
}

/** Writes beside and renames: whoever is killed in between leaves the old file whole. */
export function remember(folder: string, memory: ServerMemory): void {
  const file = join(folder, FILE);
  writeFileSync(`${file}.new`, JSON.stringify(memory), { mode: 0o600, flush: true });
  renameSync(`${file}.new`, file);
}

function parse(text: string): ServerMemory | null {
  try {
    const read = JSON.parse(text) as Partial<ServerMemory>;
    return typeof read.port === 'number' && typeof read.password === 'string' ? (read as ServerMemory) : null;
  } catch {
    return null;
  }
}
