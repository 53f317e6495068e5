import { useState } from 'react';
import type { RosterShiftView, RosterView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { ClosedDays } from '../../features/people/closed-days.js';
import { ShiftForm } from '../../features/people/shift-form.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, ErrorMessage, FetchStates } from '../../ui/fetch-states.js';
import type { Moments } from '../../ui/moments.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';
import styles from './roster.module.css';

const DAYS = 7;

/** Who is on shift when. The planner gives setups and attended work only to people who are there. */
export function RosterScreen() {
  const moments = useMoments();
  const { day, startOfDay } = moments;
  const mayChange = useHasRole('manager');
  const [weeks, setWeeks] = useState(0);
  const monday = mondayOf(moments.nowMs(), weeks, moments);
  const days = Array.from({ length: DAYS }, (_, index) => startOfDay(monday, index));
  const until = startOfDay(monday, DAYS);
  const roster = useApiQuery(
    'people',
    api('GET /roster', { from: new Date(monday).toISOString(), to: new Date(until).toISOString() }),
  );
  return (
    <>
      <TitleBlock title="Roster" cells={[['week of', day(monday)]]}>
        <button type="button" className={ui.button} onClick={() => setWeeks(weeks - 1)}>
          ← Week before
        </button>
        <button type="button" className={ui.button} disabled={weeks === 0} onClick={() => setWeeks(0)}>
          This week
        </button>
        <button type="button" className={ui.button} onClick={() => setWeeks(weeks + 1)}>
          Week after →
        </button>
      </TitleBlock>
      <FetchStates of={roster} what="the roster">
        {(value) => (
          <div className={ui.stackWide}>
            <Week roster={value} days={days} mayChange={mayChange} />
            {mayChange && <ShiftForm key={monday} monday={monday} />}
            <ClosedDays closedDays={value.closedDays} mayChange={mayChange} />
          </div>
        )}
      </FetchStates>
    </>
  );
}

function mondayOf(at: number, weeks: number, { startOfDay }: Moments): number {
  const midnight = startOfDay(at);
  const weekday = (new Date(midnight + 12 * 3_600_000).getUTCDay() + 6) % 7;
  return startOfDay(midnight, weeks * DAYS - weekday);
}

function Week({ roster, days, mayChange }: { roster: RosterView; days: readonly number[]; mayChange: boolean }) {
  const moments = useMoments();
  const { day, startOfDay } = moments;
  const { takeOff, error } = useTakeOff();
  const { shifts } = roster;
  const people = [...new Map(shifts.map(({ person }) => [person.id, person])).values()].sort((a, b) =>
    a.name.localeCompare(b.name),
  );
  if (people.length === 0)
    return <Empty>Nobody is on the roster this week. Without shifts nothing can be planned.</Empty>;
  const closed = days.map((midnight) => closedName(roster, midnight, moments));
  return (
    <div className={ui.scrollX}>
      <ErrorMessage error={error} />
      <table className={styles.week}>
        <thead>
          <tr>
            <th>Who</th>
            {days.map((midnight, at) => (
              <th key={midnight}>
                {day(midnight)}
                {closed[at] && <span className={ui.small}> closed: {closed[at]}</span>}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {people.map((person) => (
            <tr key={person.id}>
              <th>{person.name}</th>
              {days.map((midnight, at) => (
                <td key={midnight}>
                  {shifts
                    .filter(
                      ({ person: { id }, startsAt }) =>
                        id === person.id && startOfDay(Date.parse(startsAt)) === midnight,
                    )
                    .map((shift) => (
                      <Shift
                        key={shift.id}
                        shift={shift}
                        closed={!!closed[at]}
                        onTakeOff={mayChange ? takeOff : null}
                      />
                    ))}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function useTakeOff() {
  const { day } = useMoments();
  const toast = useToast();
  const back = useApiMutation(['people', 'plan']);
  const remove = useApiMutation(['people', 'plan']);
  const takeOff = ({ id, person, startsAt, endsAt }: RosterShiftView) =>
    remove.mutate(api('DELETE /roster/{id}', { id }), {
      onSuccess: () =>
        toast(`${person.name} is off on ${day(startsAt)}.`, () =>
          back.mutate(api('POST /roster', { body: { personId: person.id, startsAt, endsAt } })),
        ),
    });
  return { takeOff, error: remove.error ?? back.error };
}

/** @param closed the lab is closed on that day, so that the shift does not count */
function Shift(props: {
  shift: RosterShiftView;
  closed: boolean;
  onTakeOff: ((shift: RosterShiftView) => void) | null;
}) {
  const { shift, closed, onTakeOff } = props;
  const { clock, day } = useMoments();
  const hours = `${clock(shift.startsAt)}–${clock(shift.endsAt)}`;
  return (
    <span className={styles.shift}>
      {closed ? <s title="The lab is closed">{hours}</s> : hours}
      {onTakeOff && (
        <button
          type="button"
          aria-label={`Take ${shift.person.name} off on ${day(shift.startsAt)}`}
          onClick={() => onTakeOff(shift)}
        >
          ×
        </button>
      )}
    </span>
  );
}

function closedName({ closedDays }: RosterView, midnight: number, { toLocalInput }: Moments): string {
  const here = toLocalInput(midnight).slice(0, 10);
  return closedDays.find((closed) => closed.day === here)?.name ?? '';
}
