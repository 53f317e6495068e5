import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, posix, sep } from 'node:path';
import { projectRoot } from './maybe.js';

const ROOT = projectRoot();

export interface Import {
  /** As it is written, e.g. `./zone.js` or `#libs/units/src/index.js`. */
  name: string;
  typeOnly: boolean;
}

/** A source file of ours; paths are relative to the project, with slashes. */
export interface Source {
  file: string;
  text: string;
  imports: Import[];
}

/** Every TypeScript source below a folder, specs included. */
export function sourcesIn(folder: string): Source[] {
  const names = readdirSync(join(ROOT, folder), { recursive: true, encoding: 'utf8' });
  return names
    .filter((name) => /\.tsx?$/.test(name) && !name.endsWith('.d.ts'))
    .map((name) => {
      const file = join(folder, name).split(sep).join('/');
      const text = readFileSync(join(ROOT, file), 'utf8');
      return { file, text, imports: importsIn(text) };
    });
}

export const isSpec = ({ file }: Source): boolean => /\.spec\.tsx?$/.test(file);

/** The path that an import names, as it is written there (`.js`); null for what comes from outside. */
export function importedPath(file: string, name: string): string | null {
  if (name.startsWith('.')) return posix.join(posix.dirname(file), name);
  return name.startsWith('#') ? name.slice(1) : null;
}

/** The source file that an import leads to; null for what comes from outside or is no source. */
export function importedFile(file: string, name: string): string | null {
  const path = importedPath(file, name)?.replace(/\.js$/, '');
  if (!path) return null;
  return [`${path}.ts`, `${path}.tsx`].find((source) => existsSync(join(ROOT, source))) ?? null;
}

export function withoutComments(text: string): string {
  return text.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '');
}

function importsIn(text: string): Import[] {
  const written = [
    ...text.matchAll(/^\s*(?:import|export)\s+(type\s)?[^;'"]*?from\s+'([^']+)'/gm),
    ...text.matchAll(/^\s*import\s+(type\s)?'([^']+)'/gm),
  ];
  const later = [...text.matchAll(/\bimport\(\s*'([^']+)'/g)].map(([, name]) => ({ name: name!, typeOnly: false }));
  return [...written.map(([, type, name]) => ({ name: name!, typeOnly: Boolean(type) })), ...later];
}
