import { randomUUID } from 'node:crypto';
import { fillOnFirstStart } from '#apps/solo/src/first-start.js';
import { SystemClock } from '#libs/calendar/src/index.js';
import { LabRecords, MethodEntity, MethodRepository, openRecords } from '#libs/records/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { freshDatabase } from '../support/database.js';

const CODE = 'iso-6892-1';
const shipped = METHODS.find(({ id }) => id === CODE)!;

describe('a lab that is opened with a newer library', () => {
  let records: LabRecords;
  let close: () => Promise<void>;

  beforeEach(async () => {
    const database = await freshDatabase();
    records = new LabRecords(await openRecords(database.url, { poolSize: 2 }), new SystemClock());
    await fillOnFirstStart(records, true);
    close = async () => {
      await records.source.destroy();
      await database.drop();
    };
    // As the lab stood before: only the first version.
    await records.manager.query(`update method set id = gen_random_uuid(), version = 1 where code = $1`, [CODE]);
  });
  afterEach(() => close());

  const versions = () => new MethodRepository(records.manager).versionsOf(CODE);

  it('gets the next version of a method beside the one before, with what it puts right', async () => {
    const [before] = await versions();
    await fillOnFirstStart(records, false);
    const [newest, old] = await versions();
    expect([newest!.version, newest!.state, newest!.data['changed']]).toEqual([2, 'offered', shipped.changed]);
    expect({ ...old, data: null }).toEqual({ ...before, data: null });
    await fillOnFirstStart(records, false);
    expect(await versions()).toHaveLength(2);
  });

  it('keeps what it wrote itself, and what it no longer offers', async () => {
    const [first] = await versions();
    const [person] = await records.manager.query<{ id: string }[]>('select id from person limit 1');
    await records.manager.insert(MethodEntity, {
      ...first!,
      id: randomUUID(),
      version: 2,
      enteredBy: person!.id,
      title: 'as we do it',
    } as never);
    await fillOnFirstStart(records, false);
    expect((await versions()).map(({ title }) => title)).toEqual(['as we do it', first!.title]);
    await records.manager.query(`delete from method where code = $1 and version = 2`, [CODE]);
    await records.manager.query(`update method set state = 'retired' where code = $1`, [CODE]);
    await fillOnFirstStart(records, false);
    expect((await versions()).map(({ state }) => state)).toEqual(['retired', 'retired']);
  });
});
