import { formatNumber } from '#libs/units/src/index.js';
import { BOTTOM, HEIGHT, LEFT, RIGHT, TOP, WIDTH } from './plot-frame.js';
import type { Scale } from './plot-frame.js';
import styles from './curve-plot.module.css';

/** Both axes with their ticks and names. */
export function PlotAxes({ x, y, across, up }: { x: Scale; y: Scale; across: string; up: string }) {
  return (
    <>
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
        {across}
      </text>
      <text x={LEFT} y={TOP - 4} className={styles.name}>
        {up}
      </text>
    </>
  );
}
