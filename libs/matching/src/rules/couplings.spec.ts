import { matchTrains } from '../answer/match-trains.js';
import { labWith, needsFor, PERIOD, SAMPLE_LAB, SAMPLE_LINKS, verdictOn } from '#test/support/matching/sample-lab.js';
import { meets } from '../register/couplings.js';
import type { Coupling } from '../register/item.js';

const clevis = (gender: Coupling['gender'], sizeMm = 20): Coupling => ({ type: 'clevis', sizeMm, gender });

const thread: Coupling = { type: 'thread', sizeMm: 20, gender: 'female' };

describe('couplings', () => {
  it.each([
    [clevis('male'), clevis('female'), true],
    [clevis('female'), clevis('male'), true],
    [clevis('male'), clevis('male'), false],
    [clevis('plain'), clevis('plain'), true],
    [clevis('plain'), clevis('male'), false],
    [clevis('male'), clevis('female', 15), false],
    [clevis('male'), thread, false],
  ])('%j and %j meet: %p', (a, b, expected) => expect(meets(a, b)).toBe(expected));

  it('passes a train that meets from crosshead to base', () => {
    expect(verdictOn('couplings').outcome).toBe('pass');
  });

  it('names the two ends that do not meet', () => {
    const { outcome, items, sentence } = verdictOn('couplings', {
      links: SAMPLE_LINKS.filter(({ role }) => role !== 'lower-adapter'),
    });
    expect([outcome, items]).toEqual(['fail', ['F', 'G']]);
    expect(sentence).toContain('Add an adapter');
  });

  it('refuses a cell where the frame has no place for one', () => {
    expect(verdictOn('couplings', { lab: labWith('F', {}, { cellPositions: ['base'] }) }).reason).toBe('no-seat');
  });

  it('finds the adapters of both sides by itself, as units that differ', () => {
    const [candidate] = matchTrains(SAMPLE_LAB, needsFor(), PERIOD).candidates;
    const adapters = candidate!.links.filter(({ role }) => role.includes('adapter'));
    expect(adapters.map(({ role, itemId }) => [role, itemId])).toEqual([
      ['upper-adapter', 'A1'],
      ['lower-adapter', 'A2'],
    ]);
    expect(adapters[0]!.pool).toEqual(['A1', 'A2']);
  });

  it('offers nothing when one adapter is all there is', () => {
    const items = SAMPLE_LAB.items.filter(({ id }) => id !== 'A2');
    const { candidates, refusals } = matchTrains({ ...SAMPLE_LAB, items }, needsFor(), PERIOD);
    expect(candidates).toEqual([]);
    expect(refusals[0]!.failing.map(({ rule }) => rule)).toEqual(['couplings']);
  });
});
