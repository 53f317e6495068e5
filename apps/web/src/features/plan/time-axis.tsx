import { clsx } from 'clsx';
import { MS_PER_HOUR } from '#libs/calendar/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { daysOf } from './board-scale.js';
import type { BoardScale, Zoom } from './board-scale.js';
import styles from './board.module.css';

/** Days and hours along the head of the board, the present, and until when the published plan is kept. */
export function TimeAxis({
  scale,
  now,
  freezeUntil,
  zoom,
}: {
  scale: BoardScale;
  now: number;
  freezeUntil: string;
  zoom: Zoom;
}) {
  const moments = useMoments();
  const { clock, day, moment } = moments;
  const every = zoom.pxPerHour >= 40 ? 2 : zoom.pxPerHour >= 15 ? 6 : 0;
  return (
    <div className={clsx(styles.laneRow, styles.axis)}>
      <div className={styles.laneHead}>frame</div>
      <div className={styles.laneBody} style={{ width: scale.width }}>
        {daysOf(scale, moments).map((midnight) => (
          <span key={midnight} className={styles.day} style={{ left: scale.x(midnight) }}>
            {day(midnight)}
          </span>
        ))}
        {every > 0 &&
          daysOf(scale, moments).flatMap((midnight) =>
            Array.from({ length: 24 / every - 1 }, (_, index) => midnight + (index + 1) * every * MS_PER_HOUR).map(
              (at) => (
                <span key={at} className={styles.hour} style={{ left: scale.x(at) }}>
                  {clock(at)}
                </span>
              ),
            ),
          )}
        <span className={styles.nowFlag} style={{ left: scale.x(now) }}>
          now {clock(now)}
        </span>
        <span
          className={styles.freezeFlag}
          style={{ left: scale.x(freezeUntil) }}
          title={`Until ${moment(freezeUntil)} the published plan is kept`}
        />
      </div>
      <div className={styles.laneLoad}>load per week</div>
    </div>
  );
}
