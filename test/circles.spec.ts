import { importedFile, isSpec, sourcesIn } from './support/sources.js';
import type { Source } from './support/sources.js';

const SOURCES = ['apps', 'libs', 'seed', 'test'].flatMap(sourcesIn);
const PRODUCT = SOURCES.filter((source) => !isSpec(source));

/** The parts of the page, each with those it may import besides itself; a feature is a part of its own. */
const PAGE: Record<string, RegExp> = {
  ui: /^$/,
  'api-client': /^$/,
  features: /^(ui|api-client)$/,
  screens: /^(ui|api-client|features\/.*)$/,
};

describe('imports', () => {
  it('run in no circle, types included', () => {
    const circles = circlesIn(new Map(SOURCES.map((source) => [source.file, targetsOf(source)])));
    expect(circles).toEqual([]);
  });

  it('lead from screens to features to ui and api-client in the page, and never from one feature to another', () => {
    const strays = PRODUCT.filter(({ file }) => file.startsWith('apps/web/src/')).flatMap((source) =>
      targetsOf(source)
        .filter((target) => !mayImport(pagePartOf(source.file), pagePartOf(target)))
        .map((target) => `${source.file} → ${target}`),
    );
    expect(strays).toEqual([]);
  });
});

describe('the search for circles', () => {
  it('finds a circle of three and leaves out what only leads to it or away from it', () => {
    const arrows = { before: ['a'], a: ['b'], b: ['c', 'after'], c: ['a'], after: [] };
    expect(circlesIn(new Map(Object.entries(arrows)))).toEqual([['a', 'b', 'c']]);
  });

  it('finds nothing where two ways lead to one file', () => {
    const arrows = { top: ['left', 'right'], left: ['bottom'], right: ['bottom'], bottom: [] };
    expect(circlesIn(new Map(Object.entries(arrows)))).toEqual([]);
  });
});

function targetsOf({ file, imports }: Source): string[] {
  return imports.map(({ name }) => importedFile(file, name)).filter((target) => target !== null);
}

/** Null for what belongs to no part: the front files of the page, and other rooms, of which arrows.spec.ts takes care. */
function pagePartOf(file: string): string | null {
  const [, part, name] = /^apps\/web\/src\/([^/]+)\/([^/]+)/.exec(file) ?? [];
  return part === undefined ? null : part === 'features' ? `${part}/${name}` : part;
}

function mayImport(from: string | null, to: string | null): boolean {
  if (from === null || to === null || from === to) return true;
  const allowed = PAGE[from.split('/')[0]!];
  return allowed === undefined || allowed.test(to);
}

/**
 * The groups of files that reach one another, each sorted.
 * R. Tarjan, Depth-first search and linear graph algorithms, SIAM J. Comput. 1 (1972) 146-160 (cited from memory).
 */
function circlesIn(arrows: ReadonlyMap<string, readonly string[]>): string[][] {
  const found: string[][] = [];
  const order = new Map<string, number>();
  const open: string[] = [];
  const visit = (file: string): number => {
    const index = order.size;
    order.set(file, index);
    const height = open.push(file) - 1;
    const lowest = (arrows.get(file) ?? []).reduce((low, next) => {
      if (!order.has(next)) return Math.min(low, visit(next));
      return open.includes(next) ? Math.min(low, order.get(next)!) : low;
    }, index);
    if (lowest === index) {
      const circle = open.splice(height);
      if (circle.length > 1) found.push(circle.sort());
    }
    return lowest;
  };
  for (const file of arrows.keys()) if (!order.has(file)) visit(file);
  return found;
}
