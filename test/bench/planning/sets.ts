import { keptSet } from '#test/published/planning/kept-set.js';
import type { Instance } from './read/instance.js';
import { readSetA } from './read/set-a.js';
import { readSetB, readSetBSmall } from './read/set-b.js';
import { readSetC1, readSetC1Large, readSetC2 } from './read/set-c.js';
import { readSetD1 } from './read/set-d1.js';
import { readSetD3 } from './read/set-d3.js';
import { readSetE1 } from './read/set-e1.js';
import { readSetProblem } from './read/set-problem.js';

/** A published set: where it lies below the folder of benchmarks, how it is read, and which of it runs unless all are asked for. */
export interface PublishedSet {
  folder: string;
  /** What the tree itself has of it: nothing has to be given for that. */
  kept?(): Instance[];
  read(folder: string, file?: string): Instance[];
  usual(name: string): boolean;
}

const lastNumber = (name: string): number => Number(/(\d+)$/.exec(name)?.[1]);

/** Every fifth instance of set a, the first of each cell of its generation; of the derived set d1 the ones with late work. */
const FIRST_OF_CELL = (name: string): boolean => lastNumber(name) % 5 === 1;
const WITH_LATE_WORK = (name: string): boolean => [11, 16, 41, 66, 71, 96].includes(lastNumber(name));
const EVERY = (): boolean => true;

export const PUBLISHED_SETS: Readonly<Record<string, PublishedSet>> = {
  a: { folder: 'a-smtwt', kept: () => keptSet('a'), read: readSetA, usual: FIRST_OF_CELL },
  b: { folder: 'b-smtwt-sds', kept: () => keptSet('b'), read: readSetB, usual: EVERY },
  'b-small': { folder: 'b-smtwt-sds', read: readSetBSmall, usual: EVERY },
  c1: { folder: 'c1-upms-sdst-vr2011', read: readSetC1, usual: EVERY },
  'c1-large': { folder: 'c1-upms-sdst-vr2011', read: readSetC1Large, usual: EVERY },
  c2: { folder: 'c2-upms-rj-sdst-twt', read: readSetC2, usual: EVERY },
  d1: { folder: 'd1-p-twt', read: readSetD1, usual: WITH_LATE_WORK },
  d3: { folder: 'd3-fjsp-sdst', read: readSetD3, usual: EVERY },
  e1: { folder: 'e1-csplib073-test-scheduling', read: readSetE1, usual: EVERY },
  problem: { folder: 'lab', read: readSetProblem, usual: EVERY },
};
