import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { problemOf, TARDINESS } from '#test/bench/planning/read/instance.js';
import type { Instance } from '#test/bench/planning/read/instance.js';
import { projectRoot } from '#test/support/maybe.js';

/** One machine: a line of a kept set. Times are whole units, taken as minutes; source and licence are in ../README.md. */
export interface KeptLine {
  name: string;
  /** Best known weighted tardiness. */
  best: number;
  /** Whether `best` was proven to be the optimum. */
  proven: boolean;
  /** Set b: `reached`, remembered from the literature and reached by our own search; `own`, found by it. */
  known?: 'reached' | 'own';
  work: number[];
  weight: number[];
  due: number[];
  /** Setup before the first job, and from one job (row) to the next (column). */
  firstSetup?: number[];
  setup?: number[][];
}

/** A published set that its licence lets us keep in the tree. */
export function keptLines(name: 'a' | 'b'): KeptLine[] {
  const file = join(projectRoot(), 'test', 'published', 'planning', `set-${name}.jsonl.gz`);
  const lines = gunzipSync(readFileSync(file)).toString('utf8').trim().split('\n');
  return lines.map((line) => JSON.parse(line) as KeptLine);
}

/** The same as problems of the engine. */
export function keptSet(name: 'a' | 'b'): Instance[] {
  return keptLines(name).map(({ name, best, proven, work, weight, due, firstSetup = null, setup }) => {
    const machines = { work: [work], setup: setup ? [setup] : null, firstSetup, weight, due };
    return { name, best, proven, problem: problemOf(machines, TARDINESS) };
  });
}
