import { clsx } from 'clsx';
import type { TrainSegment } from '#libs/matching/src/index.js';
import { formatQuantity } from '#libs/units/src/index.js';
import styles from './train.module.css';

export type Fate = 'keep' | 'put-on' | 'take-off';

const HEIGHT = 460;
const TOP = 12;
const AXIS_X = 150;
const LABEL_X = 270;
const LEAST_PX = 5;
const LABEL_GAP = 40;
const WIDEST_PX = 120;

interface Placed {
  segment: TrainSegment;
  y: number;
  height: number;
  width: number;
}

/**
 * The load train from crosshead to base, to scale in length; parts thinner than a few pixels are drawn a little thicker.
 *
 * @param fates by item id, what happens to a link at the changeover: heavy outline goes on, dashed comes off
 */
export function TrainDrawing({
  segments,
  fates = {},
  title = 'Load train',
}: {
  segments: readonly TrainSegment[];
  fates?: Record<string, Fate>;
  title?: string;
}) {
  const stack = place(segments.filter(({ beside }) => !beside));
  const beside = segments.filter(({ beside: isBeside }) => isBeside);
  const specimen = stack.find(({ segment }) => segment.role === 'specimen') ?? stack[Math.floor(stack.length / 2)];
  const total = segments
    .filter(({ beside: isBeside, role }) => !isBeside && role !== 'crosshead' && role !== 'base')
    .reduce((sum, { lengthMm }) => sum + lengthMm, 0);
  const bottom = stack.reduce((low, { y, height }) => Math.max(low, y + height), 0);
  const labels = labelsOf(stack, beside, specimen);
  const spots = spread(labels.map(({ at }) => at));
  const height = Math.max(bottom + TOP, (spots.at(-1) ?? 0) + 30);
  return (
    <svg
      className={styles.train}
      viewBox={`0 0 520 ${height}`}
      role="img"
      aria-label={`${title}: ${segments.map(({ label }) => label).join(', ')}`}
    >
      <path className={styles.centre} d={`M${AXIS_X} 0V${height}`} />
      {stack.map(({ segment, y, height: tall, width }, index) => (
        <path
          key={`${segment.role}-${index}`}
          className={clsx(styles.part, styles[segment.role], styles[fateOf(segment, fates)])}
          d={outline(segment.role, y, tall, width)}
        />
      ))}
      {specimen &&
        beside.map((segment, index) => (
          <Beside
            key={segment.role + String(index)}
            segment={segment}
            around={specimen}
            fate={fateOf(segment, fates)}
          />
        ))}
      <TotalLength from={stack[1]?.y ?? TOP} to={stack.at(-1)?.y ?? bottom} mm={total} />
      {labels.map(({ segment, at, x }, index) => (
        <Label
          key={`${segment.role}-label-${index}`}
          segment={segment}
          fates={fates}
          from={{ x, y: at }}
          y={spots[index] ?? 0}
        />
      ))}
    </svg>
  );
}

/** The parts that are labelled, from the top, each with the point that its label leads to. */
function labelsOf(stack: readonly Placed[], beside: readonly TrainSegment[], specimen: Placed | undefined) {
  return [
    ...stack.map(({ segment, y, height }) => ({ segment, at: y + height / 2, x: AXIS_X })),
    ...beside.map((segment) => ({
      segment,
      at: specimen ? specimen.y + specimen.height / 2 : HEIGHT / 2,
      x: AXIS_X + 30,
    })),
  ].sort((a, b) => a.at - b.at);
}

/** Tag, length, rating and fate of a part, with a line that leads to it. */
function Label({
  segment,
  fates,
  from,
  y,
}: {
  segment: TrainSegment;
  fates: Record<string, Fate>;
  from: { x: number; y: number };
  y: number;
}) {
  return (
    <g>
      <path className={styles.leader} d={`M${from.x + 14} ${from.y}L${LABEL_X - 14} ${y}H${LABEL_X - 4}`} />
      <text x={LABEL_X} y={y - 1} className={styles.tag}>
        {segment.label}
      </text>
      <text x={LABEL_X} y={y + 15} className={styles.rating}>
        {[
          segment.lengthMm > 0 && !segment.beside ? formatQuantity(segment.lengthMm, 'mm', 3) : '',
          segment.ratingText,
          fateText(segment, fates),
        ]
          .filter(Boolean)
          .join(' · ')}
      </text>
    </g>
  );
}

function fateOf({ itemId }: TrainSegment, fates: Record<string, Fate>): string {
  return itemId ? (fates[itemId] ?? '') : '';
}

function fateText(segment: TrainSegment, fates: Record<string, Fate>): string {
  const words: Record<string, string> = { keep: 'stays', 'put-on': 'goes on', 'take-off': 'comes off' };
  return words[fateOf(segment, fates)] ?? '';
}

/** Heights in pixels in proportion to lengths; crosshead and base are drawn with a fixed height. */
function place(stack: readonly TrainSegment[]): Placed[] {
  const isEnd = ({ role }: TrainSegment) => role === 'crosshead' || role === 'base';
  const total = stack.filter((segment) => !isEnd(segment)).reduce((sum, { lengthMm }) => sum + lengthMm, 0) || 1;
  const scale = (HEIGHT - 2 * 22 - 2 * TOP) / total;
  const widest = Math.max(...stack.filter((segment) => !isEnd(segment)).map(({ widthMm }) => widthMm), 1);
  let y = TOP;
  return stack.map((segment) => {
    const height = isEnd(segment) ? 22 : Math.max(LEAST_PX, segment.lengthMm * scale);
    const width = isEnd(segment)
      ? WIDEST_PX + 40
      : Math.max(10, Math.min(WIDEST_PX, segment.widthMm * Math.min(scale, WIDEST_PX / widest)));
    const placed = { segment, y, height, width };
    y += height;
    return placed;
  });
}

/** Moves labels apart where parts are close, in order, as little as needed. */
function spread(wanted: readonly number[]): number[] {
  const spots: number[] = [];
  for (const at of wanted) spots.push(Math.max(at, (spots.at(-1) ?? -LABEL_GAP) + LABEL_GAP, 18));
  return spots;
}

function box(y: number, height: number, width: number): string {
  return `M${AXIS_X - width / 2} ${y}h${width}v${height}h${-width}z`;
}

function outline(role: TrainSegment['role'], y: number, h: number, w: number): string {
  const half = w / 2;
  switch (role) {
    case 'load-cell':
      return `${box(y, h, w)}M${AXIS_X - half} ${y + h * 0.35}h${w * 0.75}M${AXIS_X + half} ${y + h * 0.65}h${-w * 0.75}`;
    case 'upper':
    case 'ends':
      return `M${AXIS_X - half} ${y}h${w}v${h * 0.4}l${-w * 0.22} ${h * 0.6}h${-w * 0.56}l${-w * 0.22} ${-h * 0.6}z`;
    case 'lower':
      return `M${AXIS_X - half} ${y + h}h${w}v${-h * 0.4}l${-w * 0.22} ${-h * 0.6}h${-w * 0.56}l${-w * 0.22} ${h * 0.6}z`;
    case 'specimen': {
      const waist = Math.max(3, half * 0.45);
      return `M${AXIS_X - half} ${y}h${w}v${h * 0.2}q0 ${h * 0.1} ${waist - half} ${h * 0.12}v${h * 0.36}q0 ${h * 0.02} ${half - waist} ${h * 0.12}v${h * 0.2}h${-w}v${-h * 0.2}q0 ${-h * 0.1} ${half - waist} ${-h * 0.12}v${-h * 0.36}q0 ${-h * 0.02} ${waist - half} ${-h * 0.12}z`;
    }
    default:
      return box(y, h, w);
  }
}

function Beside({ segment, around, fate }: { segment: TrainSegment; around: Placed; fate: string }) {
  const middle = around.y + around.height / 2;
  if (segment.role === 'extensometer') {
    const reach = Math.min(around.height * 0.3, 24);
    return (
      <path
        className={clsx(styles.part, styles.beside, styles[fate])}
        d={`M${AXIS_X + 8} ${middle - reach}h30v${reach * 2}h-30`}
      />
    );
  }
  if (segment.role === 'faces' || segment.role === 'thermocouple') return null;
  const height = around.height + 60;
  return (
    <path
      className={clsx(styles.part, styles.around, styles[fate])}
      d={`M${AXIS_X - 68} ${middle - height / 2}h136v${height}h-136z`}
    />
  );
}

function TotalLength({ from, to, mm }: { from: number; to: number; mm: number }) {
  return (
    <g className={styles.dimension}>
      <path d={`M30 ${from}h40M30 ${to}h40M44 ${from}V${to}M40 ${from + 9}l4 -9 4 9M40 ${to - 9}l4 9 4 -9`} />
      <text x="38" y={(from + to) / 2} transform={`rotate(-90 38 ${(from + to) / 2})`} textAnchor="middle">
        {formatQuantity(mm, 'mm', 4)}
      </text>
    </g>
  );
}
