import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { useState } from 'react';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { ITEM_STATES } from '#libs/matching/src/index.js';
import { api } from '../../api-client/api.js';
import type { BodyOf } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useMoments } from '../../ui/use-moments.js';

interface Props {
  item: Pick<ItemDetail, 'id' | 'tag' | 'kind' | 'state'>;
  onClose: () => void;
}

export function FaultDialog({ item, onClose }: Props) {
  const report = useApiMutation(['items', 'plan', 'jobs'], onClose);
  const form = useLabForm({
    initial: { what: '' },
    send: (body) => report.mutateAsync(api('POST /items/{id}/faults', { id: item.id, body })),
  });
  return (
    <Dialog title={`Fault of ${item.tag}`} onClose={onClose}>
      <FormFrame form={form}>
        <p>The item fits no job until the fault is closed; planned jobs that need it are planned anew.</p>
        <FormText form={form} name="what" label="What is wrong" rows={3} needed="Say what is wrong." />
        <div>
          <SubmitButton form={form} className={ui.buttonSharp}>
            Report it and take {item.tag} out of the plan
          </SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}

const STATES = ITEM_STATES.map((value) => ({ value, label: value.replaceAll('-', ' ') }));

export function StateDialog({ item, onClose }: Props) {
  const save = useApiMutation(['items', 'plan'], onClose);
  const form = useLabForm<{ state: string; why: string }>({
    initial: { state: item.state, why: '' },
    send: ({ state, why }) =>
      save.mutateAsync(
        api('POST /items/{id}/state', { id: item.id, body: { state: state as ItemDetail['state'], why } }),
      ),
  });
  return (
    <Dialog title={`State of ${item.tag}`} onClose={onClose}>
      <FormFrame form={form}>
        <FormSelect form={form} name="state" label="State" choices={STATES} />
        <FormText form={form} name="why" label="Why" needed="Say why." />
        <div>
          <SubmitButton form={form}>Set the state</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}

type WindowKind = BodyOf<'POST /items/{id}/windows'>['kind'];

const WINDOW_KINDS: { value: WindowKind; label: string }[] = [
  { value: 'down', label: 'down' },
  { value: 'held', label: 'held elsewhere' },
  { value: 'calibration-visit', label: 'away for calibration' },
  { value: 'extra-shift', label: 'open longer' },
];

export function WindowDialog({ item, onClose }: Props) {
  const { fromLocalInput, nowMs, toLocalInput } = useMoments();
  const isFrame = item.kind === 'frame';
  const save = useApiMutation(['items', 'plan'], onClose);
  const [initial] = useState(() => ({
    kind: isFrame ? 'down' : 'held',
    startsAt: toLocalInput(nowMs()),
    endsAt: toLocalInput(nowMs() + MS_PER_DAY),
    why: '',
  }));
  const form = useLabForm({
    initial,
    send: ({ kind, startsAt, endsAt, why }) => {
      const span = { startsAt: fromLocalInput(startsAt) ?? '', endsAt: fromLocalInput(endsAt) ?? '' };
      const body = { kind: kind as WindowKind, ...span, why };
      return save.mutateAsync(api('POST /items/{id}/windows', { id: item.id, body }));
    },
  });
  const kinds = WINDOW_KINDS.filter(({ value }) => isFrame || value !== 'extra-shift');
  return (
    <Dialog title={`Keep ${item.tag} away`} onClose={onClose}>
      <FormFrame form={form}>
        <div className={ui.fields}>
          <FormSelect form={form} name="kind" label="Kind" choices={kinds} />
          <FormText form={form} name="startsAt" label="From" type="datetime-local" needed="Give the beginning." />
          <FormText form={form} name="endsAt" label="Until" type="datetime-local" needed="Give the end." />
        </div>
        <FormText form={form} name="why" label="Why" needed="Say why." />
        <div>
          <SubmitButton form={form}>Keep it away and replan</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
