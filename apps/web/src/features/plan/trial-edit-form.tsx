import type { Moments } from '../../ui/moments.js';
import { clsx } from 'clsx';
import { useState } from 'react';
import type { BookingView, TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { useApiQuery } from '../../api-client/queries.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';

type Kind = TrialEdit['kind'];

const KINDS: { value: Kind; label: string }[] = [
  { value: 'frame-down', label: 'Take a frame down' },
  { value: 'extra-shift', label: 'Open a frame longer' },
  { value: 'extra-item', label: 'One more item like …' },
  { value: 'technician-off', label: 'A technician is away' },
  { value: 'hold', label: 'Hold the chosen job' },
  { value: 'weight', label: 'Weigh the chosen job' },
];

const DAY_MS = 86_400_000;

/** Adds one change to a trial plan; a job is chosen on the lanes. */
export function TrialEditForm({
  trial,
  chosen,
  onAdd,
  busy,
}: {
  trial: TrialView;
  chosen: BookingView | null;
  onAdd: (edit: TrialEdit) => void;
  busy: boolean;
}) {
  const moments = useMoments();
  const { toLocalInput } = moments;
  const [kind, setKind] = useState<Kind>('frame-down');
  const [subject, setSubject] = useState('');
  const [person, setPerson] = useState('');
  const [from, setFrom] = useState(toLocalInput(Date.now()));
  const [to, setTo] = useState(toLocalInput(Date.now() + 2 * DAY_MS));
  const [text, setText] = useState('');
  const people = useApiQuery('people', kind === 'technician-off' || kind === 'extra-shift' ? api('GET /people') : null);
  const items = useApiQuery('items', kind === 'extra-item' ? api('GET /items') : null);
  const frames = (trial.plan?.lanes ?? []).map(({ frame }) => ({
    value: frame.id,
    label: `${frame.tag} ${frame.name}`,
  }));
  const technicians = (people.value?.rows ?? [])
    .filter(({ roles }) => roles.includes('technician'))
    .map(({ id, name }) => ({ value: id, label: name }));
  const needsFrame = kind === 'frame-down' || kind === 'extra-shift';
  const needsTime = needsFrame || kind === 'technician-off';
  const edit = editOf({ kind, subject, person, from, to, text, jobId: chosen?.jobId ?? null }, moments);
  return (
    <form
      className={clsx(ui.filters, ui.framed)}
      onSubmit={(event) => {
        event.preventDefault();
        if (edit) onAdd(edit);
      }}
    >
      <SelectField
        label="Try"
        value={kind}
        onChange={(value) => {
          setKind(value);
          setSubject('');
        }}
        choices={KINDS}
      />
      {needsFrame && (
        <SelectField label="Frame" none="Choose …" value={subject} onChange={setSubject} choices={frames} />
      )}
      {(kind === 'technician-off' || kind === 'extra-shift') && (
        <SelectField label="Technician" none="Choose …" value={person} onChange={setPerson} choices={technicians} />
      )}
      {kind === 'extra-item' && (
        <SelectField
          label="Like"
          none="Choose …"
          value={subject}
          onChange={setSubject}
          choices={(items.value?.rows ?? [])
            .filter((item) => item.kind !== 'frame')
            .map(({ id, tag, name }) => ({ value: id, label: `${tag} ${name}` }))}
        />
      )}
      {needsTime && (
        <>
          <TextField label="From" type="datetime-local" value={from} onChange={setFrom} />
          <TextField label="Until" type="datetime-local" value={to} onChange={setTo} />
        </>
      )}
      {(kind === 'hold' || kind === 'weight') && (
        <span className={ui.soft}>{chosen ? chosen.jobReference : 'Choose a job on the lanes.'}</span>
      )}
      {(kind === 'hold' || kind === 'frame-down') && <TextField label="Why" value={text} onChange={setText} />}
      {kind === 'weight' && <TextField label="Weight" type="number" value={text} onChange={setText} />}
      <button type="submit" className={ui.button} disabled={!edit || busy}>
        Try it
      </button>
    </form>
  );
}

interface Typed {
  kind: Kind;
  subject: string;
  person: string;
  from: string;
  to: string;
  text: string;
  jobId: string | null;
}

/** The change as typed; null while something is missing. */
function editOf(
  { kind, subject, person, from, to, text, jobId }: Typed,
  { fromLocalInput }: Moments,
): TrialEdit | null {
  const [startsAt, endsAt] = [fromLocalInput(from), fromLocalInput(to)];
  const times = startsAt && endsAt ? { startsAt, endsAt } : null;
  switch (kind) {
    case 'frame-down':
      return subject && times && text.trim() ? { kind, frameId: subject, ...times, why: text } : null;
    case 'extra-shift':
      return subject && person && times ? { kind, frameId: subject, personId: person, ...times } : null;
    case 'technician-off':
      return person && times ? { kind, personId: person, ...times } : null;
    case 'extra-item':
      return subject ? { kind, likeItemId: subject } : null;
    case 'hold':
      return jobId && text.trim() ? { kind, jobId, why: text } : null;
    case 'weight':
      return jobId && Number(text) > 0 ? { kind, jobId, weight: Number(text) } : null;
    default:
      return null;
  }
}
