import type { LabSettings } from '#libs/contract/src/index.js';
import type { PlannedWork } from '#libs/records/src/index.js';
import { nothingWhy, whyNotNow } from './next-job.js';
import type { Moment } from './next-job.js';

const NOW_MS = Date.parse('2026-03-02T10:00:00Z');

const planned = (job: object = {}) =>
  ({
    job: { reference: 'J-1-1', releasedAt: new Date(NOW_MS), holdWhy: null, ...job },
    booking: { frameId: 'frame', train: [{ role: 'load-cell', itemId: 'cell' }] },
    method: { code: 'iso-527-2', designation: 'ISO 527-2' },
  }) as unknown as PlannedWork;

const moment = (over: object = {}): Moment => ({
  nowMs: NOW_MS,
  lab: { items: [{ id: 'cell', tag: 'LC-1' }], rigs: [], technicians: [] } as unknown as Moment['lab'],
  settings: {} as LabSettings,
  busy: new Map(),
  methods: new Set(['iso-527-2']),
  ...over,
});

describe('a job is passed over', () => {
  it.each<[string, PlannedWork, Moment, RegExp]>([
    ['while its specimens are away', planned({ releasedAt: null }), moment(), /not here or not conditioned/],
    [
      'until they are conditioned',
      planned({ releasedAt: new Date(NOW_MS + 1) }),
      moment(),
      /not here or not conditioned/,
    ],
    ['while the manager holds it', planned({ holdWhy: 'wait for the team' }), moment(), /wait for the team/],
    ['by who may not run it', planned(), moment({ methods: new Set(['iso-178']) }), /not authorised for ISO 527-2/],
    ['while another job has its frame', planned(), moment({ busy: new Map([['frame', 'J-9-1']]) }), /in use by J-9-1/],
    [
      'while another job has an item of it',
      planned(),
      moment({ busy: new Map([['cell', 'J-9-1']]) }),
      /LC-1 is in use by J-9-1/,
    ],
  ])('%s', (_, job, at, why) => {
    expect(whyNotNow(job, at)).toMatch(why);
  });
});

describe('nothing to take', () => {
  it('names the first three reasons and counts the rest', () => {
    const passedOver = ['a', 'b', 'c', 'd', 'e'].map((name) => ({ reference: `J-${name}`, why: `why ${name}.` }));
    expect(nothingWhy({ next: null, passedOver })).toBe('J-a: why a. J-b: why b. J-c: why c. 2 more wait likewise.');
    expect(nothingWhy({ next: null, passedOver: [] })).toMatch(/No job that is ready/);
  });
});
