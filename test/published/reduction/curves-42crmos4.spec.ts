import { confirmedReading } from '#test/curves/read-curve-file.js';
import { readTable } from '#test/published/reduction/read-table.js';
import { resultsOf } from '#test/published/reduction/results-of.js';

// Tensile tests of 42CrMoS4 to DIN EN ISO 6892-1 with the results of their publisher, CC BY 4.0: test/published/README.md.
const SPECIMENS = readTable('42crmos4/results.csv').filter(({ curve }) => curve === 'yes');

/**
 * Tolerances over all 67 published curves, from an independent reduction: the publisher's window of the slope is not
 * stated, so that what hangs on the slope cannot agree further.
 */
const TOLERANCE = { strengthPct: 0.01, offset02Pct: 0.35, offset1Pct: 0.15, uniformPoints: 0.03, slopePct: 6 };

const differencePct = (found: number, stated: number) => Math.abs(100 * (found / stated - 1));

describe('open tensile curves of 42CrMoS4 against their published results', () => {
  it.each(SPECIMENS)('reduces $specimen to what its publisher found', (published) => {
    const stated = (column: string) => Number(published[column]);
    const { curve } = confirmedReading(new URL(`./42crmos4/${published['specimen']}.csv`, import.meta.url));
    const { value } = resultsOf(
      curve,
      {
        section: 'round',
        results: ['modulus', 'offset-yield', 'peak-stress', 'plastic-strain-at-peak', 'reduction-of-area'],
        slope: { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } },
        toe: { way: 'slope-line' },
        offsetStrains: [0.002, 0.01],
      },
      { diameterMm: stated('d0_mm'), gaugeLengthMm: stated('Le_mm'), finalAreaMm2: stated('Su_mm2') },
    );
    const off = (found: number, column: string) => differencePct(found, stated(column));
    expect(off(value('peak-stress'), 'Rm_MPa')).toBeLessThan(TOLERANCE.strengthPct);
    expect(off(value('offset-yield', 0.002), 'Rp02_MPa')).toBeLessThan(TOLERANCE.offset02Pct);
    expect(off(value('offset-yield', 0.01), 'Rp1_MPa')).toBeLessThan(TOLERANCE.offset1Pct);
    expect(Math.abs(100 * value('plastic-strain-at-peak') - stated('Ag_percent'))).toBeLessThan(
      TOLERANCE.uniformPoints,
    );
    expect(off(value('modulus'), 'slope_MPa')).toBeLessThan(TOLERANCE.slopePct);
    expect(100 * value('reduction-of-area')).toBeCloseTo(stated('Z_percent'), 6);
  });
});
