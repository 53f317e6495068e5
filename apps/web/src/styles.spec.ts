import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, relative, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';

const ROOT = dirname(fileURLToPath(import.meta.url));

/** Files of the page by their path below src. */
const files = readdirSync(ROOT, { recursive: true, encoding: 'utf8' });
const sources = files.filter((file) => /\.tsx?$/.test(file) && !/\.(spec|d)\.tsx?$/.test(file)).map(read);
const modules = files.filter((file) => file.endsWith('.module.css'));
/** These are in the one object that every screen imports as `ui`. */
const SHARED = importsOf(read('ui/styles.ts')).map(({ module }) => module);

function read(file: string) {
  return { file, text: readFileSync(join(ROOT, file), 'utf8') };
}

/** The CSS modules that a source imports, with the names that it gives them. */
function importsOf({ file, text }: { file: string; text: string }) {
  return [...text.matchAll(/^import (\w+) from '(.*\.module\.css)';$/gm)].map(([, name, path]) => ({
    name: name!,
    module: relative(ROOT, resolve(ROOT, dirname(file), path!)),
  }));
}

function classesOf(module: string): string[] {
  const css = read(module).text.replace(/\/\*[\s\S]*?\*\//g, '');
  return [...new Set([...css.matchAll(/\.([a-z][\w-]*)/g)].map(([, name]) => camelCase(name!)))];
}

function camelCase(name: string): string {
  return name.replace(/-([a-z])/g, (_, letter: string) => letter.toUpperCase());
}

/** Class names that a source takes from an object; `dynamic` when it looks one up by a value. */
function takenFrom(name: string, text: string) {
  const code = text.replace(/^import .*$/gm, '');
  const taken = [...code.matchAll(new RegExp(`\\b${name}\\.(\\w+)`, 'g'))].map(([, key]) => key!);
  return { taken, dynamic: new RegExp(`\\b${name}\\[`).test(code) };
}

describe('class names of the page', () => {
  it('are in the module from which a component takes them', () => {
    const shared = SHARED.flatMap(classesOf);
    const missing = sources.flatMap((source) => [
      ...(/\bui\b.*styles\.js/.test(source.text) ? takenFrom('ui', source.text).taken : [])
        .filter((key) => !shared.includes(key))
        .map((key) => `${source.file}: ui.${key}`),
      ...importsOf(source).flatMap(({ name, module }) =>
        takenFrom(name, source.text)
          .taken.filter((key) => !classesOf(module).includes(key))
          .map((key) => `${source.file}: ${name}.${key}`),
      ),
    ]);
    expect(missing).toEqual([]);
  });

  it('are used, each of them', () => {
    const unused = modules.flatMap((module) => {
      const users = sources.flatMap((source) =>
        importsOf(source)
          .filter((imported) => imported.module === module && source.file !== 'ui/styles.ts')
          .map(({ name }) => takenFrom(name, source.text)),
      );
      if (SHARED.includes(module)) users.push(...sources.map(({ text }) => takenFrom('ui', text)));
      if (users.some(({ dynamic }) => dynamic)) return [];
      const taken = new Set(users.flatMap((user) => user.taken));
      return classesOf(module)
        .filter((key) => !taken.has(key))
        .map((key) => `${module}: ${key}`);
    });
    expect(unused).toEqual([]);
  });

  it('of different shared modules do not hide each other', () => {
    const all = SHARED.flatMap(classesOf);
    expect(all.filter((key, at) => all.indexOf(key) !== at)).toEqual([]);
  });

  it('are nowhere written as a global string', () => {
    expect(sources.filter(({ text }) => /className=["']/.test(text)).map(({ file }) => file)).toEqual([]);
  });
});
