import { readFileSync } from 'node:fs';
import { candidate, emptyProblem, filesIn, frame, frameId, named, numbersIn, plainJob, readKnown } from './instance.js';
import type { Instance } from './instance.js';

/** Flexible job shop with setups: every operation is one job here that comes after the one before it. */
export function readSetD3(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const files = file ? [file] : filesIn(folder, 'instances', /\.fjs$/);
  return files.map((path) => named(path, known, problemIn(readFileSync(path, 'utf8'))));
}

interface Operation {
  id: string;
  before: string | null;
  choices: { machine: number; min: number }[];
}

function problemIn(text: string): Instance['problem'] {
  const [head, ...lines] = text
    .trim()
    .split('\n')
    .map((line) => numbersIn(line))
    .filter((line) => line.length > 0);
  const [jobs, machines] = head as [number, number];
  const operations = lines.slice(0, jobs).flatMap((line, job) => operationsIn(line, job));
  const ids = operations.map(({ id }) => id);
  const rows = lines.slice(jobs);
  const byFrame = Object.fromEntries(
    Array.from({ length: machines }, (_, on) => [frameId(on), rows.slice(on * ids.length, (on + 1) * ids.length)]),
  );
  const empty = emptyProblem({ kind: 'makespan' });
  return {
    ...empty,
    frames: Array.from({ length: machines }, (_, on) => frame(frameId(on), null)),
    jobs: operations.map(({ id, before, choices }) => ({
      ...plainJob(id),
      after: before === null ? [] : [before],
      candidates: choices.map(({ machine, min }) => candidate(frameId(machine - 1), min, id)),
    })),
    changeover: { ...empty.changeover, families: { families: ids, byFrame } },
  };
}

function operationsIn(line: number[], job: number): Operation[] {
  let at = 1;
  return Array.from({ length: line[0]! }, (_, step) => {
    const count = line[at++]!;
    const choices = Array.from({ length: count }, () => ({ machine: line[at++]!, min: line[at++]! }));
    return { id: `${job + 1}.${step + 1}`, before: step === 0 ? null : `${job + 1}.${step}`, choices };
  });
}
