import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative } from 'node:path';
import { fileURLToPath } from 'node:url';

const HERE = dirname(fileURLToPath(import.meta.url));

/** From the first to the last: each folder imports only those before it, and the ground floor. */
const FOLDERS = ['register', 'ask', 'rules', 'search', 'answer', 'advice'];

const files = readdirSync(HERE, { recursive: true, encoding: 'utf8' })
  .map((name) => name.replaceAll('\\', '/'))
  .filter((name) => name.endsWith('.ts') && !name.endsWith('.spec.ts'));

/** Files of this lib that a file imports, types included. */
function importsOf(file: string): string[] {
  const text = readFileSync(join(HERE, file), 'utf8');
  return [...text.matchAll(/from '(\.{1,2}\/[^']+)\.js'/g)].map(([, path]) =>
    relative(HERE, join(HERE, dirname(file), `${path}.ts`)).replaceAll('\\', '/'),
  );
}

const folderOf = (file: string) => file.split('/')[0]!;

describe('the folders of matching', () => {
  const inFolders = files.filter((file) => file !== 'index.ts');

  it('hold every file but the front door', () => {
    expect([...new Set(inFolders.map(folderOf))].sort()).toEqual([...FOLDERS].sort());
  });

  it('import only those before them', () => {
    const strays = inFolders.flatMap((file) =>
      importsOf(file)
        .filter((to) => FOLDERS.indexOf(folderOf(to)) > FOLDERS.indexOf(folderOf(file)))
        .map((to) => `${file} -> ${to}`),
    );
    expect(strays).toEqual([]);
  });

  it('have no circle of imports, types included', () => {
    const done = new Set<string>();
    const circles: string[] = [];
    const visit = (file: string, path: readonly string[]): void => {
      if (path.includes(file)) circles.push([...path.slice(path.indexOf(file)), file].join(' -> '));
      if (done.has(file) || path.includes(file)) return;
      for (const to of importsOf(file)) visit(to, [...path, file]);
      done.add(file);
    };
    for (const file of inFolders) visit(file, []);
    expect(circles).toEqual([]);
  });
});
