import { readFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import type { Problem } from '#libs/planning/src/index.js';
import { filesIn, named } from './instance.js';
import type { Instance } from './instance.js';

/** Labs as the planner gets them: a problem of the engine as JSON, or the same packed by gzip. No best value is known. */
export function readSetProblem(folder: string, file?: string): Instance[] {
  const files = file ? [file] : filesIn(folder, 'lab', /\.json(\.gz)?$/);
  return files.map((path) => named(path.replace(/\.gz$/, ''), new Map(), problemIn(path)));
}

function problemIn(path: string): Problem {
  const bytes = readFileSync(path);
  return JSON.parse((path.endsWith('.gz') ? gunzipSync(bytes) : bytes).toString('utf8')) as Problem;
}
