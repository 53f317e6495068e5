import { clsx } from 'clsx';
import type { PointerEvent } from 'react';
import type { BookingView } from '#libs/contract/src/index.js';
import { span } from '../../ui/moments.js';
import { useMoments } from '../../ui/use-moments.js';
import type { BoardScale, ClosedTime } from './board-scale.js';
import { elementId } from './board-stops.js';
import { describe } from './board-words.js';
import board from './board.module.css';
import styles from './booking.module.css';

interface Props {
  booking: BookingView;
  scale: BoardScale;
  lane: number;
  closed: readonly ClosedTime[];
  chosen: boolean;
  tabStop: boolean;
  lifted: boolean;
  onFocus: (id: string) => void;
  onChoose: (booking: BookingView) => void;
  onGrab: (event: PointerEvent, booking: BookingView, lane: number) => void;
}

/** One job on its lane: hatched changeover, then the work; late ones are notched and say by how much. */
export function BookingBox(props: Props) {
  const { booking, scale, lane, chosen, tabStop, lifted, onFocus, onChoose, onGrab } = props;
  const moments = useMoments();
  const { moment } = moments;
  const [setup, start, end] = [scale.x(booking.setupAt), scale.x(booking.startsAt), scale.x(booking.endsAt)];
  const late = booking.lateHours > 0;
  const names = [
    styles.booking,
    booking.state && styles[booking.state],
    late && styles.late,
    chosen && styles.chosen,
    lifted && styles.lifted,
  ];
  return (
    <>
      {start - setup >= 1 && (
        <span
          className={board.changeover}
          style={{ left: setup, width: start - setup }}
          title={`Changeover, ${span(booking.changeoverMin)}`}
        />
      )}
      <button
        id={elementId(booking.id)}
        type="button"
        className={clsx(names)}
        style={{ left: start, width: Math.max(8, end - start) }}
        tabIndex={tabStop ? 0 : -1}
        aria-label={describe(booking, moments)}
        title={describe(booking, moments)}
        onFocus={() => onFocus(booking.id)}
        onClick={() => onChoose(booking)}
        onPointerDown={(event) => onGrab(event, booking, lane)}
      >
        <ClosedParts booking={booking} closed={props.closed} scale={scale} />
        <BoxText booking={booking} width={end - start} />
      </button>
      {chosen && booking.dueAt && (
        <span
          className={clsx(board.dueMark, late && board.late)}
          style={{ left: scale.x(booking.dueAt) }}
          title={`Due ${moment(booking.dueAt)}`}
        />
      )}
    </>
  );
}

/** The hours of a job in which its frame is closed. */
function ClosedParts({ booking, closed, scale }: Pick<Props, 'booking' | 'closed' | 'scale'>) {
  const [startMs, endMs] = [Date.parse(booking.startsAt), Date.parse(booking.endsAt)];
  const left = scale.x(startMs);
  return closed
    .filter(({ from, to }) => from < endMs && startMs < to)
    .map(({ from, to }) => {
      const [begin, end] = [scale.x(Math.max(from, startMs)), scale.x(Math.min(to, endMs))];
      return <span key={from} className={styles.closed} style={{ left: begin - left, width: end - begin }} />;
    });
}

const TINY_PX = 13;
/** A reference such as `J-2031-1` across, with the padding of its box; the point of a late one and the mark of a pin take more. */
const REFERENCE_PX = 72;
const LATE_PX = 18;
const PIN_PX = 14;

/** As much text as there is room for; the whole of it is in the title, and below the board. */
function BoxText({ booking, width }: { booking: BookingView; width: number }) {
  const reference = booking.jobReference ?? 'calibration';
  const late = lateText(booking);
  if (width < TINY_PX) return null;
  if (width < REFERENCE_PX + (late ? LATE_PX : 0) + (booking.pinned ? PIN_PX : 0))
    return (
      <span className={clsx(styles.ref, styles.upright)} aria-hidden="true">
        {reference.replace(/^J-/, '')}
      </span>
    );
  return (
    <>
      <span className={clsx(styles.ref, styles.line)}>
        {booking.pinned && <span aria-hidden="true">◆ </span>}
        {reference}
      </span>{' '}
      <span className={styles.line}>
        {late && <span aria-hidden="true">▲ </span>}
        {late ?? booking.title}
      </span>
    </>
  );
}

function lateText({ lateHours }: BookingView): string | null {
  return lateHours > 0 ? `${span(lateHours * 60)} late` : null;
}
