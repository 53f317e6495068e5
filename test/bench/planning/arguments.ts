import { existsSync } from 'node:fs';
import { parseArgs } from 'node:util';
import { checkData } from '#test/support/check-data.js';

/** What the command line asks for. */
export interface Asked {
  set: string;
  /** A file of the set's format; null runs the set. */
  file: string | null;
  /** Part of an instance's name; empty takes all. */
  only: string;
  folder: string | null;
  seconds: number;
  seed: number;
  json: boolean;
  all: boolean;
  peer: boolean;
  /** Each instance as a lab would state it. */
  asLab: boolean;
}

export const USAGE =
  'bench:planning -- --set NAME [--instance FILE or part of a name] [--folder DIR] [--seconds N] [--seed S] [--all] [--as-lab] [--without-peer] [--json]';

/** Reads the command line; throws with the usage where it makes no sense. */
export function readArguments(words: string[]): Asked {
  const { values } = parseArgs({
    args: words,
    options: {
      set: { type: 'string' },
      instance: { type: 'string' },
      folder: { type: 'string' },
      seconds: { type: 'string', default: '1' },
      seed: { type: 'string', default: '1' },
      all: { type: 'boolean', default: false },
      'as-lab': { type: 'boolean', default: false },
      json: { type: 'boolean', default: false },
      'without-peer': { type: 'boolean', default: false },
    },
  });
  const seconds = Number(values.seconds);
  const seed = Number(values.seed);
  if (!values.set || !(seconds > 0) || !Number.isInteger(seed)) throw new Error(`usage: ${USAGE}`);
  const isFile = values.instance !== undefined && existsSync(values.instance);
  return {
    set: values.set,
    file: isFile ? values.instance! : null,
    only: isFile ? '' : (values.instance ?? ''),
    folder: values.folder ?? null,
    seconds,
    seed,
    json: values.json,
    all: values.all,
    peer: !values['without-peer'],
    asLab: values['as-lab'],
  };
}

/** Where the published sets of instances lie. */
export const benchmarksFolder = (): string => checkData('benchmarks');
