import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { named, numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';

/** OR-Library wt40, wt50, wt100: one machine; per instance n working times, n weights, n due dates; n is in the file's name. */
export function readSetA(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const files = file ? [file] : [40, 50, 100].map((size) => join(folder, `wt${size}.txt`));
  return files.flatMap((path) => {
    const size = Number(/(\d+)[^/\d]*$/.exec(path)?.[1]);
    const figures = numbersIn(readFileSync(path, 'utf8'));
    return Array.from({ length: Math.floor(figures.length / (3 * size)) }, (_, at) => {
      const { work, weight, due } = jobsAt(figures, size, at);
      return named(
        path,
        known,
        problemOf({ work: [work], setup: null, weight, due }, TARDINESS),
        `wt${size}-${at + 1}`,
      );
    });
  });
}

/** Working times, weights and due dates of instance `at` (from 0). */
export function jobsAt(
  figures: number[],
  size: number,
  at: number,
): { work: number[]; weight: number[]; due: number[] } {
  const from = at * 3 * size;
  return {
    work: figures.slice(from, from + size),
    weight: figures.slice(from + size, from + 2 * size),
    due: figures.slice(from + 2 * size, from + 3 * size),
  };
}
