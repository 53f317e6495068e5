import { G_MS2 } from '#libs/units/src/index.js';
import { labWith, needsFor, outcomeOf, verdictOn } from '#test/support/matching/sample-lab.js';
import type { Direction } from '../register/item.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import { loadOnCellN } from './cell-capacity.js';

const WITHOUT_MARGIN = { ...DEFAULT_SETTINGS, forceMargin: 0 };

const MARGIN = 1 + DEFAULT_SETTINGS.forceMargin;

// Grips 4 kg, faces 0.5 kg, adapter 0.8 kg hang on the cell: 5.3 kg.
const HUNG_N = G_MS2 * 5.3;

describe('cell-capacity', () => {
  it.each([
    [2000 * MARGIN + HUNG_N + 0.001, 'pass'],
    [2000 * MARGIN + HUNG_N, 'pass'],
    [2000 * MARGIN + HUNG_N - 0.001, 'fail'],
  ])('a crosshead cell of %p N pulling 2000 N and the margin with 5.3 kg on it: %s', (capacityN, outcome) => {
    expect(outcomeOf('cell-capacity', { lab: labWith('C', {}, { capacityN }) })).toBe(outcome);
  });

  it.each([
    ['tension', 'crosshead', 1100],
    ['compression', 'crosshead', 900],
    ['tension', 'base', 900],
    ['compression', 'base', 1100],
  ] as const)('in %s a %s cell sees 1000 N and 100 N of weight as %p N', (direction: Direction, cellAt, expected) => {
    const needs = { ...needsFor({ peak: { low: 1000, high: 1000 } }), direction };
    expect(loadOnCellN({ needs, settings: WITHOUT_MARGIN }, 100, cellAt)).toBe(expected);
  });

  it('never falls below the weight itself', () => {
    const needs = { ...needsFor({ peak: { low: 50, high: 60 } }), direction: 'compression' as const };
    expect(loadOnCellN({ needs, settings: WITHOUT_MARGIN }, 100, 'crosshead')).toBe(100);
  });

  it('refuses a cell that does not sense the direction', () => {
    const { outcome, reason } = verdictOn('cell-capacity', { lab: labWith('C', {}, { directions: ['compression'] }) });
    expect([outcome, reason]).toEqual(['fail', 'cell-blind']);
  });
});
