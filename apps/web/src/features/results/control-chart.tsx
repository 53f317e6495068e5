import { clsx } from 'clsx';
import { scaleLinear, scalePoint } from 'd3-scale';
import type { HistoryView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import styles from './control-chart.module.css';

const WIDTH = 960;
const HEIGHT = 320;
const LEFT = 70;
const RIGHT = 160;

type Scale = ReturnType<typeof scaleLinear<number>>;

/** Means in the order of testing with centre line and limits (individuals chart); points out of the ordinary are filled and named below. */
export function ControlChart({ history }: { history: HistoryView }) {
  const { day } = useMoments();
  const { points, chart, unit, label } = history;
  const values = [...points.map(({ mean }) => mean), ...(chart ? [chart.upper, chart.lower] : [])];
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const pad = (high - low || Math.abs(high) || 1) * 0.12;
  const y = scaleLinear()
    .domain([low - pad, high + pad])
    .range([HEIGHT - 40, 16]);
  const x = scalePoint<number>()
    .domain(points.map((_, index) => index))
    .range([LEFT + 16, WIDTH - RIGHT - 16]);
  const signals = new Set(chart?.signals.map(({ index }) => index));
  const at = (index: number) => x(index) ?? LEFT;
  return (
    <figure className={clsx(styles.controlChart, ui.mm, ui.framed)}>
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={`${label} over ${points.length} batches, ${signals.size} of them out of the ordinary`}
      >
        <path d={`M${LEFT} 16V${HEIGHT - 40}H${WIDTH - RIGHT}`} />
        {y.ticks(5).map((tick) => (
          <g key={tick}>
            <path d={`M${LEFT} ${y(tick)}h-5`} />
            <text x={LEFT - 9} y={y(tick) + 4} textAnchor="end">
              {formatNumber(tick)}
            </text>
          </g>
        ))}
        {chart && <Limits chart={chart} y={y} />}
        <path d={points.map(({ mean }, index) => `${index === 0 ? 'M' : 'L'}${at(index)} ${y(mean)}`).join('')} />
        {points.map((point, index) => (
          <circle
            key={point.jobReference + point.at}
            className={signals.has(index) ? styles.signal : undefined}
            cx={at(index)}
            cy={y(point.mean)}
            r={signals.has(index) ? 6 : 4}
          >
            <title>
              {point.jobReference}, {day(point.at)}: {formatNumber(point.mean, 4)} {unit}, {point.cellTag ?? 'no cell'}
            </title>
          </circle>
        ))}
        <text x={LEFT} y={HEIGHT - 18}>
          {points[0] && day(points[0].at)}
        </text>
        <text x={WIDTH - RIGHT} y={HEIGHT - 18} textAnchor="end">
          {points.at(-1) && day(points.at(-1)!.at)}
        </text>
        <text x={LEFT} y="11">
          {label}, {unit}
        </text>
      </svg>
    </figure>
  );
}

function Limits({ chart, y }: { chart: NonNullable<HistoryView['chart']>; y: Scale }) {
  return (
    <>
      {(
        [
          ['upper limit', chart.upper, 'limit'],
          ['centre', chart.centre, 'centre'],
          ['lower limit', chart.lower, 'limit'],
        ] as const
      ).map(([name, value, kind]) => (
        <g key={name}>
          <path className={styles[kind]} d={`M${LEFT} ${y(value)}H${WIDTH - RIGHT}`} />
          <text x={WIDTH - RIGHT + 6} y={y(value) + 4}>
            {name} {formatNumber(value, 4)}
          </text>
        </g>
      ))}
    </>
  );
}
