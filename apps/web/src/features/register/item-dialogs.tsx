import { useState } from 'react';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { ITEM_STATES } from '#libs/matching/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import type { Choice } from '../../ui/fields/select-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import type { BodyOf } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

interface Props {
  item: ItemDetail;
  onClose: () => void;
}

export function FaultDialog({ item, onClose }: Props) {
  const [what, setWhat] = useState('');
  const report = useApiMutation(['items', 'plan', 'jobs'], onClose);
  return (
    <Dialog title={`Fault of ${item.tag}`} onClose={onClose}>
      <p>The item fits no job until the fault is closed; planned jobs that need it are planned anew.</p>
      <TextField label="What is wrong" rows={3} required value={what} onChange={setWhat} />
      <ErrorMessage error={report.error} />
      <button
        type="button"
        className={ui.buttonSharp}
        disabled={!what.trim() || report.isPending}
        onClick={() => report.mutate(api('POST /items/{id}/faults', { id: item.id, body: { what } }))}
      >
        Report it and take {item.tag} out of the plan
      </button>
    </Dialog>
  );
}

export function StateDialog({ item, onClose }: Props) {
  const [state, setState] = useState(item.state);
  const [why, setWhy] = useState('');
  const save = useApiMutation(['items', 'plan'], onClose);
  return (
    <Dialog title={`State of ${item.tag}`} onClose={onClose}>
      <SelectField
        label="State"
        value={state}
        onChange={setState}
        choices={ITEM_STATES.map((value) => ({ value, label: value.replaceAll('-', ' ') }))}
      />
      <TextField label="Why" required value={why} onChange={setWhy} />
      <ErrorMessage error={save.error} />
      <button
        type="button"
        className={ui.buttonMain}
        disabled={!why.trim() || save.isPending}
        onClick={() => save.mutate(api('POST /items/{id}/state', { id: item.id, body: { state, why } }))}
      >
        Set the state
      </button>
    </Dialog>
  );
}

type WindowKind = BodyOf<'POST /items/{id}/windows'>['kind'];

const DAY_MS = 86_400_000;

export function WindowDialog({ item, onClose }: Props) {
  const { fromLocalInput, toLocalInput } = useMoments();
  const [kind, setKind] = useState<WindowKind>(item.kind === 'frame' ? 'down' : 'held');
  const [from, setFrom] = useState(toLocalInput(Date.now()));
  const [to, setTo] = useState(toLocalInput(Date.now() + DAY_MS));
  const [why, setWhy] = useState('');
  const save = useApiMutation(['items', 'plan'], onClose);
  const kinds: Choice<WindowKind>[] = [
    { value: 'down', label: 'down' },
    { value: 'held', label: 'held elsewhere' },
    { value: 'calibration-visit', label: 'away for calibration' },
    ...(item.kind === 'frame' ? [{ value: 'extra-shift' as const, label: 'open longer' }] : []),
  ];
  return (
    <Dialog title={`Keep ${item.tag} away`} onClose={onClose}>
      <div className={ui.fields}>
        <SelectField label="Kind" value={kind} onChange={setKind} choices={kinds} />
        <TextField label="From" type="datetime-local" value={from} onChange={setFrom} />
        <TextField label="Until" type="datetime-local" value={to} onChange={setTo} />
      </div>
      <TextField label="Why" required value={why} onChange={setWhy} />
      <ErrorMessage error={save.error} />
      <button
        type="button"
        className={ui.buttonMain}
        disabled={!why.trim() || save.isPending}
        onClick={() =>
          save.mutate(
            api('POST /items/{id}/windows', {
              id: item.id,
              body: { kind, startsAt: fromLocalInput(from) ?? '', endsAt: fromLocalInput(to) ?? '', why },
            }),
          )
        }
      >
        Keep it away and plan anew
      </button>
    </Dialog>
  );
}
