import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';
import { jobsAt } from './set-a.js';

/** Identical machines from the one-machine files beside this set: due dates are divided by the number of machines. */
export function readSetD1(folder: string): Instance[] {
  const known = readKnown(folder);
  return [40, 50].flatMap((size) => {
    const figures = numbersIn(readFileSync(join(folder, '..', 'a-smtwt', `wt${size}.txt`), 'utf8'));
    return [2, 4].flatMap((machines) =>
      Array.from({ length: 25 }, (_, at) => {
        const name = `wt${size}-${machines}m-${at * 5 + 1}`;
        const { work, weight, due } = jobsAt(figures, size, at * 5);
        const best = known.get(name);
        return {
          name,
          problem: problemOf(
            { work: Array.from({ length: machines }, () => work), setup: null, weight, due: due.map((min) => Math.floor(min / machines)) },
            TARDINESS,
          ),
          best: best?.value ?? null,
          proven: best?.proven ?? false,
        };
      }),
    );
  });
}
