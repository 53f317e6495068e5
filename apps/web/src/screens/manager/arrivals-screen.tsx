import { clsx } from 'clsx';
import { useState } from 'react';
import type { RequestView } from '#libs/contract/src/index.js';
import { Empty, FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { Tick } from '../../ui/fields/ticks.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiPages, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Specimens that come in: ticked off by label, with their condition and since when they are conditioned. */
export function ArrivalsScreen() {
  const lines = useApiPages('requests', api('GET /requests', { state: 'accepted' }));
  const [text, setText] = useState('');
  const [chosen, setChosen] = useState<string | null>(null);
  const shown = (lines.value ?? []).filter(({ reference, title, team }) =>
    `${reference} ${title} ${team.name}`.toLowerCase().includes(text.trim().toLowerCase()),
  );
  return (
    <>
      <TitleBlock title="Arrivals" />
      <div className={ui.filters}>
        <TextField
          label="Request on the bag"
          type="search"
          value={text}
          onChange={setText}
          placeholder="R-2031"
          autoFocus
        />
      </div>
      <FetchStates
        of={lines}
        what="the accepted requests"
        empty={(value) => value.length === 0 && <Empty>No accepted request waits for specimens.</Empty>}
      >
        {() => (
          <ul>
            {shown.map((line) => (
              <li key={line.id} className={ui.entry}>
                <div className={ui.rowBetween}>
                  <span>
                    <strong className={ui.fig}>{line.reference}</strong> {line.title}{' '}
                    <span className={ui.soft}>{line.team.name}</span>
                    <br />
                    <span className={ui.small}>{line.waitsFor}</span>
                  </span>
                  <button
                    type="button"
                    className={ui.button}
                    aria-expanded={chosen === line.id}
                    onClick={() => setChosen(chosen === line.id ? null : line.id)}
                  >
                    {chosen === line.id ? 'Close' : 'Receive'}
                  </button>
                </div>
                {chosen === line.id && <Receive id={line.id} onDone={() => setChosen(null)} />}
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
    </>
  );
}

function Receive({ id, onDone }: { id: string; onDone: () => void }) {
  const request = useApiQuery('requests', api('GET /requests/{id}', { id }));
  return (
    <FetchStates of={request} what="its specimens">
      {(value) => <ReceiveForm request={value} onDone={onDone} />}
    </FetchStates>
  );
}

function ReceiveForm({ request, onDone }: { request: RequestView; onDone: () => void }) {
  const { fromLocalInput, toLocalInput } = useMoments();
  const toast = useToast();
  const expected = request.batches.flatMap(({ specimens }) => specimens).filter(({ arrivedAt }) => !arrivedAt);
  const [ids, setIds] = useState<string[]>(expected.map(({ id }) => id));
  const [condition, setCondition] = useState('as delivered, no visible damage');
  const [conditioned, setConditioned] = useState(false);
  const [from, setFrom] = useState(toLocalInput(Date.now()));
  const receive = useApiMutation(['requests', 'plan', 'jobs'], () => {
    toast(`${ids.length} specimens of ${request.reference} are in the lab.`);
    onDone();
  });
  if (expected.length === 0) return <p className={ui.soft}>All its specimens are here.</p>;
  return (
    <form
      className={clsx(ui.stack, ui.framed)}
      onSubmit={(event) => {
        event.preventDefault();
        const conditioningFrom = conditioned ? fromLocalInput(from) : null;
        receive.mutate(
          api('POST /requests/{id}/arrivals', {
            id: request.id,
            body: { specimenIds: ids, condition, ...(conditioningFrom ? { conditioningFrom } : {}) },
          }),
        );
      }}
    >
      <div className={ui.row}>
        {expected.map(({ id, label }) => (
          <Tick
            key={id}
            label={<span className={ui.fig}>{label}</span>}
            checked={ids.includes(id)}
            onChange={(on) => setIds(on ? [...ids, id] : ids.filter((other) => other !== id))}
          />
        ))}
      </div>
      <div className={ui.fields}>
        <TextField label="Condition on arrival" whole value={condition} onChange={setCondition} />
        <div className={ui.field}>
          <Tick label="They are being conditioned" checked={conditioned} onChange={setConditioned} />
          {conditioned && <TextField label="Since" type="datetime-local" value={from} onChange={setFrom} />}
        </div>
      </div>
      <ErrorMessage error={receive.error} />
      <div>
        <button type="submit" className={ui.buttonMain} disabled={ids.length === 0 || receive.isPending}>
          Receive {ids.length} of {expected.length}
        </button>
      </div>
    </form>
  );
}
