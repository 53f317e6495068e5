import { readFileSync } from 'node:fs';
import { basename } from 'node:path';
import { filesIn, named, numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';

/** Unrelated machines with setups, makespan: `n m 1`, `m`, rows `machine time …`, `SSD`, per machine `Mk` and an n × n matrix. */
export function readSetC1(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  return (file ? [file] : filesIn(folder, 'small', /^I_.*\.txt$/)).map((path) =>
    named(path, known, makespanProblem(path)),
  );
}

export const readSetC1Large = (folder: string, file?: string): Instance[] =>
  (file ? [file] : filesIn(folder, 'large', /^I_.*\.txt$/)).flatMap((path) => readSetC1(folder, path));

function makespanProblem(path: string): Instance['problem'] {
  const [head, ...matrices] = readFileSync(path, 'utf8').split(/SSD|M\d+/);
  const figures = numbersIn(head!);
  const [jobs, machines] = figures as [number, number];
  const rows = figures.slice(4);
  const work = Array.from({ length: machines }, () => new Array<number | null>(jobs).fill(null));
  for (let job = 0; job < jobs; job++) {
    for (let x = 0; x < machines; x++) {
      const at = job * 2 * machines + 2 * x;
      work[rows[at]!]![job] = rows[at + 1]!;
    }
  }
  const setup = matrices
    .map(numbersIn)
    .filter((all) => all.length > 0)
    .map((all) => rowsOf(all, jobs));
  return problemOf({ work, setup }, { kind: 'makespan' });
}

/**
 * Unrelated machines with releases, setups and due dates: the integers p[k][j], w[j], s[k][to][from], d[j], r[j]; the sizes
 * are in the file's name, e.g. `…_10X100_5.txt`.
 */
export function readSetC2(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const files = file ? [file] : filesIn(folder, 'instances', /\d+X\d+_\d+\.txt$/);
  return files.map((path) =>
    named(path, known, tardinessProblem(path), basename(path, '.txt').replace('setting_', 's')),
  );
}

function tardinessProblem(path: string): Instance['problem'] {
  const [, machines, jobs] = (/(\d+)X(\d+)/.exec(basename(path)) ?? []).map(Number) as [number, number, number];
  const figures = numbersIn(readFileSync(path, 'utf8'));
  let at = 0;
  const take = (count: number): number[] => figures.slice(at, (at += count));
  const work = rowsOf(take(machines * jobs), jobs);
  const weight = take(jobs);
  const setup = Array.from({ length: machines }, () => transposed(rowsOf(take(jobs * jobs), jobs)));
  return problemOf({ work, setup, weight, due: take(jobs), release: take(jobs) }, TARDINESS);
}

function rowsOf(all: number[], width: number): number[][] {
  return Array.from({ length: all.length / width }, (_, row) => all.slice(row * width, (row + 1) * width));
}

const transposed = (rows: number[][]): number[][] => rows[0]!.map((_, column) => rows.map((row) => row[column]!));
