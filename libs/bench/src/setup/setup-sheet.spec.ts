import { setupSheet, takenOffKey } from './setup-sheet.js';
import type { Sheet } from './setup-sheet.js';

const step = (action: 'take-off' | 'keep' | 'put-on', tag: string, kind: string) => ({
  ...{ action, minutes: 5 },
  item: { id: tag, tag, kind, place: 'Drawer 1' },
});
const CONFIRMED = '2026-03-02T10:00:00.000Z';

const sheet = (over: Partial<Sheet> = {}) =>
  setupSheet({
    steps: [
      step('take-off', 'LC-1', 'load-cell'),
      step('take-off', 'GP-2', 'grip'),
      step('keep', 'GU-1', 'guard'),
      step('put-on', 'GP-1', 'grip'),
      step('put-on', 'LC-2', 'load-cell'),
    ],
    train: [
      { role: 'load-cell', itemId: 'LC-2' },
      { role: 'ends', itemId: 'GP-1' },
    ],
    rig: [
      { role: 'load-cell', itemId: 'LC-1' },
      { role: 'ends', itemId: 'GP-2' },
      { role: 'guard', itemId: 'GU-1' },
    ],
    checks: {},
    problems: [],
    ...over,
  });
const confirmedOf = (over: Partial<Sheet>) => sheet(over).map(({ item: { tag }, confirmed }) => [tag, confirmed]);

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

  it('shows what was confirmed; what only stays aside needs no word', () => {
    expect(confirmedOf({ checks: { [takenOffKey('GP-2')]: { at: CONFIRMED } } })).toEqual([
      ['GP-2', true],
      ['LC-1', false],
      ['GU-1', true],
      ['LC-2', false],
      ['GP-1', false],
    ]);
  });

  it('takes back the confirmation of an item against which a rule speaks since', () => {
    const train = [
      { role: 'load-cell', itemId: 'LC-2', confirmedAt: CONFIRMED },
      { role: 'ends', itemId: 'GP-1', confirmedAt: CONFIRMED },
    ];
    const problems = [{ rule: 'calibration-class', items: ['LC-2'], sentence: 'LC-2 is of class 2.' }];
    const lines = sheet({ train, problems }).filter(({ action }) => action === 'put-on');
    expect(lines).toMatchObject([
      { item: { tag: 'LC-2' }, confirmed: false, confirmedAt: CONFIRMED, problem: 'LC-2 is of class 2.' },
      { item: { tag: 'GP-1' }, confirmed: true, problem: null },
    ]);
  });

  it('does not mind what is wrong with an item that comes off', () => {
    const problems = [{ rule: 'item-state', items: ['LC-1'], sentence: 'LC-1 is faulty.' }];
    const checks = { [takenOffKey('LC-1')]: { at: CONFIRMED } };
    expect(sheet({ checks, problems }).find(({ item }) => item.tag === 'LC-1')).toMatchObject({
      ...{ confirmed: true, problem: null },
    });
  });
});
