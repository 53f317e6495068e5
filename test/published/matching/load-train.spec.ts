import { G_MS2 } from '#libs/units/src/index.js';
import { labWith, needsFor, outcomeOf, PERIOD, sampleItem, verdictOn } from '#test/support/matching/sample-lab.js';
import { matchTrains } from '#libs/matching/src/index.js';

const cellOf = (capacityN: number) => {
  const cell = sampleItem('load-cell', 'C');
  return labWith(
    'C',
    { calibrations: cell.calibrations.map((each) => ({ ...each, from: capacityN / 100, to: capacityN })) },
    { capacityN },
  );
};
const frameOf = (capacityN: number, lab = cellOf(5000)) => labWith('F', {}, { tensionCapacityN: capacityN }, lab);

// common practice, no source
describe('facts of the load train that everyone in the trade knows', () => {
  const small = needsFor({ peak: { low: 20, high: 30 }, results: ['peak-stress'] });

  it('a 5 kN cell on a 5 kN frame passes', () => {
    expect(outcomeOf('cell-within-frame', { lab: frameOf(5000) })).toBe('pass');
  });

  it('a 10 kN cell on a 5 kN frame never does', () => {
    const lab = frameOf(5000, cellOf(10_000));
    expect(outcomeOf('cell-within-frame', { lab })).toBe('fail');
    expect(matchTrains(lab, needsFor(), PERIOD).candidates).toEqual([]);
  });

  it('a 50 N cell on a 5 kN frame is fine for small forces', () => {
    const light = labWith(
      'G',
      { massKg: 0.2 },
      {},
      labWith('J', { massKg: 0 }, {}, labWith('A1', { massKg: 0.1 }, {}, frameOf(5000, cellOf(50)))),
    );
    expect(outcomeOf('cell-within-frame', { lab: light, needs: small })).toBe('pass');
    expect(matchTrains(light, small, PERIOD).candidates.map(({ frameId }) => frameId)).toEqual(['F']);
  });

  it('grips rated 1 kN under a 5 kN cell are fine, and govern', () => {
    const lab = labWith('G', { ratings: { tension: [{ temperatureC: 23, rating: 1000 }] } });
    const needs = needsFor({ peak: { low: 500, high: 800 } });
    const [candidate] = matchTrains(lab, needs, PERIOD).candidates;
    expect(candidate?.governing).toEqual({ rule: 'weakest-link', itemId: 'G', ratingN: 1000 });
  });

  it('hung fixtures reduce what the cell can take: 5 kg on a 500 N cell are 49.0 N, 9.8 % of it', () => {
    const hungN = G_MS2 * 5;
    expect(hungN).toBeCloseTo(49.03, 2);
    expect(hungN / 500).toBeCloseTo(0.098, 3);
    const hung = labWith(
      'G',
      { massKg: 5 },
      {},
      labWith('J', { massKg: 0 }, {}, labWith('A1', { massKg: 0 }, {}, cellOf(500))),
    );
    const at = (high: number) =>
      verdictOn('cell-capacity', {
        lab: hung,
        needs: needsFor({ peak: { low: 100, high }, results: ['peak-stress'] }),
      });
    // The lab's margin of 20 % on the force comes on top.
    expect(at((500 - hungN) / 1.2).outcome).toBe('pass');
    expect(at((500 - hungN) / 1.2 + 0.01).outcome).toBe('fail');
    expect(at(410).sentence).toContain('hangs');
  });

  it('a static weight above a tenth of the cell is a caution', () => {
    const hung = (massKg: number) =>
      labWith('G', { massKg }, {}, labWith('J', { massKg: 0 }, {}, labWith('A1', { massKg: 0 }, {}, cellOf(500))));
    const needs = needsFor({ peak: { low: 100, high: 200 }, results: ['peak-stress'] });
    const tenth = 50 / G_MS2;
    expect(outcomeOf('cell-capacity', { lab: hung(tenth), needs })).toBe('pass');
    expect(outcomeOf('cell-capacity', { lab: hung(tenth + 0.001), needs })).toBe('caution');
  });
});
