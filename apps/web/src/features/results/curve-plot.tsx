import { clsx } from 'clsx';
import { useMemo, useState } from 'react';
import { scaleLinear } from 'd3-scale';
import type { CurveView } from '#libs/contract/src/index.js';
import { ui } from '../../ui/styles.js';
import { AxisChoice } from './axis-choice.js';
import { CurveLines, CurveMarks, EndLabels } from './curve-lines.js';
import { PlotAxes } from './plot-axes.js';
import { BOTTOM, HEIGHT, LEFT, RIGHT, TOP, WIDTH } from './plot-frame.js';
import type { Box, Scale } from './plot-frame.js';
import { useZoom } from './use-zoom.js';
import styles from './curve-plot.module.css';

/** All curves of a batch on one pair of axes, with the points that results rest on. Drag to zoom in; a double click shows all. */
export function CurvePlot({ curves, title = 'Curves' }: { curves: readonly CurveView[]; title?: string }) {
  const columns = curves[0]?.columns ?? [];
  const first = firstAxes(columns);
  const [xKey, setXKey] = useState(first.x);
  const [yKey, setYKey] = useState(first.y);
  const [zoom, setZoom] = useState<Box | null>(null);
  const whole = useMemo(() => boxOf(curves, xKey, yKey), [curves, xKey, yKey]);
  const { x, y } = scalesOf(zoom ?? whole);
  const drag = useZoom((from, to) =>
    setZoom({
      x: [x.invert(Math.min(from.x, to.x)), x.invert(Math.max(from.x, to.x))],
      y: [y.invert(Math.max(from.y, to.y)), y.invert(Math.min(from.y, to.y))],
    }),
  );
  if (columns.length < 2) return null;
  const marksFit = xKey === first.x && yKey === first.y;
  const [across, up] = [nameOf(columns, xKey), nameOf(columns, yKey)];
  const drawn = { curves, xKey, yKey, x, y };
  return (
    <figure className={clsx(styles.curvePlot, ui.mm, ui.framed)}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`${title}: ${up} over ${across}, ${curves.length} specimens`}
        onPointerDown={drag.down}
        onPointerMove={drag.move}
        onPointerUp={drag.up}
        onDoubleClick={() => setZoom(null)}
      >
        <clipPath id="plot-area">
          <path d={`M${LEFT} ${TOP}H${WIDTH - RIGHT}V${HEIGHT - BOTTOM}H${LEFT}z`} />
        </clipPath>
        <PlotAxes x={x} y={y} across={across} up={up} />
        <g clipPath="url(#plot-area)">
          <CurveLines {...drawn} />
          {marksFit && <CurveMarks curves={curves} x={x} y={y} />}
        </g>
        <EndLabels {...drawn} />
        {drag.box && <rect {...drag.box} className={styles.rubber} />}
      </svg>
      <figcaption className={clsx(ui.row, ui.noPrint)}>
        <AxisChoice label="Across" value={xKey} columns={columns} onChange={(key) => (setXKey(key), setZoom(null))} />
        <AxisChoice label="Up" value={yKey} columns={columns} onChange={(key) => (setYKey(key), setZoom(null))} />
        {zoom ? (
          <button type="button" className={clsx(ui.button, ui.buttonSmall)} onClick={() => setZoom(null)}>
            Show all
          </button>
        ) : (
          <span className={clsx(ui.small, ui.soft)}>Drag over a part to see it larger.</span>
        )}
      </figcaption>
    </figure>
  );
}

function scalesOf(box: Box): { x: Scale; y: Scale } {
  return {
    x: scaleLinear()
      .domain(box.x)
      .range([LEFT, WIDTH - RIGHT]),
    y: scaleLinear()
      .domain(box.y)
      .range([HEIGHT - BOTTOM, TOP]),
  };
}

function nameOf(columns: CurveView['columns'], key: string): string {
  const column = columns.find((each) => each.key === key);
  return column ? `${column.label}${column.unit ? `, ${column.unit}` : ''}` : key;
}

function boxOf(curves: readonly CurveView[], xKey: string, yKey: string): Box {
  const range = (key: string): [number, number] => {
    let [low, high] = [0, -Infinity];
    for (const { points } of curves)
      for (const value of points[key] ?? []) [low, high] = [Math.min(low, value), Math.max(high, value)];
    return high > low ? [low, high + (high - low) * 0.06] : [0, 1];
  };
  return { x: range(xKey), y: range(yKey) };
}

/** The axes on which the results rest: strain or travel across, stress or load up. */
function firstAxes(columns: CurveView['columns']): { x: string; y: string } {
  const keyLike = (...patterns: RegExp[]) =>
    patterns.flatMap((pattern) => columns.find(({ key }) => pattern.test(key))?.key ?? [])[0];
  return {
    x: keyLike(/strain/i, /extension/i, /travel|deflection|angle/i) ?? columns[0]?.key ?? '',
    y: keyLike(/stress/i, /load|force|torque/i) ?? columns[1]?.key ?? '',
  };
}
