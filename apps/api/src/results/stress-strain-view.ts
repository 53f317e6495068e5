import { resultWords } from '#libs/contract/src/index.js';
import type { CurveView } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import type { CurveEntity, ResultEntity } from '#libs/records/src/index.js';

const PERCENT = 100;
const COLUMNS = [
  { key: 'strainPct', label: 'Strain', unit: '%' },
  { key: 'stressMPa', label: 'Stress', unit: 'MPa' },
];

type Drawn = Pick<CurveEntity, 'specimenId' | 'drawn'>;
type Figure = Pick<ResultEntity, 'specimenId' | 'key' | 'origin' | 'basis'>;

/**
 * A curve as stress over strain, by the scales that its results were read with, so that a size that is measured again moves both.
 * Strain counts from the record's own zero: toe compensation moves the results, not the curve.
 *
 * @param view the same curve as recorded
 * @returns null where its results were read without stress or strain, or the record is drawn so already
 */
export function stressStrainView(
  { specimenId, drawn }: Drawn,
  view: CurveView,
  results: readonly Figure[],
  { testType }: Pick<Method, 'testType'>,
): CurveView | null {
  const own = results.filter((result) => result.specimenId === specimenId && result.origin === 'reduced');
  const scales = own.find(({ key }) => key === 'peak-load')?.basis.scales;
  const [along, up] = [scales && drawn[scales.strain.channel], scales && drawn[scales.stress.channel]];
  const isDrawnSo = view.columns[0]?.key === 'strain' && view.columns[1]?.key === 'stressMPa';
  if (!scales || !along || !up || isDrawnSo) return null;
  const strainPct = (value: number) => (value - scales.strain.start) * scales.strain.factor * PERCENT;
  const stressMPa = (value: number) => (value - scales.stress.start) * scales.stress.factor;
  return {
    ...view,
    columns: COLUMNS,
    points: { strainPct: along.map(strainPct), stressMPa: up.map(stressMPa) },
    marks: own.flatMap(({ key, basis }) => {
      const { [scales.strain.channel]: x, [scales.stress.channel]: y } = basis.at?.[0] ?? {};
      if (x === undefined || y === undefined) return [];
      return [{ key, label: resultWords(key, testType).label, x: strainPct(x), y: stressMPa(y) }];
    }),
  };
}
