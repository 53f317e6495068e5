import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';

/** OR-Library wt40, wt50, wt100: one machine; per instance n working times, n weights, n due dates. */
export function readSetA(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const sizes = file ? [Number(/(\d+)/.exec(file)?.[1])] : [40, 50, 100];
  return sizes.flatMap((size) => {
    const figures = numbersIn(readFileSync(file ? file : join(folder, `wt${size}.txt`), 'utf8'));
    return Array.from({ length: figures.length / (3 * size) }, (_, at) => instanceAt(figures, size, at, known));
  });
}

function instanceAt(figures: number[], size: number, at: number, known: ReturnType<typeof readKnown>): Instance {
  const { work, weight, due } = jobsAt(figures, size, at);
  const name = `wt${size}-${at + 1}`;
  const best = known.get(name);
  return {
    name,
    problem: problemOf({ work: [work], setup: null, weight, due }, TARDINESS),
    best: best?.value ?? null,
    proven: best?.proven ?? false,
  };
}

/** Working times, weights and due dates of instance `at` (from 0). */
export function jobsAt(figures: number[], size: number, at: number): { work: number[]; weight: number[]; due: number[] } {
  const from = at * 3 * size;
  return {
    work: figures.slice(from, from + size),
    weight: figures.slice(from + size, from + 2 * size),
    due: figures.slice(from + 2 * size, from + 3 * size),
  };
}
