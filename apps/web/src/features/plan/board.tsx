import { clsx } from 'clsx';
import { useEffect, useMemo, useRef, useState } from 'react';
import type { RefObject } from 'react';
import type { BookingView, LaneView, PlanView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ZOOMS, scaleOf } from './board-scale.js';
import { stopsOf } from './board-stops.js';
import type { BoardScale, Zoom } from './board-scale.js';
import { Lane } from './lane.js';
import { TimeAxis } from './time-axis.js';
import { useBoardKeys } from './use-board-keys.js';
import { useDrag } from './use-drag.js';
import { LineBelow } from './line-below.js';
import { useHeld } from './use-held.js';
import type { AskFit, Fits, Held } from './use-held.js';
import { ui } from '../../ui/styles.js';
import styles from './board.module.css';
import type { Moments } from '../../ui/moments.js';

interface Props {
  plan: PlanView;
  chosen: string | null;
  onChoose: (booking: BookingView) => void;
  /** Asks whether the job would fit at that start, lane by lane. Absent: nothing can be moved. */
  askFit?: AskFit;
  onMove?: (booking: BookingView, frameId: string, startsAt: string) => void;
}

/** Columns that stay at the left and the right of the time, px; `board.module.css` has the same. */
const HEAD_PX = 152;
const LOAD_PX = 116;

/** The plan as lanes over time, one a frame. A job is moved by dragging it, or by keys: Space takes it up, arrows move it, Enter sets it down. */
export function Board({ plan, chosen, onChoose, askFit, onMove }: Props) {
  const moments = useMoments();
  const [zoom, setZoom] = useState<Zoom>(ZOOMS[1]);
  const scale = useMemo(() => scaleOf(plan, zoom, moments), [plan, zoom, moments]);
  const { held, setHeld, setDown, fits } = useHeld(plan, askFit, onMove);
  const scroller = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState<string | null>(null);
  const now = useNow();
  useShowPresent(scroller, zoom, scale);
  useKeepInSight(scroller, held, scale);
  const drag = useDrag({ scale, plan, held, setHeld, setDown, enabled: !!onMove });
  const keys = useBoardKeys({ plan, held, setHeld, setDown, focused, enabled: !!onMove, onChoose });
  const tabStop = focused ?? plan.lanes.flatMap(stopsOf)[0]?.id ?? null;

  return (
    <div>
      <BoardTools zoom={zoom} onZoom={setZoom} />
      <div
        className={clsx(styles.board, ui.mm)}
        ref={scroller}
        onKeyDown={keys}
        role="application"
        aria-label="Frame lanes. Arrow keys go from box to box, Enter opens a job, Space takes it up to move it."
      >
        <div
          className={styles.boardInner}
          style={{ width: scale.width + HEAD_PX + LOAD_PX }}
          onPointerMove={drag.move}
          onPointerUp={drag.up}
          onPointerCancel={() => setHeld(null)}
        >
          <TimeAxis scale={scale} now={now} freezeUntil={plan.freezeUntil} zoom={zoom} />
          {plan.lanes.map((lane, index) => (
            <Lane
              key={lane.frame.id}
              lane={lane}
              index={index}
              scale={scale}
              now={now}
              freezeUntil={plan.freezeUntil}
              chosen={chosen}
              tabStop={tabStop}
              onFocus={setFocused}
              onChoose={onChoose}
              onGrab={drag.down}
              fit={held ? (fits?.get(lane.frame.id) ?? null) : undefined}
              held={held?.lane === index ? held : null}
              liftedId={held?.booking.id ?? null}
            />
          ))}
        </div>
      </div>
      <p className={ui.unseen} aria-live="assertive">
        {held ? heldSentence(held, plan, fits, moments) : ''}
      </p>
      {held ? <HeldLine held={held} plan={plan} fits={fits} /> : <LineBelow scroller={scroller} plan={plan} />}
    </div>
  );
}

function BoardTools({ zoom, onZoom }: { zoom: Zoom; onZoom: (zoom: Zoom) => void }) {
  return (
    <div className={clsx(ui.rowBetween, styles.boardTools, ui.noPrint)}>
      <div className={ui.tabs} role="tablist" aria-label="Time shown">
        {ZOOMS.map((each) => (
          <button key={each.key} type="button" role="tab" aria-selected={each === zoom} onClick={() => onZoom(each)}>
            {each.label}
          </button>
        ))}
      </div>
      <Legend />
    </div>
  );
}

/** What is held, where, and what the keys do with it; it stands where {@link LineBelow} does. */
function HeldLine({ held, plan, fits }: { held: Held; plan: PlanView; fits: Fits }) {
  const { moment } = useMoments();
  return (
    <p className={styles.lineBelow}>
      <strong className={ui.fig}>{held.booking.jobReference}</strong> held over{' '}
      <strong>{plan.lanes[held.lane]?.frame.tag}</strong> at {moment(held.startMs)}.{' '}
      {fitSentence(plan.lanes[held.lane], fits)}{' '}
      {held.by === 'keys' &&
        (fits?.get(plan.lanes[held.lane]?.frame.id ?? '')?.fits === false
          ? 'Arrows move it on, Escape puts it back.'
          : 'Enter sets it down, Escape puts it back.')}
    </p>
  );
}

function fitSentence(lane: LaneView | undefined, fits: Fits): string {
  const fit = lane && fits?.get(lane.frame.id);
  if (!fit) return 'Asking whether it fits …';
  return fit.fits ? 'It fits.' : `Does not fit: ${fit.reasons.join(' ')}`;
}

function heldSentence(held: Held, plan: PlanView, fits: Fits, { moment }: Moments): string {
  const lane = plan.lanes[held.lane];
  return `${held.booking.jobReference ?? ''} over ${lane?.frame.tag ?? ''}, ${moment(held.startMs)}. ${fitSentence(lane, fits)}`;
}

/** A new zoom shows the present; a new plan leaves the board where it is. */
function useShowPresent(scroller: RefObject<HTMLDivElement | null>, zoom: Zoom, scale: BoardScale) {
  const { nowMs } = useMoments();
  const scrolledFor = useRef<Zoom | null>(null);
  useEffect(() => {
    if (scrolledFor.current === zoom) return;
    scrolledFor.current = zoom;
    scroller.current?.scrollTo({ left: Math.max(0, scale.x(nowMs()) - 120) });
  }, [nowMs, scroller, zoom, scale]);
}

/** What is moved by keys stays in sight. */
function useKeepInSight(scroller: RefObject<HTMLDivElement | null>, held: Held | null, scale: BoardScale) {
  useEffect(() => {
    const box = scroller.current;
    if (!box || held?.by !== 'keys') return;
    const left = scale.x(held.startMs);
    const right = left + scale.x(held.booking.endsAt) - scale.x(held.booking.startsAt);
    const room = box.clientWidth - HEAD_PX - LOAD_PX;
    if (left < box.scrollLeft || right - left > room) box.scrollTo({ left });
    else if (right > box.scrollLeft + room) box.scrollTo({ left: right - room });
  }, [scroller, held, scale]);
}

function useNow(): number {
  const { nowMs } = useMoments();
  const [now, setNow] = useState(nowMs);
  useEffect(() => {
    const timer = setInterval(() => setNow(nowMs()), 30_000);
    return () => clearInterval(timer);
  }, [nowMs]);
  return now;
}

function Legend() {
  return (
    <ul className={styles.legend} aria-label="What the hatching means">
      <li>
        <i className={styles.changeover} /> changeover
      </li>
      <li>
        <i className={clsx(styles.window, styles.down)} /> down
      </li>
      <li>
        <i className={clsx(styles.window, styles.calibrationVisit)} /> calibration
      </li>
      <li>
        <i className={styles.closed} /> closed
      </li>
      <li>
        <i className={styles.freeze} /> kept as published until here
      </li>
    </ul>
  );
}
