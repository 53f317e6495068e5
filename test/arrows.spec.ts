import { importedPath, isSpec, sourcesIn, withoutComments } from './support/sources.js';

const GROUND = ['libs/errors', 'libs/units', 'libs/calendar', 'libs/accuracy'];
const CORES = ['libs/matching', 'libs/planning', 'libs/reduction', 'libs/metrology', 'libs/bench'];
const EDGES = ['libs/contract', 'libs/tasks', 'libs/records', 'libs/hosting'];

/** Who may import whom, besides the ground floor. The drawing is in DEVELOPERS.md. */
const ARROWS: Record<string, string[]> = {
  'libs/errors': [],
  'libs/units': [],
  'libs/calendar': [],
  'libs/accuracy': [],
  ...Object.fromEntries(CORES.map((core) => [core, []])),
  'libs/contract': CORES,
  'libs/tasks': [],
  'libs/hosting': [],
  'libs/records': ['libs/contract', 'libs/tasks', ...CORES],
  'apps/api': [...EDGES, ...CORES],
  'apps/worker': [...EDGES, ...CORES],
  'apps/web': ['libs/contract', 'libs/matching', 'libs/reduction'],
  'apps/solo': ['apps/api', 'apps/worker', 'seed', ...EDGES],
  seed: [...EDGES, ...CORES],
};

/** A small pure numeric library is fine in a core; anything else from outside is not. */
const OUTSIDE_IN_CORES = ['decimal.js', 'temporal-polyfill'];

const SOURCES = Object.keys(ARROWS).flatMap((room) => sourcesIn(room).map((source) => ({ room, ...source })));
const PRODUCT = SOURCES.filter((source) => !isSpec(source));

/** The room that an import leads into; null for what comes from outside. */
function roomOf(file: string, name: string): string | null {
  const path = importedPath(file, name);
  if (path === null) return null;
  const [first, second] = path.split('/');
  return first === 'libs' || first === 'apps' ? `${first}/${second}` : first!;
}

describe('the house', () => {
  it.each(Object.entries(ARROWS))('%s imports only what its arrows allow', (room, allowed) => {
    const strays = PRODUCT.filter((source) => source.room === room).flatMap(({ file, imports }) =>
      imports
        .map(({ name }) => ({ file, to: roomOf(file, name) }))
        .filter(({ to }) => to !== null && ![room, ...GROUND, ...allowed].includes(to)),
    );
    expect(strays).toEqual([]);
  });

  it('enters a lib by its front door', () => {
    const sideDoors = PRODUCT.flatMap(({ file, room, imports }) =>
      imports
        .filter(({ name }) => {
          const to = roomOf(file, name);
          return to?.startsWith('libs/') && to !== room && name !== `#${to}/src/index.js`;
        })
        .map(({ name }) => ({ file, name })),
    );
    expect(sideDoors).toEqual([]);
  });

  it('has no index.ts but the front doors, which list their exports by hand', () => {
    const doors = PRODUCT.filter(({ file }) => /(^|\/)index\.tsx?$/.test(file));
    expect(doors.filter(({ file }) => !/^libs\/\w+\/src\/index\.ts$/.test(file)).map(({ file }) => file)).toEqual([]);
    // The contract is nothing but types, of which everything is meant for everybody.
    const careless = doors.filter(({ room, text }) => room !== 'libs/contract' && /export \*/.test(text));
    expect(careless.map(({ file }) => file)).toEqual([]);
  });

  it('keeps the cores and the ground floor free of frameworks, clock, dice, files and the environment', () => {
    const pure = PRODUCT.filter(({ room }) => [...CORES, ...GROUND].includes(room));
    const outside = pure.flatMap(({ file, imports }) =>
      imports
        .filter(({ name }) => roomOf(file, name) === null && !OUTSIDE_IN_CORES.includes(name))
        .map(({ name }) => ({ file, name })),
    );
    const impure = pure.filter(
      ({ file, text }) =>
        file !== 'libs/calendar/src/clock.ts' && // the one place that asks the machine
        /\b(Math\.random|Date\.now|performance\.now|process\.|console\.|new Date\(\))/.test(withoutComments(text)),
    );
    expect(outside).toEqual([]);
    expect(impure.map(({ file }) => file)).toEqual([]);
  });

  it('reads the environment in config.ts only', () => {
    const readers = PRODUCT.filter(
      ({ file, text }) => /process\.env/.test(withoutComments(text)) && !/^apps\/\w+\/src\/config\.ts$/.test(file),
    );
    // What starts another program hands its environment on.
    expect(
      readers.map(({ file }) => file).filter((file) => file !== 'apps/solo/src/postgres/postgres-server.ts'),
    ).toEqual([]);
  });

  it('writes SQL in records only', () => {
    const sql = /(\.query\(|createQueryBuilder|['"`]\s*(select|insert into|update|delete from)\s)/i;
    const writers = PRODUCT.filter(
      ({ room, text }) => room !== 'libs/records' && room !== 'apps/web' && sql.test(withoutComments(text)),
    );
    // The launcher makes the database itself, and the queue's own library keeps its tables: neither knows ours.
    const mayToo = [
      'apps/solo/src/database-url.ts',
      'apps/solo/src/postgres/claim-use.ts',
      'apps/solo/src/make-migration.ts',
    ];
    expect(writers.map(({ file }) => file).filter((file) => !mayToo.includes(file))).toEqual([]);
  });

  it('changes the lab by acts only: no app opens a transaction of its own', () => {
    const own = PRODUCT.filter(({ room, text }) => room.startsWith('apps/') && text.includes('.transaction('));
    expect(own.map(({ file }) => file)).toEqual([]);
  });

  it('names queues in tasks only', () => {
    const queues = PRODUCT.filter(
      ({ room, imports }) =>
        room !== 'libs/tasks' && imports.some(({ name, typeOnly }) => name === 'bullmq' && !typeOnly),
    );
    // To say that another try would not help, the worker has to use the queue's own error.
    expect(queues.map(({ file }) => file)).toEqual(['apps/worker/src/platform/run-task.ts']);
  });

  it('names files in kebab-case, and has no rooms for odds and ends', () => {
    const odd = SOURCES.filter(
      ({ file }) => !/^[a-z0-9./-]+$/.test(file) || /(^|\/)(utils?|helpers?|common|base|misc)(\/|\.ts)/.test(file),
    );
    expect(odd.map(({ file }) => file)).toEqual([]);
  });

  it('leaves no loose ends', () => {
    const loose = /\b(TODO|FIXME|XXX)\b|\bas any\b(?! of)|eslint-disable|@ts-ignore|@ts-nocheck|\.(skip|only|todo)\(/;
    const found = SOURCES.filter(({ text }) => loose.test(text));
    expect(found.map(({ file }) => file)).toEqual([]);
  });
});
