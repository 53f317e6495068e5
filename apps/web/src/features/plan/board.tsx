import { clsx } from 'clsx';
import { memo, useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { KeyboardEvent, PointerEvent } from 'react';
import type { BookingView, FitView, LaneView, PlanView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { HOUR_MS, SNAP_MS, ZOOMS, closedOf, daysOf, scaleOf, snap } from './board-scale.js';
import type { BoardScale, Zoom } from './board-scale.js';
import { BookingBox, describe } from './booking-box.js';
import { ui } from '../../ui/styles.js';
import styles from './board.module.css';
import type { Moments } from '../../ui/moments.js';

/** A job while it is held over the board. */
export interface Held {
  booking: BookingView;
  lane: number;
  startMs: number;
  by: 'pointer' | 'keys';
}

interface Props {
  plan: PlanView;
  chosen: string | null;
  onChoose: (booking: BookingView) => void;
  /** Asks whether the job would fit at that start, lane by lane. Absent: nothing can be moved. */
  askFit?: (jobId: string, startsAt: string) => Promise<FitView[]>;
  onMove?: (booking: BookingView, frameId: string, startsAt: string) => void;
}

const MOVABLE = ['waiting', 'ready', null];
const ASK_MS = 180;
const DRAG_PX = 5;

/** Columns that stay at the left and the right of the time, px; `board.css` has the same. */
const HEAD_PX = 152;
const LOAD_PX = 116;

/** The plan as lanes over time, one a frame. A job is moved by dragging it, or by keys: Space takes it up, arrows move it, Enter sets it down. */
export function Board({ plan, chosen, onChoose, askFit, onMove }: Props) {
  const moments = useMoments();
  const { moment } = moments;
  const [zoom, setZoom] = useState<Zoom>(ZOOMS[1]);
  const scale = useMemo(() => scaleOf(plan, zoom, moments), [plan, zoom, moments]);
  const [held, setHeld] = useState<Held | null>(null);
  const fits = useFits(held, askFit);
  const scroller = useRef<HTMLDivElement>(null);
  const [focused, setFocused] = useState<string | null>(null);
  const now = useNow();

  // A new zoom shows the present; a new plan leaves the board where it is.
  const scrolledFor = useRef<Zoom | null>(null);
  useEffect(() => {
    if (scrolledFor.current === zoom) return;
    scrolledFor.current = zoom;
    scroller.current?.scrollTo({ left: Math.max(0, scale.x(Date.now()) - 120) });
  }, [zoom, scale]);

  // What is moved by keys stays in sight.
  useEffect(() => {
    const box = scroller.current;
    if (!box || held?.by !== 'keys') return;
    const left = scale.x(held.startMs);
    const right = left + scale.x(held.booking.endsAt) - scale.x(held.booking.startsAt);
    const room = box.clientWidth - HEAD_PX - LOAD_PX;
    if (left < box.scrollLeft || right - left > room) box.scrollTo({ left });
    else if (right > box.scrollLeft + room) box.scrollTo({ left: right - room });
  }, [held, scale]);

  const setDown = useCallback(() => {
    if (!held) return;
    const lane = plan.lanes[held.lane];
    const fit = lane && fits?.get(lane.frame.id);
    if (lane && onMove && fit?.fits !== false)
      onMove(held.booking, lane.frame.id, new Date(held.startMs).toISOString());
    if (fit?.fits === false && held.by === 'keys') return;
    setHeld(null);
  }, [held, fits, plan, onMove]);

  const drag = useDrag({ scale, plan, held, setHeld, setDown, enabled: !!onMove });
  const keys = useBoardKeys({ plan, held, setHeld, setDown, focused, setFocused, enabled: !!onMove, onChoose });
  const tabStop = focused ?? plan.lanes.flatMap(({ bookings }) => bookings)[0]?.id ?? null;

  return (
    <div>
      <div className={clsx(ui.rowBetween, styles.boardTools, ui.noPrint)}>
        <div className={ui.tabs} role="tablist" aria-label="Time shown">
          {ZOOMS.map((each) => (
            <button key={each.key} type="button" role="tab" aria-selected={each === zoom} onClick={() => setZoom(each)}>
              {each.label}
            </button>
          ))}
        </div>
        <Legend />
      </div>
      <div
        className={clsx(styles.board, ui.mm)}
        ref={scroller}
        onKeyDown={keys}
        role="application"
        aria-label="Frame lanes. Arrow keys go from job to job, Enter opens one, Space takes it up to move it."
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
      {held && (
        <p className={styles.heldLine}>
          <strong className={ui.fig}>{held.booking.jobReference}</strong> held over{' '}
          <strong>{plan.lanes[held.lane]?.frame.tag}</strong> at {moment(held.startMs)}.{' '}
          {fitSentence(plan.lanes[held.lane], fits)}{' '}
          {held.by === 'keys' &&
            (fits?.get(plan.lanes[held.lane]?.frame.id ?? '')?.fits === false
              ? 'Arrows move it on, Escape puts it back.'
              : 'Enter sets it down, Escape puts it back.')}
        </p>
      )}
    </div>
  );
}

function fitSentence(lane: LaneView | undefined, fits: Map<string, FitView> | null): string {
  const fit = lane && fits?.get(lane.frame.id);
  if (!fit) return 'Asking whether it fits …';
  return fit.fits ? 'It fits.' : `Does not fit: ${fit.reasons.join(' ')}`;
}

function heldSentence(held: Held, plan: PlanView, fits: Map<string, FitView> | null, { moment }: Moments): string {
  const lane = plan.lanes[held.lane];
  return `${held.booking.jobReference ?? ''} over ${lane?.frame.tag ?? ''}, ${moment(held.startMs)}. ${fitSentence(lane, fits)}`;
}

function useNow(): number {
  const [now, setNow] = useState(Date.now());
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 30_000);
    return () => clearInterval(timer);
  }, []);
  return now;
}

function useFits(held: Held | null, askFit: Props['askFit']): Map<string, FitView> | null {
  const [fits, setFits] = useState<Map<string, FitView> | null>(null);
  const jobId = held?.booking.jobId ?? null;
  const startMs = held?.startMs ?? 0;
  useEffect(() => {
    setFits(null);
    if (!jobId || !askFit) return;
    let over = false;
    const timer = setTimeout(() => {
      askFit(jobId, new Date(startMs).toISOString())
        .then((answers) => !over && setFits(new Map(answers.map((fit) => [fit.frameId, fit]))))
        .catch(() => undefined);
    }, ASK_MS);
    return () => {
      over = true;
      clearTimeout(timer);
    };
  }, [jobId, startMs, askFit]);
  return fits;
}

interface DragSetting {
  scale: BoardScale;
  plan: PlanView;
  held: Held | null;
  setHeld: (held: Held | null) => void;
  setDown: () => void;
  enabled: boolean;
}

function useDrag({ scale, plan, held, setHeld, setDown, enabled }: DragSetting) {
  const grab = useRef<{ booking: BookingView; x: number; y: number; lane: number; startMs: number } | null>(null);
  return {
    down: useCallback(
      (event: PointerEvent, booking: BookingView, lane: number) => {
        if (!enabled || event.button !== 0 || !isMovable(booking)) return;
        grab.current = { booking, x: event.clientX, y: event.clientY, lane, startMs: Date.parse(booking.startsAt) };
      },
      [enabled],
    ),
    move: (event: PointerEvent) => {
      const from = grab.current;
      if (!from) return;
      if (!held && Math.hypot(event.clientX - from.x, event.clientY - from.y) < DRAG_PX) return;
      if (!held) event.currentTarget.setPointerCapture(event.pointerId);
      const moved = scale.msAt(scale.x(from.startMs) + event.clientX - from.x);
      setHeld({
        booking: from.booking,
        lane: laneAt(event, plan) ?? held?.lane ?? from.lane,
        startMs: snap(moved),
        by: 'pointer',
      });
    },
    up: () => {
      grab.current = null;
      if (held?.by === 'pointer') setDown();
    },
  };
}

function laneAt(event: PointerEvent, plan: PlanView): number | null {
  const under = document
    .elementsFromPoint(event.clientX, event.clientY)
    .find((element) => element instanceof HTMLElement && element.dataset['lane'] !== undefined);
  const index = under instanceof HTMLElement ? Number(under.dataset['lane']) : NaN;
  return index >= 0 && index < plan.lanes.length ? index : null;
}

export function isMovable(booking: BookingView): boolean {
  return booking.kind === 'job' && MOVABLE.includes(booking.state);
}

interface KeySetting {
  plan: PlanView;
  held: Held | null;
  setHeld: (held: Held | null) => void;
  setDown: () => void;
  focused: string | null;
  setFocused: (id: string) => void;
  enabled: boolean;
  onChoose: (booking: BookingView) => void;
}

function useBoardKeys({ plan, held, setHeld, setDown, focused, enabled, onChoose }: KeySetting) {
  return (event: KeyboardEvent<HTMLElement>) => {
    const place = findBooking(plan, focused);
    if (!place) return;
    const act = held
      ? heldKey(event, held, plan, setHeld, setDown)
      : freeKey(event, place, plan, { enabled, onChoose, setHeld });
    if (act) event.preventDefault();
  };
}

interface Place {
  lane: number;
  index: number;
  booking: BookingView;
}

function findBooking(plan: PlanView, id: string | null): Place | null {
  for (const [lane, { bookings }] of plan.lanes.entries()) {
    const index = bookings.findIndex((booking) => booking.id === id);
    const booking = bookings[index];
    if (booking) return { lane, index, booking };
  }
  return null;
}

function heldKey(
  event: KeyboardEvent,
  held: Held,
  plan: PlanView,
  setHeld: (held: Held | null) => void,
  setDown: () => void,
): boolean {
  const step = event.shiftKey ? 4 * HOUR_MS : SNAP_MS;
  const shift = (minutesMs: number, lanes: number) =>
    setHeld({
      ...held,
      startMs: snap(held.startMs + minutesMs),
      lane: Math.min(plan.lanes.length - 1, Math.max(0, held.lane + lanes)),
    });
  if (event.key === 'ArrowLeft') shift(-step, 0);
  else if (event.key === 'ArrowRight') shift(step, 0);
  else if (event.key === 'ArrowUp') shift(0, -1);
  else if (event.key === 'ArrowDown') shift(0, 1);
  else if (event.key === 'Enter' || event.key === ' ') setDown();
  else if (event.key === 'Escape') setHeld(null);
  else return false;
  return true;
}

interface FreeActs {
  enabled: boolean;
  onChoose: (booking: BookingView) => void;
  setHeld: (held: Held | null) => void;
}

function freeKey(
  event: KeyboardEvent,
  place: Place,
  plan: PlanView,
  { enabled, onChoose, setHeld }: FreeActs,
): boolean {
  const { lane, index, booking } = place;
  const go = (to: BookingView | undefined) => to && document.getElementById(`booking-${to.id}`)?.focus();
  if (event.key === 'ArrowLeft') go(plan.lanes[lane]?.bookings[index - 1]);
  else if (event.key === 'ArrowRight') go(plan.lanes[lane]?.bookings[index + 1]);
  else if (event.key === 'ArrowUp') go(nearest(plan, lane, -1, booking));
  else if (event.key === 'ArrowDown') go(nearest(plan, lane, 1, booking));
  else if (event.key === 'Enter') onChoose(booking);
  else if (event.key === ' ') {
    if (enabled && isMovable(booking)) setHeld({ booking, lane, startMs: Date.parse(booking.startsAt), by: 'keys' });
  } else return false;
  return true;
}

function nearest(plan: PlanView, from: number, step: number, to: BookingView): BookingView | undefined {
  for (let lane = from + step; lane >= 0 && lane < plan.lanes.length; lane += step) {
    const found = [...(plan.lanes[lane]?.bookings ?? [])].sort(
      (a, b) =>
        Math.abs(Date.parse(a.startsAt) - Date.parse(to.startsAt)) -
        Math.abs(Date.parse(b.startsAt) - Date.parse(to.startsAt)),
    )[0];
    if (found) return found;
  }
  return undefined;
}

function TimeAxis({
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
            Array.from({ length: 24 / every - 1 }, (_, index) => midnight + (index + 1) * every * HOUR_MS).map((at) => (
              <span key={at} className={styles.hour} style={{ left: scale.x(at) }}>
                {clock(at)}
              </span>
            )),
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

const Lane = memo(function Lane(props: LaneProps) {
  const moments = useMoments();
  const { moment } = moments;
  const { lane, index, scale, now, freezeUntil, fit, held } = props;
  const capacity = lane.frame.capacityN ? `${lane.frame.capacityN / 1000} kN` : `${lane.frame.torqueNm ?? 0} N·m`;
  return (
    <div className={clsx(styles.laneRow, fit && !fit.fits && styles.unfit)} data-lane={index}>
      <div className={styles.laneHead}>
        <strong className={ui.fig}>{lane.frame.tag}</strong>
        {fit === undefined ? (
          <span className={clsx(ui.small, ui.soft)}>
            {capacity}
            {lane.frame.state !== 'in-service' && <span className={ui.act}> {lane.frame.state.replace('-', ' ')}</span>}
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
      <div className={styles.laneBody} style={{ width: scale.width }} data-lane={index}>
        {closedOf(lane, scale).map(({ from, to }) => (
          <span
            key={from}
            className={styles.closed}
            style={{ left: scale.x(from), width: scale.x(to) - scale.x(from) }}
          />
        ))}
        {lane.down.map((window) => (
          <span
            key={window.id}
            className={clsx(styles.window, styles[window.kind])}
            style={{
              left: scale.x(window.startsAt),
              width: Math.max(4, scale.x(window.endsAt) - scale.x(window.startsAt)),
            }}
            title={`${window.why}, until ${moment(window.endsAt)}`}
          >
            <span>{window.kind === 'calibration-visit' ? 'calibration' : window.why}</span>
          </span>
        ))}
        {lane.bookings.map((booking) => (
          <BookingBox
            key={booking.id}
            booking={booking}
            scale={scale}
            lane={index}
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
        {held && (
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
        )}
      </div>
      <div className={styles.laneLoad}>
        <LoadBars load={lane.load} />
      </div>
    </div>
  );
});

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
