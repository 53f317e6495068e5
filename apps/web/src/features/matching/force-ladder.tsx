import { clsx } from 'clsx';
import type { ForceLadder, LadderMark } from '#libs/matching/src/index.js';
import { formatQuantity } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';
import styles from './matching.module.css';

/** Every force that matters on one logarithmic axis: what is asked, and what each link carries. The governing link is named. */
export function LadderDrawing({ ladder }: { ladder: ForceLadder }) {
  const at = axis(ladder);
  const band = ladder.marks.find((mark) => mark.kind === 'band');
  const rows = ladder.marks.filter((mark, index) => mark.kind !== 'band' && index === firstLike(ladder, mark));
  return (
    <figure className={clsx(styles.ladder, ui.mm)} aria-label="Force ladder">
      {band && (
        <div className={clsx(styles.rung, styles.head)}>
          <span className={styles.name}>{band.label}</span>
          <span className={styles.lane}>
            <span
              className={styles.bandMark}
              style={{ left: `${at(band.from)}%`, width: `${Math.max(0.8, at(band.to) - at(band.from))}%` }}
            />
          </span>
          <span className={clsx(ui.fig, styles.value)}>{figures(band, ladder.unit)}</span>
        </div>
      )}
      {rows.map((mark, index) => (
        <Rung key={`${mark.kind}-${mark.label}-${index}`} mark={mark} band={band} at={at} unit={ladder.unit} />
      ))}
      <div className={clsx(styles.rung, styles.axis)} aria-hidden="true">
        <span className={styles.name}>{ladder.unit}, log scale</span>
        <span className={styles.lane}>
          {decades(ladder).map((decade) => (
            <span key={decade} className={styles.decade} style={{ left: `${at(decade)}%` }}>
              {short(decade)}
            </span>
          ))}
        </span>
        <span />
      </div>
      {ladder.governedBy && <figcaption>Governed by {governorOf(ladder)}.</figcaption>}
    </figure>
  );
}

function Rung({
  mark,
  band,
  at,
  unit,
}: {
  mark: LadderMark;
  band: LadderMark | undefined;
  at: (value: number) => number;
  unit: ForceLadder['unit'];
}) {
  const reaches =
    !band || mark.to >= band.to || mark.kind === 'hung-weight' || mark.kind === 'smallest' || mark.kind === 'cell-band';
  const isSpan = mark.to > mark.from && (mark.kind === 'verified' || mark.kind === 'cell-band');
  const left = isSpan ? at(mark.from) : 0;
  const point = mark.kind === 'smallest';
  return (
    <div className={clsx(styles.rung, styles[mark.kind], mark.governs && styles.governs, !reaches && styles.short)}>
      <span className={styles.name}>
        {mark.label}
        {mark.governs && <span className={ui.small}> governs</span>}
        {!reaches && <span className={clsx(ui.small, ui.act)}> too small</span>}
      </span>
      <span className={styles.lane}>
        {band && (
          <span
            className={styles.zone}
            style={{ left: `${at(band.from)}%`, width: `${Math.max(0.8, at(band.to) - at(band.from))}%` }}
          />
        )}
        {point ? (
          <span className={styles.point} style={{ left: `${at(mark.to)}%` }} />
        ) : (
          <span
            className={isSpan ? clsx(styles.reach, styles.span) : styles.reach}
            style={{ left: `${left}%`, width: `${Math.max(0.5, at(mark.to) - left)}%` }}
          />
        )}
      </span>
      <span className={clsx(ui.fig, styles.value)}>{figures(mark, unit)}</span>
    </div>
  );
}

/** Where the first mark stands that says the same; a cell verified alike in two directions is one line. */
function firstLike({ marks }: ForceLadder, mark: LadderMark): number {
  return marks.findIndex(
    ({ kind, label, from, to }) => kind === mark.kind && label === mark.label && from === mark.from && to === mark.to,
  );
}

function figures(mark: LadderMark, unit: ForceLadder['unit']): string {
  const one = (value: number) => load(value, unit);
  const isSpan = mark.kind === 'band' || mark.kind === 'verified' || mark.kind === 'cell-band';
  return isSpan && mark.to > mark.from ? `${one(mark.from)} – ${one(mark.to)}` : one(mark.to);
}

function governorOf(ladder: ForceLadder): string {
  return ladder.marks.find((mark) => mark.governs)?.label ?? ladder.governedBy ?? '';
}

function axis({ min, max }: ForceLadder): (value: number) => number {
  const [from, to] = [Math.log10(Math.max(min, 1e-6)), Math.log10(Math.max(max, min * 10, 1e-5))];
  return (value) => Math.min(100, Math.max(0, ((Math.log10(Math.max(value, 1e-6)) - from) / (to - from)) * 100));
}

function decades({ min, max }: ForceLadder): number[] {
  const found: number[] = [];
  for (let power = Math.ceil(Math.log10(Math.max(min, 1e-6))); 10 ** power <= max * 1.0001; power++)
    found.push(10 ** power);
  return found;
}

function short(value: number): string {
  if (value >= 1e6) return `${value / 1e6}M`;
  if (value >= 1000) return `${value / 1000}k`;
  return String(Number(value.toPrecision(3)));
}

/** A load for people: kN from 1000 N on. */
export function load(value: number, unit: string): string {
  if (unit === 'N') return Math.abs(value) >= 1000 ? formatQuantity(value, 'kN', 3) : formatQuantity(value, 'N', 3);
  return formatQuantity(value, 'N·m', 3);
}
