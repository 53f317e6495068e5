import { readFileSync } from 'node:fs';
import { candidate, emptyProblem, filesIn, frame, named, plainJob, readKnown } from './instance.js';
import type { Instance } from './instance.js';

/** Tests with eligible machines (none named: all) and shared unit resources, as facts `test('t1', 568, ['m7'], ['r3'], …).` */
export function readSetE1(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const files = file ? [file] : filesIn(folder, 'instances', /\.pl$/);
  return files.map((path) => named(path, known, problemIn(readFileSync(path, 'utf8'))));
}

function problemIn(text: string): Instance['problem'] {
  const factsOf = (fact: string): string[] =>
    [...text.matchAll(new RegExp(`^${fact}\\(\\s*'([^']+)'`, 'gm'))].map((match) => match[1]!);
  const machines = factsOf('embedded_board');
  const tests = [...text.matchAll(/^test\(\s*'([^']+)',\s*(\d+),\s*\[([^\]]*)\],\s*\[([^\]]*)\]/gm)];
  return {
    ...emptyProblem({ kind: 'makespan' }),
    frames: machines.map((id) => frame(id, null)),
    items: factsOf('resource').map((id) => ({ id, usable: null })),
    jobs: tests.map(([, id, min, on, units]) => {
      const eligible = namesIn(on!);
      const links = namesIn(units!).map((unit) => ({ link: unit, pool: [unit] }));
      return {
        ...plainJob(id!),
        candidates: (eligible.length > 0 ? eligible : machines).map((machine) => ({
          ...candidate(machine, Number(min), null),
          links,
        })),
      };
    }),
  };
}

const namesIn = (list: string): string[] => [...list.matchAll(/'([^']+)'/g)].map((match) => match[1]!);
