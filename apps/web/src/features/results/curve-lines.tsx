import type { CurveView } from '#libs/contract/src/index.js';
import { TOP } from './plot-frame.js';
import type { Scale } from './plot-frame.js';
import styles from './curve-plot.module.css';

const LABEL_ROWS = 3;
const DASHES = ['', '7 3', '2 3', '9 3 2 3', '4 2', '12 4'];

interface Drawn {
  curves: readonly CurveView[];
  xKey: string;
  yKey: string;
  x: Scale;
  y: Scale;
}

/** The curves, each with a dash of its own. */
export function CurveLines({ curves, xKey, yKey, x, y }: Drawn) {
  return (
    <>
      {curves.map((curve, index) => (
        <path
          key={curve.id}
          className={styles.curve}
          strokeDasharray={DASHES[index % DASHES.length]}
          d={lineOf(curve, xKey, yKey, x, y)}
        />
      ))}
    </>
  );
}

/** The points of the curves that results rest on. */
export function CurveMarks({ curves, x, y }: Pick<Drawn, 'curves' | 'x' | 'y'>) {
  return (
    <>
      {curves.flatMap((curve) =>
        curve.marks.map((mark) => (
          <g key={`${curve.id}-${mark.key}-${mark.x}`} transform={`translate(${x(mark.x)} ${y(mark.y)})`}>
            <circle r="4" className={styles.mark}>
              <title>
                {curve.specimenLabel}: {mark.label}
              </title>
            </circle>
          </g>
        )),
      )}
    </>
  );
}

/** The specimen of each curve, above its peak. */
export function EndLabels({ curves, xKey, yKey, x, y }: Drawn) {
  return (
    <>
      {curves.map((curve, index) => (
        <EndLabel
          row={index % LABEL_ROWS}
          key={curve.id}
          curve={curve}
          xs={curve.points[xKey]}
          ys={curve.points[yKey]}
          x={x}
          y={y}
        />
      ))}
    </>
  );
}

function lineOf(curve: CurveView, xKey: string, yKey: string, x: Scale, y: Scale): string {
  const [xs, ys] = [curve.points[xKey] ?? [], curve.points[yKey] ?? []];
  let path = '';
  for (let i = 0; i < Math.min(xs.length, ys.length); i++)
    path += `${i === 0 ? 'M' : 'L'}${x(xs[i]!).toFixed(1)} ${y(ys[i]!).toFixed(1)}`;
  return path;
}

function EndLabel({
  row,
  curve,
  xs = [],
  ys = [],
  x,
  y,
}: {
  /** Labels of neighbouring curves stand above each other. */
  row: number;
  curve: CurveView;
  xs: number[] | undefined;
  ys: number[] | undefined;
  x: Scale;
  y: Scale;
}) {
  const peak = ys.indexOf(ys.reduce((most, value) => Math.max(most, value), -Infinity));
  if (peak < 0) return null;
  return (
    <text
      x={x(xs[peak] ?? 0)}
      y={Math.max(TOP + 10, y(ys[peak] ?? 0) - 8) - row * 12}
      textAnchor="middle"
      className={styles.curveLabel}
    >
      {curve.specimenLabel.replace(/^.*-/, '')}
    </text>
  );
}
