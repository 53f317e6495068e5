import { resultWords } from '#libs/contract/src/index.js';
import type { CurveView } from '#libs/contract/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import type { BatchFound, ResultEntity } from '#libs/records/src/index.js';

/** What is drawn along the axes, best first: stress over strain where both are known, else force over travel. */
const CHANNELS: Readonly<
  Record<string, { label: string; unit: string; axis: 'x' | 'y'; rank: number; factor: number }>
> = {
  strain: { label: 'Strain', unit: '%', axis: 'x', rank: 1, factor: 100 },
  extensionMm: { label: 'Extension', unit: 'mm', axis: 'x', rank: 2, factor: 1 },
  displacementMm: { label: 'Travel', unit: 'mm', axis: 'x', rank: 3, factor: 1 },
  angleDeg: { label: 'Angle', unit: '°', axis: 'x', rank: 4, factor: 1 },
  timeS: { label: 'Time', unit: 's', axis: 'x', rank: 5, factor: 1 },
  stressMPa: { label: 'Stress', unit: 'MPa', axis: 'y', rank: 1, factor: 1 },
  forceN: { label: 'Force', unit: 'N', axis: 'y', rank: 2, factor: 1 },
  torqueNm: { label: 'Torque', unit: 'N·m', axis: 'y', rank: 3, factor: 1 },
};

interface Context {
  specimenLabel: string;
  method: Method;
  results: readonly ResultEntity[];
}

/** A curve ready to be drawn: first column along, second up, and the points that the results rest on. */
export function curveView(curve: BatchFound['curves'][number], { specimenLabel, method, results }: Context): CurveView {
  const known = Object.keys(curve.drawn).filter((key) => key in CHANNELS);
  const best = (axis: 'x' | 'y') =>
    known.filter((key) => CHANNELS[key]!.axis === axis).sort((a, b) => CHANNELS[a]!.rank - CHANNELS[b]!.rank)[0];
  const shown = [best('x'), best('y')].filter((key) => key !== undefined);
  return {
    id: curve.id,
    specimenLabel,
    columns: shown.map((key) => ({ key, label: CHANNELS[key]!.label, unit: CHANNELS[key]!.unit })),
    points: Object.fromEntries(
      shown.map((key) => [key, curve.drawn[key]!.map((value) => value * CHANNELS[key]!.factor)]),
    ),
    marks: marksOf(curve, shown, method, results),
    sha256: curve.file?.sha256 ?? '',
    fileName: curve.file?.name ?? '',
    rows: curve.rows,
  };
}

/** The first point that each reduced result rests on, in the channels that are drawn. */
function marksOf(
  curve: BatchFound['curves'][number],
  shown: readonly string[],
  method: Method,
  results: readonly ResultEntity[],
): CurveView['marks'] {
  const [x, y] = shown;
  if (x === undefined || y === undefined) return [];
  return results
    .filter((result) => result.specimenId === curve.specimenId && result.origin === 'reduced')
    .flatMap(({ key, basis }) => {
      return (basis.at ?? []).slice(0, 1).flatMap((point) => {
        const [atX, atY] = [point[x], point[y]];
        if (typeof atX !== 'number' || typeof atY !== 'number') return [];
        return [
          {
            key,
            label: resultWords(key, method.testType).label,
            x: atX * CHANNELS[x]!.factor,
            y: atY * CHANNELS[y]!.factor,
          },
        ];
      });
    });
}
