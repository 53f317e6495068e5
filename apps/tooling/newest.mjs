import { readdir, stat } from 'node:fs/promises';
import { join } from 'node:path';

/** When the newest file of a folder was written, ms; specs do not count, and what is not there was never written. */
export async function newest(path) {
  const found = await stat(path).catch(() => null);
  if (!found) return 0;
  if (!found.isDirectory()) return /\.spec\.tsx?$/.test(path) ? 0 : found.mtimeMs;
  const times = await Promise.all((await readdir(path)).map((name) => newest(join(path, name))));
  return Math.max(0, ...times);
}
