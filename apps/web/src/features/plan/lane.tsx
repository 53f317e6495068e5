import { clsx } from 'clsx';
import { memo } from 'react';
import type { PointerEvent } from 'react';
import type { BookingView, FitView, LaneView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { closedOf } from './board-scale.js';
import type { BoardScale } from './board-scale.js';
import { elementId } from './board-stops.js';
import type { DownTime } from './board-stops.js';
import { describe, downWords } from './board-words.js';
import { BookingBox } from './booking-box.js';
import type { Held } from './use-held.js';
import { ui } from '../../ui/styles.js';
import styles from './board.module.css';

interface LaneProps {
  lane: LaneView;
  index: number;
  scale: BoardScale;
  now: number;
  freezeUntil: string;
  chosen: string | null;
  tabStop: string | null;
  onFocus: (id: string) => void;
  onChoose: (booking: BookingView) => void;
  onGrab: (event: PointerEvent, booking: BookingView, lane: number) => void;
  /** undefined: nothing is held; null: not answered yet. */
  fit: FitView | null | undefined;
  held: Held | null;
  liftedId: string | null;
}

/** One frame over time: when it is closed or down, its bookings, and how full its weeks are. */
export const Lane = memo(function Lane(props: LaneProps) {
  const { lane, index, scale, now, freezeUntil, fit, held } = props;
  const closed = closedOf(lane, scale);
  return (
    <div className={clsx(styles.laneRow, fit && !fit.fits && styles.unfit)} data-lane={index}>
      <LaneHead frame={lane.frame} fit={fit} />
      <div className={styles.laneBody} style={{ width: scale.width }} data-lane={index}>
        {closed.map(({ from, to }) => (
          <span
            key={from}
            className={styles.closed}
            style={{ left: scale.x(from), width: scale.x(to) - scale.x(from) }}
          />
        ))}
        {lane.down.map((down) => (
          <DownBox
            key={down.id}
            down={down}
            scale={scale}
            tabStop={down.id === props.tabStop}
            onFocus={props.onFocus}
          />
        ))}
        {lane.bookings.map((booking) => (
          <BookingBox
            key={booking.id}
            booking={booking}
            scale={scale}
            lane={index}
            closed={closed}
            chosen={booking.id === props.chosen}
            tabStop={booking.id === props.tabStop}
            lifted={booking.id === props.liftedId}
            onFocus={props.onFocus}
            onChoose={props.onChoose}
            onGrab={props.onGrab}
          />
        ))}
        <span className={styles.nowLine} style={{ left: scale.x(now) }} />
        <span className={styles.freezeLine} style={{ left: scale.x(freezeUntil) }} />
        {held && <Ghost held={held} fit={fit} scale={scale} />}
      </div>
      <div className={styles.laneLoad}>
        <LoadBars load={lane.load} />
      </div>
    </div>
  );
});

function LaneHead({ frame, fit }: { frame: LaneView['frame']; fit: LaneProps['fit'] }) {
  const capacity = frame.capacityN ? `${frame.capacityN / 1000} kN` : `${frame.torqueNm ?? 0} N·m`;
  return (
    <div className={styles.laneHead}>
      <strong className={ui.fig}>{frame.tag}</strong>
      {fit === undefined ? (
        <span className={clsx(ui.small, ui.soft)}>
          {capacity}
          {frame.state !== 'in-service' && <span className={ui.act}> {frame.state.replace('-', ' ')}</span>}
        </span>
      ) : (
        <span
          className={clsx(ui.small, styles.fitWord, fit ? (fit.fits ? ui.fit : ui.act) : ui.soft)}
          title={fit?.reasons.join(' ')}
        >
          {fit ? (fit.fits ? '✓ fits' : `✕ ${fit.reasons[0] ?? 'does not fit'}`) : '…'}
        </span>
      )}
    </div>
  );
}

interface DownProps extends Pick<LaneProps, 'scale' | 'onFocus'> {
  down: DownTime;
  tabStop: boolean;
}

/** A time in which the frame is down; why is cut where there is no room, and whole below the board. */
function DownBox({ down, scale, tabStop, onFocus }: DownProps) {
  const moments = useMoments();
  const left = scale.x(down.startsAt);
  return (
    <span
      id={elementId(down.id)}
      role="img"
      aria-label={downWords(down, moments)}
      title={downWords(down, moments)}
      tabIndex={tabStop ? 0 : -1}
      onFocus={() => onFocus(down.id)}
      className={clsx(styles.window, styles[down.kind])}
      style={{ left, width: Math.max(4, scale.x(down.endsAt) - left) }}
    >
      <span>{down.kind === 'calibration-visit' ? 'calibration' : down.why}</span>
    </span>
  );
}

/** Where the job that is held would stand. */
function Ghost({ held, fit, scale }: { held: Held; fit: LaneProps['fit']; scale: BoardScale }) {
  const moments = useMoments();
  return (
    <span
      className={clsx(styles.ghost, fit && (fit.fits ? styles.fits : styles.unfit))}
      style={{
        left: scale.x(held.startMs),
        width: scale.x(held.booking.endsAt) - scale.x(held.booking.startsAt),
      }}
      aria-label={describe(held.booking, moments)}
    >
      {held.booking.jobReference}
    </span>
  );
}

const WEEKS_SHOWN = 3;

/** Booked over available hours, one column a week, with the percentage in figures. */
function LoadBars({ load }: { load: LaneView['load'] }) {
  const { day } = useMoments();
  return (
    <span className={styles.loadBars}>
      {load.slice(0, WEEKS_SHOWN).map(({ weekStartsAt, bookedHours, availableHours }) => {
        const share = availableHours > 0 ? bookedHours / availableHours : 0;
        return (
          <span
            key={weekStartsAt}
            title={`Week of ${day(weekStartsAt)}: ${bookedHours.toFixed(0)} of ${availableHours.toFixed(0)} h`}
          >
            <i style={{ height: `${Math.min(100, share * 100)}%` }} className={share > 0.9 ? styles.full : undefined} />
            <b>{Math.round(share * 100)}</b>
          </span>
        );
      })}
    </span>
  );
}
