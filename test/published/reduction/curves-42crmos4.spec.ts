import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { confirmedReading } from '#test/curves/read-curve-file.js';
import { resultsOf } from '#test/published/reduction/results-of.js';
import { checkData, maybe, withoutData } from '#test/support/maybe.js';

// Tensile tests of 42CrMoS4 to DIN EN ISO 6892-1, Fraunhofer IWM and IWT Bremen within Platform MaterialDigital,
// CC BY 4.0: https://w3id.org/pmd/demodata/tensiletest_42CrMoS4/ (commit ffb58b4b, folder original_data). Each header
// carries the published results. The files are not ours to carry along, so that they are read where CHECK_DATA has them.
const FOLDER = 'checks/curves/42CrMoS4';
const folder = checkData(FOLDER);
const names = folder ? readdirSync(folder).filter((name) => name.endsWith('.tsv')) : ['one of ten'];

/**
 * Tolerances over all 67 published curves, from an independent reduction: the publisher's window of the slope is not
 * stated, so that what hangs on the slope cannot agree further.
 */
const TOLERANCE = { strengthPct: 0.01, offset02Pct: 0.35, offset1Pct: 0.15, uniformPoints: 0.03, slopePct: 6 };

function published(preamble: readonly string[], heading: string): number {
  const line = preamble.find((each) => each.startsWith(`# ${heading}`));
  return Number(line?.split('\t')[1]);
}

const differencePct = (found: number, stated: number) => Math.abs(100 * (found / stated - 1));

describe('open tensile curves of 42CrMoS4 against their published results', () => {
  const withCurves = maybe(withoutData(FOLDER, folder));

  names.forEach((name) =>
    withCurves(`reduces ${name} to what its publisher found`, () => {
      const { curve, preamble } = confirmedReading(join(folder!, name));
      const { value } = resultsOf(
        curve,
        {
          section: 'round',
          results: ['modulus', 'offset-yield', 'peak-stress', 'plastic-strain-at-peak', 'reduction-of-area'],
          slope: { way: 'regression', bounds: { over: 'peak-share', from: 0.1, to: 0.4 } },
          toe: { way: 'slope-line' },
          offsetStrains: [0.002, 0.01],
        },
        {
          diameterMm: published(preamble, 'Gauge diameter'),
          gaugeLengthMm: published(preamble, 'Gauge length'),
          finalAreaMm2: published(preamble, 'Cross-section after fracture'),
        },
      );
      expect(differencePct(value('peak-stress'), published(preamble, 'Ultimate tensile strength'))).toBeLessThan(
        TOLERANCE.strengthPct,
      );
      expect(differencePct(value('offset-yield', 0.002), published(preamble, 'Yield stress at 0.2%'))).toBeLessThan(
        TOLERANCE.offset02Pct,
      );
      expect(differencePct(value('offset-yield', 0.01), published(preamble, 'Yield stress at 1%'))).toBeLessThan(
        TOLERANCE.offset1Pct,
      );
      expect(Math.abs(100 * value('plastic-strain-at-peak') - published(preamble, 'Uniform elongation'))).toBeLessThan(
        TOLERANCE.uniformPoints,
      );
      expect(differencePct(value('modulus'), published(preamble, 'Slope'))).toBeLessThan(TOLERANCE.slopePct);
      expect(100 * value('reduction-of-area')).toBeCloseTo(published(preamble, 'Reduction of area'), 6);
    }),
  );
});
