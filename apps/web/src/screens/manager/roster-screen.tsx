import type { Moments } from '../../ui/moments.js';
import { clsx } from 'clsx';
import { useState } from 'react';
import type { RosterShiftView, RosterView } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from './roster.module.css';

const DAYS = 7;

/** Who is on shift when. The planner gives setups and attended work only to people who are there. */
export function RosterScreen() {
  const moments = useMoments();
  const { day, startOfDay } = moments;
  const mayChange = useHasRole('manager');
  const [weeks, setWeeks] = useState(0);
  const monday = mondayOf(Date.now(), weeks, moments);
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
        {(value) => <Week roster={value} days={days} mayChange={mayChange} />}
      </FetchStates>
      {mayChange && (
        <>
          <AddShift monday={monday} />
          <CloseDay />
        </>
      )}
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
  const { clock, day, startOfDay } = moments;
  const toast = useToast();
  const back = useApiMutation(['people', 'plan']);
  const remove = useApiMutation(['people', 'plan']);
  const { shifts } = roster;
  const people = [...new Map(shifts.map(({ person }) => [person.id, person])).values()].sort((a, b) =>
    a.name.localeCompare(b.name),
  );
  if (people.length === 0)
    return <Empty>Nobody is on the roster this week. Without shifts nothing can be planned.</Empty>;
  const takeOff = ({ id, person, startsAt, endsAt }: RosterShiftView) =>
    remove.mutate(api('DELETE /roster/{id}', { id }), {
      onSuccess: () =>
        toast(`${person.name} is off on ${day(startsAt)}.`, () =>
          back.mutate(api('POST /roster', { body: { personId: person.id, startsAt, endsAt } })),
        ),
    });
  return (
    <div className={ui.scrollX}>
      <ErrorMessage error={remove.error ?? back.error} />
      <table className={styles.week}>
        <thead>
          <tr>
            <th>Who</th>
            {days.map((midnight) => (
              <th key={midnight}>
                {day(midnight)}
                {closedName(roster, midnight, moments) && (
                  <span className={ui.small}> closed: {closedName(roster, midnight, moments)}</span>
                )}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {people.map((person) => (
            <tr key={person.id}>
              <th>{person.name}</th>
              {days.map((midnight) => (
                <td key={midnight}>
                  {shifts
                    .filter(
                      (shift) => shift.person.id === person.id && startOfDay(Date.parse(shift.startsAt)) === midnight,
                    )
                    .map((shift) => (
                      <span key={shift.id} className={styles.shift}>
                        {clock(shift.startsAt)}–{clock(shift.endsAt)}
                        {mayChange && (
                          <button
                            type="button"
                            aria-label={`Take ${person.name} off on ${day(shift.startsAt)}`}
                            onClick={() => takeOff(shift)}
                          >
                            ×
                          </button>
                        )}
                      </span>
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

function closedName({ closedDays }: RosterView, midnight: number, { toLocalInput }: Moments): string {
  const here = toLocalInput(midnight).slice(0, 10);
  return closedDays.find((closed) => closed.day === here)?.name ?? '';
}

function AddShift({ monday }: { monday: number }) {
  const { fromLocalInput, toLocalInput } = useMoments();
  const people = useApiQuery('people', api('GET /people'));
  const [personId, setPersonId] = useState('');
  const [from, setFrom] = useState(toLocalInput(monday + 6 * 3_600_000));
  const [to, setTo] = useState(toLocalInput(monday + 14 * 3_600_000));
  const add = useApiMutation(['people', 'plan']);
  const rows = people.value?.rows ?? [];
  const [startsAt, endsAt] = [fromLocalInput(from), fromLocalInput(to)];
  return (
    <form
      className={clsx(ui.filters, ui.framed)}
      style={{ marginTop: '1.5rem' }}
      onSubmit={(event) => {
        event.preventDefault();
        if (startsAt && endsAt) add.mutate(api('POST /roster', { body: { personId, startsAt, endsAt } }));
      }}
    >
      <SelectField
        label="Put on the roster"
        none="Choose …"
        value={personId}
        onChange={setPersonId}
        choices={rows
          .filter(({ roles }) => roles.includes('technician'))
          .map(({ id, name }) => ({ value: id, label: name }))}
      />
      <TextField label="From" type="datetime-local" value={from} onChange={setFrom} />
      <TextField label="Until" type="datetime-local" value={to} onChange={setTo} />
      <button type="submit" className={ui.button} disabled={!personId || !startsAt || !endsAt || add.isPending}>
        Add the shift
      </button>
      <ErrorMessage error={add.error} />
    </form>
  );
}

/** Closes the lab for a whole day; the planner then places nothing on it. */
function CloseDay() {
  const [closed, setClosed] = useState('');
  const [name, setName] = useState('');
  const save = useApiMutation(['people', 'plan'], () => setName(''));
  return (
    <form
      className={clsx(ui.filters, ui.framed)}
      onSubmit={(event) => {
        event.preventDefault();
        save.mutate(api('POST /roster/closed-days', { body: { day: closed, name } }));
      }}
    >
      <TextField label="Close the lab on" type="date" value={closed} onChange={setClosed} />
      <TextField label="Because" value={name} onChange={setName} placeholder="e.g. public holiday" />
      <button type="submit" className={ui.button} disabled={!closed || !name.trim() || save.isPending}>
        Close that day
      </button>
      <ErrorMessage error={save.error} />
    </form>
  );
}
