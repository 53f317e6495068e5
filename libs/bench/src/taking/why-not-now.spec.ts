import { nothingWhy, whyNotNow } from './why-not-now.js';
import type { Takeable, TakingMoment } from './why-not-now.js';

const NOW_MS = Date.parse('2026-03-02T10:00:00Z');

const job = (over: Partial<Takeable> = {}): Takeable => ({
  ...{ reference: 'J-1-1', releasedAtMs: NOW_MS, holdWhy: null },
  method: { code: 'iso-527-2', designation: 'ISO 527-2' },
  items: [
    { id: 'frame', tag: 'UF-1' },
    { id: 'cell', tag: 'LC-1' },
  ],
  ...over,
});
const moment = (over: Partial<TakingMoment> = {}): TakingMoment => ({
  nowMs: NOW_MS,
  busy: new Map(),
  methods: new Set(['iso-527-2']),
  problemsOf: () => [],
  ...over,
});

it('a job may be taken from the moment in which its specimens are ready', () => {
  expect(whyNotNow(job(), moment())).toBeNull();
});

describe('a job is passed over', () => {
  it.each<[string, Takeable, TakingMoment, RegExp]>([
    ['while its specimens are away', job({ releasedAtMs: null }), moment(), /not here or not conditioned/],
    ['until they are conditioned', job({ releasedAtMs: NOW_MS + 1 }), moment(), /not here or not conditioned/],
    ['while the manager holds it', job({ holdWhy: 'wait for the team' }), moment(), /wait for the team/],
    ['by who may not run it', job(), moment({ methods: new Set(['iso-178']) }), /not authorised for ISO 527-2/],
    ['while another job has its frame', job(), moment({ busy: new Map([['frame', 'J-9-1']]) }), /UF-1 .* by J-9-1/],
    ['while another job has an item of it', job(), moment({ busy: new Map([['cell', 'J-9-1']]) }), /LC-1 .* by J-9-1/],
    [
      'while a rule speaks against its train',
      job(),
      moment({ problemsOf: () => ['Too weak.', 'Lapsed.'] }),
      /^Too weak\. Lapsed\.$/,
    ],
  ])('%s', (_, each, at, why) => {
    expect(whyNotNow(each, at)).toMatch(why);
  });

  it('without asking the rules when something else is in the way', () => {
    const problemsOf = () => {
      throw new Error('asked');
    };
    expect(whyNotNow(job({ holdWhy: 'later' }), moment({ problemsOf }))).toMatch(/later/);
  });
});

describe('nothing to take', () => {
  it('names the first three reasons and counts the rest', () => {
    const passedOver = ['a', 'b', 'c', 'd', 'e'].map((name) => ({ reference: `J-${name}`, why: `why ${name}.` }));
    expect(nothingWhy(passedOver)).toBe('J-a: why a. J-b: why b. J-c: why c. 2 more wait likewise.');
    expect(nothingWhy(passedOver.slice(0, 3))).toBe('J-a: why a. J-b: why b. J-c: why c.');
    expect(nothingWhy([])).toMatch(/No job that is ready/);
  });
});
