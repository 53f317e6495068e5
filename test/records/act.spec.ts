import { randomUUID } from 'node:crypto';
import { SetClock } from '#libs/calendar/src/index.js';
import {
  act,
  addTeam,
  claimKey,
  factsChangedSince,
  factsStamp,
  LabRecords,
  listen,
  LIVE_CHANNEL,
  openRecords,
  RecordEventEntity,
  snapshot,
  TaskRunEntity,
  TeamEntity,
  underClaim,
} from '#libs/records/src/index.js';
import type { Act, EventListener, LabEvent } from '#libs/records/src/index.js';
import { freshDatabase } from '../support/database.js';
import type { FreshDatabase } from '../support/database.js';
import { until } from '../support/until.js';

const LAB_TIME = '2027-02-28T03:00:00Z';

describe('an act', () => {
  let database: FreshDatabase;
  let records: LabRecords;

  beforeAll(async () => {
    database = await freshDatabase();
    records = new LabRecords(await openRecords(database.url, { poolSize: 8 }), new SetClock(Date.parse(LAB_TIME)));
  });
  afterAll(async () => {
    await records.source.destroy();
    await database.drop();
  });

  const eventsOf = (subjectId: string) => records.manager.findBy(RecordEventEntity, { subjectId });
  const replans = () => records.manager.findBy(TaskRunEntity, { name: 'replan' });
  const stamp = () => records.snapshot(factsStamp);
  const teamAdded = (subjectId: string): LabEvent => ({ kind: 'team/added', subjectId, after: { name: 'Rims' } });
  const addRims = async ({ manager, record }: Act, id: string) => {
    await addTeam(manager, { id, name: `Rims ${id}` });
    await record(teamAdded(id));
  };

  it('keeps what it changes together with its event, by the clock of the lab', async () => {
    const id = randomUUID();
    await records.act(null, (at) => addRims(at, id));
    expect(await records.manager.existsBy(TeamEntity, { id })).toBe(true);
    const [event] = await eventsOf(id);
    expect(event).toMatchObject({ kind: 'team/added', subjectKind: 'team', actorId: null, after: { name: 'Rims' } });
    expect(event!.at.toISOString()).toMatch(/^2027-02-28T03:0/);
    expect(event!.hash).toHaveLength(64);
  });

  it('leaves nothing behind when it fails, whatever came before', async () => {
    const id = randomUUID();
    const failed = records.act(null, async (at) => {
      await addRims(at, id);
      await at.record({ kind: 'settings/changed', subjectId: id });
      throw new Error('too late');
    });
    await expect(failed).rejects.toThrow('too late');
    expect(await records.manager.existsBy(TeamEntity, { id })).toBe(false);
    expect(await eventsOf(id)).toEqual([]);
    expect(await replans()).toEqual([]);
  });

  it('is refused without an event, unless it says that there was nothing to do', async () => {
    const id = randomUUID();
    const silent = records.act(null, ({ manager }) => addTeam(manager, { id, name: 'Silent' }));
    await expect(silent).rejects.toThrow('An act has to record an event');
    expect(await records.manager.existsBy(TeamEntity, { id })).toBe(false);
    expect(await records.act(null, ({ nothing }) => Promise.resolve(nothing('as it was')))).toBe('as it was');
  });

  it('makes older plans stale and announces one new plan by the kinds of its events, however many they are', async () => {
    const before = await stamp();
    await records.act(null, ({ record }) => record(teamAdded('never a fact')));
    expect(await factsChangedSince(records.manager, before)).toBe(false);

    const started = (await replans()).length;
    await records.act(null, async ({ record, manager }) => {
      await record({ kind: 'item/registered', subjectId: 'LC-1' });
      expect(await factsChangedSince(manager, before)).toBe(true); // seen by the act itself at once
      await record({ kind: 'item/registered', subjectId: 'LC-2' });
      await record({ kind: 'items/imported', subjectId: 'register' });
    });
    expect(await factsChangedSince(records.manager, before)).toBe(true);
    const announced = (await replans()).slice(started);
    expect(announced.map(({ payload }) => payload)).toEqual([{ because: 'items/imported', byId: null }]);
  });

  it('asks the event where its kind alone does not tell whether facts changed', async () => {
    const before = await stamp();
    const withdrawn = (changesFacts: boolean): LabEvent => ({
      kind: 'request/withdrawn',
      subjectId: randomUUID(),
      changesFacts,
    });
    await records.act(null, ({ record }) => record(withdrawn(false)));
    expect(await factsChangedSince(records.manager, before)).toBe(false);
    await records.act(null, ({ record }) => record(withdrawn(true)));
    expect(await factsChangedSince(records.manager, before)).toBe(true);
  });

  it('tells open screens once it is through, and whoever follows events within it', async () => {
    const told: string[] = [];
    let connected = false;
    const listener = listen(database.url, {
      channel: LIVE_CHANNEL,
      onMessage: (text) => void told.push(text),
      onConnected: () => (connected = true),
    });
    await until(() => Promise.resolve(connected));
    const heard: string[] = [];
    const hear: EventListener = (manager, eventId, { kind }) => {
      heard.push(kind);
      return manager.findOneByOrFail(RecordEventEntity, { id: eventId }).then(() => undefined);
    };
    const { source, clock } = records;
    await act({ source, clock, listeners: [hear] }, null, async ({ record, tell }) => {
      await record({ kind: 'report/remarked', subjectId: 'TR-1' });
      await record({ kind: 'token/ended', subjectId: 'no screen shows it' });
      await tell('results', 'R-1');
      expect(told).toEqual([]);
    });
    await until(() => Promise.resolve(told.length === 2));
    expect(told.map((text) => JSON.parse(text))).toEqual([
      { topic: 'reports', id: 'TR-1' },
      { topic: 'results', id: 'R-1' },
    ]);
    expect(heard).toEqual(['report/remarked', 'token/ended']);
    await listener.stop();
  });

  it('is done once though its request was sent twice: the first finds that the second does it', async () => {
    const [personId, key, id] = [randomUUID(), randomUUID(), randomUUID()];
    const claim = await claimKey(records.source, personId, key, 'the same request');
    expect(claim.state).toBe('yours');
    const held = { personId, key, claimId: randomUUID() }; // as if a retry had taken the claim over
    const late = underClaim(held, () => records.act(null, (at) => addRims(at, id)));
    await expect(late).rejects.toMatchObject({ code: 'idempotency-key/taken-over' });
    expect(await records.manager.existsBy(TeamEntity, { id })).toBe(false);
  });

  it('is not seen by a snapshot that was begun before', async () => {
    const id = randomUUID();
    const seen = await snapshot(records, async (manager) => {
      const count = () => manager.countBy(TeamEntity, { id });
      const first = await count();
      await records.act(null, (at) => addRims(at, id));
      return [first, await count()];
    });
    expect(seen).toEqual([0, 0]);
  });

  it('does not compile with a kind that is not known, or without a word on facts where one is needed', () => {
    // @ts-expect-error no such kind
    const unknown: LabEvent = { kind: 'request/forgotten', subjectId: 'R-1' };
    // @ts-expect-error a withdrawal has to say whether jobs were aborted with it
    const silent: LabEvent = { kind: 'request/withdrawn', subjectId: 'R-1' };
    // @ts-expect-error that an item changed is always a fact
    const denied: LabEvent = { kind: 'item/changed', subjectId: 'LC-1', changesFacts: false };
    expect([unknown, silent, denied]).toHaveLength(3);
  });
});
