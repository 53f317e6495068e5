import { clsx } from 'clsx';
import { useMemo, useRef, useState } from 'react';
import type { PointerEvent } from 'react';
import { scaleLinear } from 'd3-scale';
import type { CurveView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';
import styles from './curve-plot.module.css';

const WIDTH = 640;
const HEIGHT = 400;
const LEFT = 64;
const RIGHT = 44;
const TOP = 40;
const BOTTOM = 44;
const LABEL_ROWS = 3;
const DASHES = ['', '7 3', '2 3', '9 3 2 3', '4 2', '12 4'];

interface Box {
  x: [number, number];
  y: [number, number];
}

/** All curves of a batch on one pair of axes, with the points that results rest on. Drag to zoom in; a double click shows all. */
export function CurvePlot({ curves, title = 'Curves' }: { curves: readonly CurveView[]; title?: string }) {
  const columns = curves[0]?.columns ?? [];
  const first = firstAxes(columns);
  const [xKey, setXKey] = useState(first.x);
  const [yKey, setYKey] = useState(first.y);
  const [zoom, setZoom] = useState<Box | null>(null);
  const whole = useMemo(() => boxOf(curves, xKey, yKey), [curves, xKey, yKey]);
  const box = zoom ?? whole;
  const x = scaleLinear()
    .domain(box.x)
    .range([LEFT, WIDTH - RIGHT]);
  const y = scaleLinear()
    .domain(box.y)
    .range([HEIGHT - BOTTOM, TOP]);
  const drag = useZoom((from, to) =>
    setZoom({
      x: [x.invert(Math.min(from.x, to.x)), x.invert(Math.max(from.x, to.x))],
      y: [y.invert(Math.max(from.y, to.y)), y.invert(Math.min(from.y, to.y))],
    }),
  );
  const name = (key: string) => {
    const column = columns.find((each) => each.key === key);
    return column ? `${column.label}${column.unit ? `, ${column.unit}` : ''}` : key;
  };
  if (columns.length < 2) return null;
  const marksFit = xKey === first.x && yKey === first.y;
  return (
    <figure className={clsx(styles.curvePlot, ui.mm, ui.framed)}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`${title}: ${name(yKey)} over ${name(xKey)}, ${curves.length} specimens`}
        onPointerDown={drag.down}
        onPointerMove={drag.move}
        onPointerUp={drag.up}
        onDoubleClick={() => setZoom(null)}
      >
        <clipPath id="plot-area">
          <path d={`M${LEFT} ${TOP}H${WIDTH - RIGHT}V${HEIGHT - BOTTOM}H${LEFT}z`} />
        </clipPath>
        {x.ticks(6).map((tick) => (
          <g key={tick}>
            <path d={`M${x(tick)} ${HEIGHT - BOTTOM}v6`} className={styles.axis} />
            <text x={x(tick)} y={HEIGHT - BOTTOM + 19} textAnchor="middle">
              {formatNumber(tick)}
            </text>
          </g>
        ))}
        {y.ticks(6).map((tick) => (
          <g key={tick}>
            <path d={`M${LEFT} ${y(tick)}h-6`} className={styles.axis} />
            <text x={LEFT - 9} y={y(tick) + 4} textAnchor="end">
              {formatNumber(tick)}
            </text>
          </g>
        ))}
        <path d={`M${LEFT} ${TOP}V${HEIGHT - BOTTOM}H${WIDTH - RIGHT}`} className={styles.axis} />
        <text x={WIDTH - RIGHT} y={HEIGHT - 6} textAnchor="end" className={styles.name}>
          {name(xKey)}
        </text>
        <text x={LEFT} y={TOP - 4} className={styles.name}>
          {name(yKey)}
        </text>
        <g clipPath="url(#plot-area)">
          {curves.map((curve, index) => (
            <path
              key={curve.id}
              className={styles.curve}
              strokeDasharray={DASHES[index % DASHES.length]}
              d={lineOf(curve, xKey, yKey, x, y)}
            />
          ))}
          {marksFit &&
            curves.flatMap((curve) =>
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
        </g>
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
        {drag.box && <rect {...drag.box} className={styles.rubber} />}
      </svg>
      <figcaption className={clsx(ui.row, ui.noPrint)}>
        <Axis label="Across" value={xKey} columns={columns} onChange={(key) => (setXKey(key), setZoom(null))} />
        <Axis label="Up" value={yKey} columns={columns} onChange={(key) => (setYKey(key), setZoom(null))} />
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

function Axis({
  label,
  value,
  columns,
  onChange,
}: {
  label: string;
  value: string;
  columns: CurveView['columns'];
  onChange: (key: string) => void;
}) {
  return (
    <label className={clsx(ui.row, ui.small)}>
      {label}
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {columns.map((column) => (
          <option key={column.key} value={column.key}>
            {column.label}
          </option>
        ))}
      </select>
    </label>
  );
}

type Scale = ReturnType<typeof scaleLinear<number>>;

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

interface Spot {
  x: number;
  y: number;
}

const LEAST_PX = 8;

function useZoom(onZoom: (from: Spot, to: Spot) => void) {
  const from = useRef<Spot | null>(null);
  const [to, setTo] = useState<Spot | null>(null);
  const spot = (event: PointerEvent<SVGSVGElement>): Spot => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    return { x: ((event.clientX - left) / width) * WIDTH, y: ((event.clientY - top) / height) * HEIGHT };
  };
  const start = from.current;
  return {
    down: (event: PointerEvent<SVGSVGElement>) => {
      from.current = spot(event);
    },
    move: (event: PointerEvent<SVGSVGElement>) => from.current && setTo(spot(event)),
    up: () => {
      if (
        from.current &&
        to &&
        Math.abs(to.x - from.current.x) > LEAST_PX &&
        Math.abs(to.y - from.current.y) > LEAST_PX
      )
        onZoom(from.current, to);
      from.current = null;
      setTo(null);
    },
    box:
      start && to
        ? {
            x: Math.min(start.x, to.x),
            y: Math.min(start.y, to.y),
            width: Math.abs(to.x - start.x),
            height: Math.abs(to.y - start.y),
          }
        : null,
  };
}
