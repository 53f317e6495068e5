import type { Item, Lab, Needs } from '#libs/matching/src/index.js';
import { DEFAULT_SETTINGS } from '#libs/matching/src/index.js';
import { setupSheet, takenOffKey } from './setup-sheet.js';
import type { Sheet } from './setup-sheet.js';

const item = (kind: string, tag: string, over: object = {}) =>
  ({
    ...{ kind, id: tag, tag, name: tag, place: 'Drawer 1', lengthMm: 50, massKg: 1, state: 'in-service', ratings: {} },
    ...{
      temperatureMinC: 10,
      temperatureMaxC: 35,
      utilities: [],
      needsCalibration: false,
      calibrations: [],
      heldWindows: [],
      details: { capacityN: 5000, torqueCapacityNm: 0 },
    },
    ...over,
  }) as unknown as Item;

const lab: Lab = {
  items: [
    item('frame', 'UF-1'),
    item('frame', 'UF-2'),
    item('load-cell', 'LC-1'),
    item('load-cell', 'LC-2'),
    item('load-cell', 'LC-3'),
    item('grip', 'GP-1'),
    item('grip', 'GP-2', { details: {} }),
    item('guard', 'GU-1'),
  ],
  rigs: [{ frameId: 'UF-2', itemIds: ['LC-2'], chamberC: null }],
  technicians: [],
};

const sheet = (over: Partial<Sheet> = {}) =>
  setupSheet({
    job: { checks: {} },
    train: [
      { role: 'load-cell', itemId: 'LC-2' },
      { role: 'ends', itemId: 'GP-1' },
    ],
    frameId: 'UF-1',
    rig: [
      { role: 'load-cell', itemId: 'LC-1' },
      { role: 'ends', itemId: 'GP-2' },
      { role: 'guard', itemId: 'GU-1' },
    ],
    lab,
    work: { needs: { direction: 'tension', loadUnit: 'N', temperature: { value: 23 } } as unknown as Needs },
    settings: { matching: DEFAULT_SETTINGS },
    busy: new Map(),
    ...over,
  });

describe('a setup sheet', () => {
  it('takes off from the specimen outwards, and puts on from the crosshead down', () => {
    expect(sheet().map(({ action, item: { tag } }) => `${action} ${tag}`)).toEqual([
      'take-off GP-2',
      'take-off LC-1',
      'keep GU-1',
      'put-on LC-2',
      'put-on GP-1',
    ]);
  });

  it('says where an item is to be fetched', () => {
    expect(sheet().map(({ item: { tag, place } }) => [tag, place])).toContainEqual(['LC-2', 'frame UF-2']);
    expect(sheet().map(({ item: { tag, place } }) => [tag, place])).toContainEqual(['GP-1', 'Drawer 1']);
  });

  it('offers equal units that nobody has', () => {
    const offered = (busy: ReadonlyMap<string, string>) =>
      sheet({ busy })
        .find(({ item: { tag } }) => tag === 'LC-2')!
        .standIns.map(({ tag }) => tag);
    expect(offered(new Map())).toEqual(['LC-1', 'LC-3']);
    expect(offered(new Map([['LC-3', 'J-9-1']]))).toEqual(['LC-1']);
  });

  it('shows what was confirmed; what only stays aside needs no word', () => {
    const done = sheet({ job: { checks: { [takenOffKey('GP-2')]: { at: '2026-03-02T10:00:00.000Z', by: 'tom' } } } });
    expect(done.map(({ item: { tag }, confirmed }) => [tag, confirmed])).toEqual([
      ['GP-2', true],
      ['LC-1', false],
      ['GU-1', true],
      ['LC-2', false],
      ['GP-1', false],
    ]);
  });
});
