import { changeoverBetween } from './changeover.js';
import { forceLadder } from './force-ladder.js';
import { matchTrains } from './match-trains.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import { trainDrawing } from './train-drawing.js';
import { needsFor, PERIOD, SAMPLE_LAB } from '#test/support/matching/sample-lab.js';

const needs = needsFor();
const [candidate] = matchTrains(SAMPLE_LAB, needs, PERIOD).candidates;
const item = (id: string) => SAMPLE_LAB.items.find((each) => each.id === id);

describe('the train drawing', () => {
  it('stacks the train to scale from crosshead to base, a pair above and below the specimen', () => {
    const segments = trainDrawing(candidate!, needs, item);
    expect(segments.filter(({ beside }) => !beside).map(({ label, lengthMm }) => `${label} ${lengthMm}`)).toEqual([
      'Crosshead of F 0',
      'C 70',
      'A1 45',
      'G 120',
      'Specimen 115',
      'G 120',
      'A2 45',
      'Base of F 0',
    ]);
    expect(segments.filter(({ beside }) => beside).map(({ role }) => role)).toEqual(['faces', 'extensometer']);
  });
});

describe('the force ladder', () => {
  it('marks the band, the smallest reading, every rating and the verified range, and names who governs', () => {
    const ladder = forceLadder(needs, candidate!, DEFAULT_SETTINGS, item);
    expect(ladder.marks.find(({ kind }) => kind === 'band')).toMatchObject({ from: 1000, to: 2000 });
    expect(ladder.marks.find(({ kind }) => kind === 'smallest')).toMatchObject({ from: 60 });
    expect(ladder.marks.find(({ kind }) => kind === 'verified')).toMatchObject({ from: 50, to: 5000 });
    expect(ladder.governedBy).toBe('C');
    expect(ladder.marks.filter(({ governs }) => governs)).toHaveLength(1);
  });

  it('stands without a train', () => {
    expect(forceLadder(needs, null, DEFAULT_SETTINGS, item).marks.map(({ kind }) => kind)).toEqual([
      'band',
      'smallest',
    ]);
  });
});

describe('the changeover', () => {
  const steps = (itemIds: string[]) =>
    changeoverBetween({ frameId: 'F', itemIds, chamberC: null }, candidate!, DEFAULT_SETTINGS, item).steps.map(
      ({ step, itemId, minutes }) => `${step} ${itemId} ${minutes}`,
    );

  it('keeps what hangs there, puts the rest on', () => {
    expect(steps(['C', 'A1', 'G', 'J', 'A2', 'X']).every((step) => step.startsWith('keep'))).toBe(true);
    expect(steps(['C'])).toEqual(['keep C 0', 'put-on A1 4', 'put-on G 12', 'put-on J 4', 'put-on A2 4', 'put-on X 4']);
  });

  it('checks a cell that was fitted', () => {
    expect(steps([])).toContain('check C 10');
  });

  it('adds up to the score that ranks the train', () => {
    const points = candidate!.scoreParts.reduce((sum, part) => sum + part.points, 0);
    expect(points).toBeCloseTo(candidate!.score, 9);
  });
});
