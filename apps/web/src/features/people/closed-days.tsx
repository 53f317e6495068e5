import { useState } from 'react';
import type { ClosedDay } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';

const NOON = 12;

/** The days on which the lab is closed: nothing is planned on them, whoever is on the roster. */
export function ClosedDays({ closedDays, mayChange }: { closedDays: readonly ClosedDay[]; mayChange: boolean }) {
  const { nowMs, toLocalInput } = useMoments();
  const today = toLocalInput(nowMs()).slice(0, 10);
  const coming = closedDays.filter(({ day }) => day >= today).sort((a, b) => a.day.localeCompare(b.day));
  return (
    <section className={ui.stack} aria-label="Closed days">
      <h2>Closed days</h2>
      {coming.length === 0 ? (
        <p className={ui.soft}>No day to come is closed.</p>
      ) : (
        <ul>
          {coming.map((closed) => (
            <ClosedDayLine key={closed.day} closed={closed} mayChange={mayChange} />
          ))}
        </ul>
      )}
      {mayChange && <CloseDayForm />}
    </section>
  );
}

function ClosedDayLine({ closed, mayChange }: { closed: ClosedDay; mayChange: boolean }) {
  const name = useDayName();
  const toast = useToast();
  const reopen = useApiMutation(['people', 'plan'], () => toast(`The lab is open on ${name(closed.day)}.`));
  return (
    <li className={ui.ruled}>
      <div className={ui.rowBetween}>
        <span>
          <strong>{name(closed.day)}</strong> {closed.name}
        </span>
        {mayChange && (
          <button
            type="button"
            className={ui.buttonSmall}
            aria-label={`Open again: ${name(closed.day)}`}
            disabled={reopen.isPending}
            onClick={() => reopen.mutate(api('DELETE /roster/closed-days/{day}', { day: closed.day }))}
          >
            Open again
          </button>
        )}
      </div>
      <ErrorMessage error={reopen.error} />
    </li>
  );
}

/** Asks before it closes a day: what is planned on it has to move. */
function CloseDayForm() {
  const [asked, setAsked] = useState<ClosedDay | null>(null);
  const form = useLabForm<ClosedDay>({ initial: { day: '', name: '' }, send: setAsked });
  const close = () => {
    form.hook.reset({ day: '', name: '' });
    setAsked(null);
  };
  return (
    <>
      <FormFrame form={form} className={ui.filters} label="Close a day">
        <FormText form={form} name="day" label="Close the lab on" type="date" needed="Choose the day." />
        <FormText form={form} name="name" label="Because" needed="Say why." placeholder="e.g. public holiday" />
        <SubmitButton form={form} className={ui.button}>
          Close that day …
        </SubmitButton>
      </FormFrame>
      {asked && <CloseDayDialog closed={asked} onDone={close} onClose={() => setAsked(null)} />}
    </>
  );
}

function CloseDayDialog(props: { closed: ClosedDay; onDone: () => void; onClose: () => void }) {
  const { closed, onDone, onClose } = props;
  const name = useDayName();
  const save = useApiMutation(['people', 'plan'], onDone);
  return (
    <Dialog title={`Close the lab on ${name(closed.day)}?`} onClose={onClose}>
      <p>
        Nothing is planned on that day any more; jobs that are on it get another time, and shifts on it do not count. It
        can be opened again.
      </p>
      <ErrorMessage error={save.error} />
      <div>
        <button
          type="button"
          className={ui.buttonSharp}
          disabled={save.isPending}
          onClick={() => save.mutate(api('POST /roster/closed-days', { body: closed }))}
        >
          Close it
        </button>
      </div>
    </Dialog>
  );
}

/** A day of the calendar as people read it. */
function useDayName(): (day: string) => string {
  const { day: shown, fromLocalInput } = useMoments();
  return (day) => shown(fromLocalInput(day, NOON));
}
