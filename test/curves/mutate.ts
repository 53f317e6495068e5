/** A small generator with a seed (mulberry32), so that a failing file can be made again. */
export function randomFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

type Random = () => number;
type Mutation = (bytes: Buffer, random: Random) => Buffer;

const upTo = (random: Random, count: number) => Math.floor(random() * count);
const pick = <T>(random: Random, choices: readonly T[]): T => choices[upTo(random, choices.length)]!;
const asText =
  (change: (text: string, random: Random) => string): Mutation =>
  (bytes, random) =>
    Buffer.from(change(bytes.toString('latin1'), random), 'latin1');

function splice(bytes: Buffer, at: number, cut: number, put: Buffer): Buffer {
  return Buffer.concat([bytes.subarray(0, at), put, bytes.subarray(at + cut)]);
}

/** Replaces one cell of numbers somewhere in the file. */
const cell = (choices: readonly string[]) =>
  asText((text, random) => {
    const cells = [...text.matchAll(/\d{1,20}[.,]\d{1,20}/g)];
    const chosen = cells.length > 0 ? pick(random, cells) : null;
    return chosen
      ? text.slice(0, chosen.index) + pick(random, choices) + text.slice(chosen.index + chosen[0].length)
      : text;
  });

const lines = (change: (all: string[], random: Random) => string[]) =>
  asText((text, random) => change(text.split('\n'), random).join('\n'));

/** Ways in which a file comes out wrong, in the lab or by malice. */
export const MUTATIONS: Readonly<Record<string, Mutation>> = {
  truncated: (bytes, random) => bytes.subarray(0, upTo(random, bytes.length)),
  'head cut off': (bytes, random) => bytes.subarray(upTo(random, Math.min(bytes.length, 400))),
  'binary inside': (bytes, random) =>
    splice(
      bytes,
      upTo(random, bytes.length),
      upTo(random, 50),
      Buffer.from(Array.from({ length: upTo(random, 300) }, () => upTo(random, 256))),
    ),
  'all binary': (_, random) => Buffer.from(Array.from({ length: upTo(random, 2000) }, () => upTo(random, 256))),
  'a bit turned': (bytes, random) => {
    const copy = Buffer.from(bytes);
    if (copy.length > 0) copy[upTo(random, copy.length)]! ^= 1 << upTo(random, 8);
    return copy;
  },
  'zero filled end': (bytes, random) =>
    Buffer.concat([bytes.subarray(0, upTo(random, bytes.length)), Buffer.alloc(upTo(random, 3000))]),
  'as UTF-16 without mark': (bytes) => Buffer.from(bytes.toString('latin1'), 'utf16le'),
  'UTF-16 cut at an odd byte': (bytes, random) => {
    const wide = Buffer.concat([Buffer.from([0xff, 0xfe]), Buffer.from(bytes.toString('latin1'), 'utf16le')]);
    return wide.subarray(0, 2 * upTo(random, wide.length >> 1) + 1);
  },
  'mark of another encoding': (bytes, random) =>
    Buffer.concat([
      Buffer.from(
        pick(random, [
          [0xff, 0xfe],
          [0xfe, 0xff],
          [0xef, 0xbb, 0xbf],
          [0x2b, 0x2f, 0x76],
        ]),
      ),
      bytes,
    ]),
  'not a number': cell([
    'NaN',
    'nan',
    '#N/A',
    'Inf',
    '-Infinity',
    '1.#IND',
    '---',
    '',
    ' ',
    '1e999',
    '-1e-999',
    '1e',
    '+',
    '-',
    '.',
    ',',
    '0x1F',
    '1_000',
    '٣',
    '1.2.3',
    '--5',
  ]),
  'huge number': cell([
    '1e308',
    '-1e308',
    '9'.repeat(400),
    '0.'.concat('0'.repeat(400), '1'),
    '123456789012345678901234567890',
    '1e-320',
    '1e22',
    '1e23',
  ]),
  'huge field': cell(['7'.repeat(70_000), 'x'.repeat(70_000), '"'.repeat(5000), ' '.repeat(70_000)]),
  'decimal commas': asText((text) => text.replaceAll('.', ',')),
  'decimal points': asText((text) => text.replace(/(\d),(\d)/g, '$1.$2')),
  'some commas for points': asText((text, random) => text.replace(/\./g, () => (random() < 0.1 ? ',' : '.'))),
  'other delimiter': asText((text, random) => text.replace(/[;,\t|]/g, pick(random, [';', '\t', '|', ' ', '::', '']))),
  'repeated headings': lines((all, random) => [
    ...all.slice(0, 10),
    ...all.slice(0, upTo(random, 4)),
    ...all.slice(10),
  ]),
  'several tests in one file': lines((all) => [...all, ...all]),
  'lines out of order': lines((all, random) => [...all].sort(() => random() - 0.5)),
  'lines twice': lines((all, random) => all.flatMap((line) => (random() < 0.2 ? [line, line] : [line]))),
  'lines missing': lines((all, random) => all.filter(() => random() < 0.7)),
  'no line ends': asText((text) => text.replaceAll('\n', '')),
  'mixed line ends': asText((text, random) => text.replace(/\n/g, () => pick(random, ['\n', '\r\n', '\r', '\n\n']))),
  'long header': asText((text, random) => `${'note;1;2;x\n'.repeat(upTo(random, 8000))}${text}`),
  'many columns': lines((all, random) => all.map((line) => line + ',0'.repeat(60 + upTo(random, 20)))),
  'constant columns': asText((text) => text.replace(/\d{1,20}[.,]\d{1,20}/g, '1.5')),
  'all zero': asText((text) => text.replace(/\d/g, '0')),
  'signs turned': asText((text) => text.replace(/(^|[;,\t|])(\d)/gm, '$1-$2')),
  'quotes opened': asText((text, random) =>
    text.replace(/\d[.,]/g, (found) => (random() < 0.02 ? `"${found}` : found)),
  ),
};
