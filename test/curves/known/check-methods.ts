// npm run check:methods [-- --combinations 2000 --seed 1 --write]: each method of the library against records whose answers are known.
// Prints a table of method × trouble, then how random combinations of troubles end; it fails where a wrong figure has no remark.
// With --write the table becomes the page beside this file.
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { projectRoot } from '#test/support/maybe.js';
import { chances } from './chances.js';
import { judge } from './judge.js';
import type { Judged } from './judge.js';
import { RAMPED } from './known-methods.js';
import { methodsPage } from './methods-page.js';
import type { Recording } from './recording.js';
import { TROUBLES } from './troubles.js';
import type { Trouble } from './troubles.js';

/** A preload and a wrong zero together can cancel each other in the first row; then nothing in the record shows either. */
const CANCEL = ['zeroed under a preload', 'force not zeroed'];

const ROWS = 900;
const MARKS = { right: '✓', flagged: '!', missing: '–', silent: 'SILENT' } as const;

const { values } = parseArgs({
  options: {
    combinations: { type: 'string', default: '2000' },
    seed: { type: 'string', default: '1' },
    write: { type: 'boolean', default: false },
  },
});
if (values.write) writeFileSync(join(projectRoot(), 'test/curves/known/methods.md'), methodsPage());

let silent = 0;
for (const known of RAMPED) {
  for (const law of known.laws) {
    console.log(`\n${known.method.designation}: ${law.name}`);
    TROUBLES.forEach((trouble, at) => {
      const spoiled = trouble.spoil(known.record(law, ROWS), chances(at + 1));
      if (spoiled) console.log(`  ${trouble.name.padEnd(42)} ${lineOf(judge(known, law, spoiled))}`);
    });
  }
}
console.log(`\n${values.combinations} random combinations, seed ${values.seed}:`);
const fates = combinations(Number(values.combinations), chances(Number(values.seed)));
console.log(`  ${Object.entries(fates).map(([fate, count]) => `${count} ${fate}`).join(', ')}`);
if (silent > 0) {
  console.error(`${silent} wrong figures without a remark.`);
  process.exitCode = 1;
}

/** ✓ within the tolerance, ! outside but flagged, – missing with its reason; then found and true. A remark on a right figure is a dot. */
function lineOf(judged: readonly Judged[]): string {
  silent += judged.filter(({ fate }) => fate === 'silent').length;
  return judged
    .map(({ key, fate, found, truth, remarks }) => {
      const dot = fate === 'right' && remarks.length > 0 ? '·' : '';
      return `${key} ${MARKS[fate]}${dot} ${found === null ? '' : `${short(found)}/`}${short(truth)}`;
    })
    .join('; ');
}

function short(value: number): string {
  return String(Number(value.toPrecision(4)));
}

function combinations(count: number, chance: () => number): Record<string, number> {
  const ends: Record<string, number> = { right: 0, flagged: 0, missing: 0, silent: 0 };
  const any = <T>(list: readonly T[]): T => list[Math.floor(chance() * list.length)]!;
  for (let done = 0; done < count; done++) {
    const known = any(RAMPED);
    const law = any(known.laws);
    const clean = known.record(law, 300 + Math.floor(chance() * 1500));
    const { recording, names } = spoiledBy(clean, 1 + Math.floor(chance() * 3), () => any(TROUBLES), chance);
    for (const one of judge(known, law, recording)) {
      ends[one.fate]!++;
      if (one.fate === 'silent') console.log(`  ${known.method.id}, ${law.name}, ${names.join(' + ')}: ${lineOf([one])}`);
    }
  }
  return ends;
}

function spoiledBy(
  clean: Recording,
  times: number,
  next: () => Trouble,
  chance: () => number,
): { recording: Recording; names: string[] } {
  let recording = clean;
  const names: string[] = [];
  for (let time = 0; time < times; time++) {
    const trouble = next();
    const cancels = CANCEL.includes(trouble.name) && names.some((name) => CANCEL.includes(name));
    const spoiled = cancels || names.includes(trouble.name) ? null : trouble.spoil(recording, chance);
    if (!spoiled) continue;
    recording = spoiled;
    names.push(trouble.name);
  }
  return { recording, names };
}
