import { clsx } from 'clsx';
import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import type { RequestLine, RequestState, RequestView } from '#libs/contract/src/index.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTick, FormTicks } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiPages, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Specimens that come in: ticked off by label, with their condition and since when they are conditioned. */
export function ArrivalsScreen() {
  const lines = useApiPages('requests', api('GET /requests', { state: MAY_ARRIVE }));
  const [text, setText] = useState('');
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
        {() => <Lines lines={shown} />}
      </FetchStates>
      {lines.more && (
        <p style={{ paddingTop: '1rem' }}>
          <button type="button" className={ui.button} onClick={lines.more}>
            Show more
          </button>
        </p>
      )}
    </>
  );
}

const MAY_ARRIVE: readonly RequestState[] = ['accepted', 'in-work'];

/** What is still to come; what is here is folded away. */
function Lines({ lines }: { lines: readonly RequestLine[] }) {
  const awaited = lines.filter(({ specimensMissing }) => specimensMissing > 0);
  const here = lines.filter(({ specimensMissing }) => specimensMissing === 0);
  return (
    <div className={ui.stackWide}>
      {awaited.length > 0 ? (
        <LineList lines={awaited} />
      ) : (
        <Empty>No specimen of these requests is still to come.</Empty>
      )}
      {here.length > 0 && (
        <details>
          <summary>
            {here.length === 1 ? 'One request' : `${here.length} requests`} with all specimens at the lab
          </summary>
          <LineList lines={here} />
        </details>
      )}
    </div>
  );
}

function LineList({ lines }: { lines: readonly RequestLine[] }) {
  const [chosen, setChosen] = useState<string | null>(null);
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.id} className={ui.entry}>
          <div className={ui.rowBetween}>
            <span>
              <strong className={ui.fig}>{line.reference}</strong> {line.title}{' '}
              <span className={ui.soft}>{line.team.name}</span>
              <br />
              <span className={ui.small}>{line.waitsFor}</span>
            </span>
            {line.specimensMissing > 0 && (
              <button
                type="button"
                className={ui.button}
                aria-expanded={chosen === line.id}
                onClick={() => setChosen(chosen === line.id ? null : line.id)}
              >
                {chosen === line.id ? 'Close' : 'Receive'}
              </button>
            )}
          </div>
          {chosen === line.id && <Receive id={line.id} onDone={() => setChosen(null)} />}
        </li>
      ))}
    </ul>
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

interface ArrivalTyped {
  specimenIds: string[];
  condition: string;
  conditioned: boolean;
  since: string;
}

function ReceiveForm({ request, onDone }: { request: RequestView; onDone: () => void }) {
  const { fromLocalInput, nowMs, toLocalInput } = useMoments();
  const toast = useToast();
  const expected = request.batches.flatMap(({ specimens }) => specimens).filter(({ arrivedAt }) => !arrivedAt);
  const [initial] = useState<ArrivalTyped>(() => ({
    specimenIds: expected.map(({ id }) => id),
    condition: 'as delivered, no visible damage',
    conditioned: false,
    since: toLocalInput(nowMs()),
  }));
  const receive = useApiMutation(['requests', 'plan', 'jobs']);
  const form = useLabForm<ArrivalTyped>({
    initial,
    check: ({ specimenIds }) => (specimenIds.length > 0 ? {} : { specimenIds: 'Tick those that have come.' }),
    fieldOf: (path) => path.replace('conditioningFrom', 'since'),
    send: async ({ specimenIds, condition, conditioned, since }) => {
      const conditioningFrom = conditioned ? fromLocalInput(since) : null;
      const body = { specimenIds, condition, ...(conditioningFrom ? { conditioningFrom } : {}) };
      await receive.mutateAsync(api('POST /requests/{id}/arrivals', { id: request.id, body }));
      toast(`${specimenIds.length} specimens of ${request.reference} are in the lab.`);
      onDone();
    },
  });
  const { specimenIds, conditioned } = useWatch({ control: form.control }) as ArrivalTyped;
  if (expected.length === 0) return <p className={ui.soft}>All its specimens are here.</p>;
  return (
    <FormFrame form={form} className={clsx(ui.stack, ui.framed)} label={`Receive ${request.reference}`}>
      <FormTicks
        form={form}
        name="specimenIds"
        label="Specimens"
        choices={expected.map(({ id, label }) => ({ value: id, label }))}
      />
      <div className={ui.fields}>
        <FormText form={form} name="condition" label="Condition on arrival" whole needed="Say how they look." />
        <FormTick form={form} name="conditioned" label="They are being conditioned" />
        {conditioned && (
          <FormText form={form} name="since" label="Since" type="datetime-local" needed="Say since when." />
        )}
      </div>
      <div>
        <SubmitButton form={form}>
          Receive {specimenIds.length} of {expected.length}
        </SubmitButton>
      </div>
    </FormFrame>
  );
}
