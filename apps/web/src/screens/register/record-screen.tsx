import { clsx } from 'clsx';
import { useState } from 'react';
import { eventWords } from '#libs/contract/src/index.js';
import type { RecordEventView } from '#libs/contract/src/index.js';
import { useSearch } from '../../ui/use-search.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiPages } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Who did what, when, and why: append-only, chained by hash. */
export function RecordScreen() {
  const [text, setText, subject] = useSearch();
  const [open, setOpen] = useState<string | null>(null);
  const events = useApiPages('record', api('GET /record', { subject }));
  return (
    <>
      <TitleBlock title="Record" />
      <div className={ui.filters}>
        <TextField
          label="About"
          type="search"
          value={text}
          onChange={setText}
          placeholder="R-2031, J-2031-1, LC-5K-1, TR-2026-0042"
        />
      </div>
      <FetchStates
        of={events}
        what="the record"
        empty={(value) => value.length === 0 && <Empty>No event is about that.</Empty>}
      >
        {(value) => (
          <table>
            <thead>
              <tr>
                <th className={ui.num}>No.</th>
                <th>When</th>
                <th>Who</th>
                <th>What</th>
                <th>Why</th>
                <th>Hash</th>
              </tr>
            </thead>
            <tbody>
              {value.map((event) => (
                <EventRow
                  key={event.seq}
                  event={event}
                  open={open === event.seq}
                  onOpen={() => setOpen(open === event.seq ? null : event.seq)}
                />
              ))}
            </tbody>
          </table>
        )}
      </FetchStates>
      {events.more && (
        <button type="button" className={ui.button} onClick={events.more}>
          Older
        </button>
      )}
    </>
  );
}

function EventRow({ event, open, onOpen }: { event: RecordEventView; open: boolean; onOpen: () => void }) {
  const { moment } = useMoments();
  return (
    <tr>
      <td className={ui.num}>{event.seq}</td>
      <td>{moment(event.at)}</td>
      <td>{event.actor?.name ?? 'the system'}</td>
      <td>
        <button type="button" className={clsx(ui.buttonBare, ui.buttonSmall)} aria-expanded={open} onClick={onOpen}>
          {eventWords(event.kind)}
        </button>
        {open && (
          <pre className={ui.small} style={{ whiteSpace: 'pre-wrap', maxWidth: '34rem' }}>
            {event.kind}
            {`\n${event.subjectKind} ${event.subjectId}`}
            {event.before && `\nbefore ${JSON.stringify(event.before, null, 1)}`}
            {event.after && `\nafter ${JSON.stringify(event.after, null, 1)}`}
          </pre>
        )}
      </td>
      <td>{event.why}</td>
      <td className={clsx(ui.fig, ui.small, ui.soft)} title={event.hash}>
        {event.hash.slice(0, 10)}…
      </td>
    </tr>
  );
}
