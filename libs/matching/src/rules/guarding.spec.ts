import type { Guard, Item } from '../register/item.js';
import {
  labPlus,
  labWith,
  needsFor,
  SAMPLE_LAB,
  SAMPLE_LINKS,
  sampleItem,
  verdictOn,
} from '#test/support/matching/sample-lab.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import { releasedJ } from './guarding.js';

const always = { ...needsFor(), guardAlways: true };
const frame = sampleItem('frame', 'F');

// F 2000 N, δ 2000·115/(3000·40) = 1.9167 mm: the specimen lets go 1.9167 J; the frame and its train, half as stiff as the bare frame, 2000²/(2·20 000) N·mm = 0.1 J.
const RELEASED_J = (2000 * ((2000 * 115) / (3000 * 40))) / 2 / 1000 + 2000 ** 2 / (2 * 20_000) / 1000;

const guard = (details: Partial<Guard['details']>): Item => ({
  ...SAMPLE_LAB.items.find(({ id }) => id === 'J')!,
  kind: 'guard',
  id: 'U',
  tag: 'U',
  details: { energyJ: 100, interlocked: true, fitsClearanceMinMm: 400, fitsClearanceMaxMm: 400, ...details },
});
const behind = (details: Partial<Guard['details']>) => {
  const links = [...SAMPLE_LINKS, { role: 'guard' as const, itemId: 'U' }];
  const { outcome, reason } = verdictOn('guarding', { lab: labPlus(guard(details)), links, needs: always });
  return outcome === 'pass' ? outcome : `${outcome} ${reason}`;
};

describe('guarding', () => {
  it('adds what the frame lets go to what the specimen does', () => {
    expect(releasedJ(needsFor(), frame, DEFAULT_SETTINGS)).toBeCloseTo(RELEASED_J, 12);
  });

  // 10 kN over 3 mm are 3333 N/mm: 2000²/(2·3333) N·mm = 0.6 J.
  it('takes a frame that nobody has measured for a soft one, and never for a stiffer one than the lab says', () => {
    const unmeasured = { ...frame, details: { ...frame.details, stiffnessNPerMm: null, tensionCapacityN: 10_000 } };
    const framesOwn = (settings: Partial<typeof DEFAULT_SETTINGS>) =>
      releasedJ(needsFor(), unmeasured, { ...DEFAULT_SETTINGS, ...settings }) - needsFor().storedEnergy.value;
    expect(framesOwn({})).toBeCloseTo(0.6, 12);
    expect(framesOwn({ assumedStiffnessNPerMm: 2000 })).toBeCloseTo(1, 12);
  });

  it.each([
    ['energy above the limit', { guardFromJ: RELEASED_J }, needsFor(), 'no-guard'],
    ['energy just below it', { guardFromJ: RELEASED_J * 1.001 }, needsFor(), ''],
    [
      'fragments above their limit',
      { guardFragmentsFromJ: RELEASED_J },
      needsFor({ hazards: ['fragments'] }),
      'no-guard',
    ],
    [
      'fragments just below it',
      { guardFragmentsFromJ: RELEASED_J * 1.001 },
      needsFor({ hazards: ['fragments'] }),
      'hazards',
    ],
    ['a method that always wants one', {}, always, 'no-guard'],
  ])('%s', (_when, settings, needs, reason) => {
    expect(verdictOn('guarding', { settings, needs }).reason).toBe(reason);
  });

  it.each([
    [{}, 'pass'],
    [{ energyJ: RELEASED_J }, 'pass'],
    [{ energyJ: RELEASED_J * 0.999 }, 'fail guard-too-weak'],
    [{ fitsClearanceMaxMm: 399, fitsClearanceMinMm: 300 }, 'fail guard-too-narrow'],
    [{ fitsClearanceMinMm: 401 }, 'fail guard-too-wide'],
    [{ interlocked: false }, 'caution guard-not-interlocked'],
  ])('behind a guard with %j: %s', (details, expected) => expect(behind(details)).toBe(expected));

  it('takes the guard that the frame carries itself', () => {
    expect(
      verdictOn('guarding', { lab: labWith('F', {}, { guardEnergyJ: 50, guardInterlocked: true }), needs: always })
        .outcome,
    ).toBe('pass');
  });
});
