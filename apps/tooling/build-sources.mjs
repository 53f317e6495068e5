// Turns .ts into .js under dist/, file by file (types are checked by `npm run types`), copies the data files that sources read, and
// removes what was made from sources that are no longer there.
import { transformFile } from '@swc/core';
import { copyFile, mkdir, readdir, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';

const OUT = 'dist';
const isSource = (file) => /\.ts$/.test(file) && !/\.(spec|d)\.ts$/.test(file) && !file.startsWith(join('apps', 'web'));
const isData = (file) => /^(seed|libs)\/.*\.(json|csv|svg)$/.test(file);

async function newer(file, than) {
  const [a, b] = await Promise.all([stat(file), stat(than).catch(() => null)]);
  return !b || a.mtimeMs > b.mtimeMs;
}

async function filesUnder(root) {
  const names = await readdir(root, { recursive: true }).catch(() => []);
  return names.map((name) => join(root, name));
}

async function put(file, text) {
  // Written beside and renamed, so that a process that starts meanwhile never reads half a file.
  await mkdir(dirname(file), { recursive: true });
  await writeFile(`${file}.${process.pid}`, text);
  await rename(`${file}.${process.pid}`, file);
}

async function compile(file) {
  const out = join(OUT, file.replace(/\.ts$/, '.js'));
  if (!(await newer(file, out))) return false;
  const sourceFileName = relative(dirname(out), file);
  const { code, map } = await transformFile(file, { sourceMaps: true, sourceFileName });
  await put(`${out}.map`, map);
  await put(out, `${code}\n//# sourceMappingURL=${out.split('/').pop()}.map\n`);
  return true;
}

async function copy(file) {
  const out = join(OUT, file);
  if (!(await newer(file, out))) return false;
  await mkdir(dirname(out), { recursive: true });
  await copyFile(file, out);
  return true;
}

/** Removes what no source stands behind any more; folders stay, and so does what another process is just writing. */
async function sweep(root, sources) {
  const outs = (await filesUnder(join(OUT, root))).filter((out) => /\.(js|map|json|csv|svg)$/.test(out));
  const gone = outs.filter((out) => !sources.has(relative(OUT, out).replace(/\.js(\.map)?$/, '.ts')));
  const files = await Promise.all(gone.map(async (out) => ((await stat(out)).isFile() ? out : null)));
  await Promise.all(files.filter(Boolean).map((out) => rm(out, { force: true })));
}

/** @param {string[]} roots folders below the project root @returns how many files were written */
export async function buildSources(roots) {
  const files = (await Promise.all(roots.map(filesUnder))).flat();
  const [sources, data] = [files.filter(isSource), files.filter(isData)];
  await Promise.all(roots.map((root) => sweep(root, new Set([...sources, ...data]))));
  const done = await Promise.all([...sources.map(compile), ...data.map(copy)]);
  return done.filter(Boolean).length;
}
