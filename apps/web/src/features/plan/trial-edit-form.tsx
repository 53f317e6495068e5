import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { clsx } from 'clsx';
import { useState } from 'react';
import { useWatch } from 'react-hook-form';
import type { BookingView, TrialEdit, TrialView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import type { Moments } from '../../ui/moments.js';
import { useMoments } from '../../ui/use-moments.js';
import { LikeItemField } from './like-item-field.js';
import { editOf, missingOf, takes } from './trial-edit-typed.js';
import type { EditKind, EditTyped } from './trial-edit-typed.js';

const KINDS: { value: EditKind; label: string }[] = [
  { value: 'frame-down', label: 'Take a frame down' },
  { value: 'extra-shift', label: 'Open a frame longer' },
  { value: 'extra-item', label: 'One more item like …' },
  { value: 'technician-off', label: 'A technician is away' },
  { value: 'hold', label: 'Hold the chosen job' },
  { value: 'weight', label: 'Weigh the chosen job' },
];

interface Props {
  trial: TrialView;
  /** What is chosen on the lanes. */
  chosen: BookingView | null;
  onAdd: (edit: TrialEdit) => Promise<unknown>;
}

/** Adds one change to a trial plan; a job is chosen on the lanes. */
export function TrialEditForm({ trial, chosen, onAdd }: Props) {
  const moments = useMoments();
  const jobId = chosen?.jobId ?? null;
  const [initial] = useState(() => startOf(moments));
  const form = useLabForm<EditTyped>({
    initial,
    check: (typed) => missingOf(typed, jobId),
    send: (typed) => onAdd(editOf(typed, jobId, moments)),
  });
  const kind = useWatch({ control: form.control, name: 'kind' });
  return (
    <FormFrame form={form} className={clsx(ui.filters, ui.framed)} label="Try a change">
      <FormSelect form={form} name="kind" label="Try" choices={KINDS} />
      {takes(kind, 'frameId') && <FrameField form={form} trial={trial} />}
      {takes(kind, 'personId') && <TechnicianField form={form} />}
      {takes(kind, 'likeItemId') && <LikeItemField form={form} />}
      {takes(kind, 'startsAt') && (
        <>
          <FormText form={form} name="startsAt" label="From" type="datetime-local" />
          <FormText form={form} name="endsAt" label="Until" type="datetime-local" />
        </>
      )}
      {takes(kind, 'jobId') && (
        <span className={ui.soft}>{chosen ? chosen.jobReference : 'Choose a job on the lanes.'}</span>
      )}
      {takes(kind, 'why') && <FormText form={form} name="why" label="Why" />}
      {takes(kind, 'weight') && <FormText form={form} name="weight" label="Weight" />}
      <SubmitButton form={form} className={ui.button}>
        Try it
      </SubmitButton>
    </FormFrame>
  );
}

function startOf({ nowMs, toLocalInput }: Moments): EditTyped {
  const now = nowMs();
  return {
    kind: 'frame-down',
    frameId: '',
    personId: '',
    likeItemId: '',
    startsAt: toLocalInput(now),
    endsAt: toLocalInput(now + 2 * MS_PER_DAY),
    why: '',
    weight: '',
  };
}

function FrameField({ form, trial }: { form: LabForm<EditTyped>; trial: TrialView }) {
  const choices = (trial.plan?.lanes ?? []).map(({ frame: { id, tag, name } }) => ({
    value: id,
    label: `${tag} ${name}`,
  }));
  return <FormSelect form={form} name="frameId" label="Frame" none="Choose …" choices={choices} />;
}

function TechnicianField({ form }: { form: LabForm<EditTyped> }) {
  const people = useApiQuery('people', api('GET /people'));
  const choices = (people.value?.rows ?? [])
    .filter(({ roles }) => roles.includes('technician'))
    .map(({ id, name }) => ({ value: id, label: name }));
  return <FormSelect form={form} name="personId" label="Technician" none="Choose …" choices={choices} />;
}
