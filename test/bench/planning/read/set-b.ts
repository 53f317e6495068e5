import { readFileSync } from 'node:fs';
import { filesIn, named, numbersIn, problemOf, readKnown, TARDINESS } from './instance.js';
import type { Instance } from './instance.js';

/** One machine with sequence-dependent setups: text with `Process Times:`, `Weights:`, `Duedates:`, `Setup Times:`. */
export function readSetB(folder: string, file?: string): Instance[] {
  const known = readKnown(folder);
  const files = file ? [file] : filesIn(folder, 'instances', /\.instance$/);
  return files.map((path) => named(path, known, path.endsWith('.json') ? smallProblem(path) : textProblem(path)));
}

/** The small ones, as JSON: n, p, w, d, and s with the first setups as its last row. */
export const readSetBSmall = (folder: string, file?: string): Instance[] =>
  (file ? [file] : filesIn(folder, 'small', /\.json$/)).flatMap((path) => readSetB(folder, path));

function smallProblem(path: string): Instance['problem'] {
  const { n, p, w, d, s } = JSON.parse(readFileSync(path, 'utf8')) as {
    n: number;
    p: number[];
    w: number[];
    d: number[];
    s: number[][];
  };
  return problemOf({ work: [p], setup: [s.slice(0, n)], firstSetup: s[n]!, weight: w, due: d }, TARDINESS);
}

function textProblem(path: string): Instance['problem'] {
  const text = readFileSync(path, 'utf8');
  const size = numbersIn(/Problem Size:\s*(\d+)/.exec(text)![1]!)[0]!;
  const [work, weight, due] = ['Process Times:', 'Weights:', 'Duedates:'].map((head) =>
    numbersIn(text.slice(text.indexOf(head) + head.length)).slice(0, size),
  );
  const triples = numbersIn(text.slice(text.indexOf('Setup Times:')));
  const setup = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const firstSetup = new Array<number>(size).fill(0);
  for (let x = 0; x + 2 < triples.length; x += 3) {
    const [from, to, min] = triples.slice(x, x + 3) as [number, number, number];
    if (from < 0) firstSetup[to] = min;
    else setup[from]![to] = min;
  }
  return problemOf({ work: [work!], setup: [setup], firstSetup, weight: weight!, due: due! }, TARDINESS);
}
