import { useState } from 'react';
import { useFieldArray, useWatch } from 'react-hook-form';
import { useLocation } from 'wouter';
import type { EvaluationView, ItemDetail } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { call, newIdempotencyKey } from '../../api-client/call.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import {
  calibrationBody,
  hasReadings,
  missingOf,
  readingProblems,
  readingsBody,
  startOf,
  usualDirection,
} from '../../features/calibration/calibration-typed.js';
import type { CalibrationTyped } from '../../features/calibration/calibration-typed.js';
import { CertificateFields } from '../../features/calibration/certificate-fields.js';
import { EvaluationTable } from '../../features/calibration/evaluation-table.js';
import { ExtensionReadings } from '../../features/calibration/extension-readings.js';
import { ForceReadings } from '../../features/calibration/force-readings.js';
import { emptyForce } from '../../features/calibration/readings.js';
import { StatedRanges } from '../../features/calibration/stated-ranges.js';
import { ErrorMessage, FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';

/** Enters a calibration: from readings, which give class and range, or as the certificate states them. */
export function CalibrateScreen({ id }: { id: string }) {
  const item = useApiQuery('items', api('GET /items/{id}', { id }));
  return (
    <FetchStates of={item} what="the item">
      {(value) => <CalibrateForm key={value.id} item={value} />}
    </FetchStates>
  );
}

function CalibrateForm({ item }: { item: ItemDetail }) {
  const [file, setFile] = useState<File | null>(null);
  const form = useCalibrationForm(item, file);
  const basis = useWatch({ control: form.control, name: 'basis' });
  const evaluate = useApiMutation<EvaluationView>([]);
  const [unread, setUnread] = useState<Error | null>(null);
  const workOut = () => {
    const typed = form.hook.getValues();
    const problems = readingProblems(item, typed);
    setUnread(problems.length > 0 ? new Error(problems.join(' ')) : null);
    if (problems.length > 0) return;
    const body = { standard: typed.standard, ...readingsBody(item, typed) };
    evaluate.mutate(api('POST /calibrations/evaluate', { body }));
  };
  return (
    <>
      <TitleBlock
        title={`Calibration of ${item.tag}`}
        back={{ to: `/register/items/${item.id}`, label: `${item.tag} ${item.name}` }}
      >
        {basis === 'readings' && (
          <button type="button" className={ui.button} disabled={evaluate.isPending} onClick={workOut}>
            Work out class and range
          </button>
        )}
        <SubmitButton form={form}>Save</SubmitButton>
      </TitleBlock>
      <ErrorMessage error={unread ?? evaluate.error} />
      <FormFrame form={form} className={ui.stackWide} label="Calibration">
        <CertificateFields form={form} intervalMonths={item.calibrationIntervalMonths} onFile={setFile} />
        {hasReadings(item) && <BasisTabs basis={basis} onChoose={(next) => form.hook.setValue('basis', next)} />}
        {basis === 'certificate' && <StatedRanges form={form} />}
        {basis === 'readings' && item.kind === 'extensometer' && <ExtensionReadings form={form} />}
        {basis === 'readings' && item.kind !== 'extensometer' && <Directions form={form} item={item} />}
        {basis === 'readings' && evaluate.data && <EvaluationTable evaluation={evaluate.data} />}
      </FormFrame>
    </>
  );
}

function useCalibrationForm(item: ItemDetail, file: File | null): LabForm<CalibrationTyped> {
  const { nowMs, toLocalInput } = useMoments();
  const [, go] = useLocation();
  const toast = useToast();
  const [initial] = useState(() => startOf(item, toLocalInput(nowMs()).slice(0, 10)));
  const save = useApiMutation<{ impact: unknown }>(['items', 'plan']);
  return useLabForm<CalibrationTyped>({
    initial,
    check: missingOf,
    send: async (typed) => {
      const problems = readingProblems(item, typed);
      if (problems.length > 0) throw new Error(problems.join(' '));
      const body = calibrationBody(item, typed, file && (await store(file)));
      const { impact } = await save.mutateAsync(api('POST /items/{id}/calibrations', { id: item.id, body }));
      toast(`The calibration of ${item.tag} is saved.`);
      go(impact ? `/register/items/${item.id}/impact` : `/register/items/${item.id}`);
    },
  });
}

/** @returns the id under which the file is kept */
async function store(file: File): Promise<string> {
  const options = { key: newIdempotencyKey(), ...(file.type ? { type: file.type } : {}) };
  return (await call(api('POST /files', { name: file.name, body: file }), options)).id;
}

type Basis = CalibrationTyped['basis'];

function BasisTabs({ basis, onChoose }: { basis: Basis; onChoose: (basis: Basis) => void }) {
  const tab = (value: Basis, words: string) => (
    <button type="button" role="tab" aria-selected={basis === value} onClick={() => onChoose(value)}>
      {words}
    </button>
  );
  return (
    <div className={ui.tabs} role="tablist" aria-label="Where class and range come from">
      {tab('readings', 'From readings')}
      {tab('certificate', 'As the certificate states')}
    </div>
  );
}

/** A cell is calibrated in one direction or in both. */
function Directions({ form, item }: { form: LabForm<CalibrationTyped>; item: ItemDetail }) {
  const { fields, append } = useFieldArray({ control: form.control, name: 'force' });
  const other = emptyForce('compression', Number(item.details['capacityN'] ?? 0), 'N');
  return (
    <>
      {fields.map(({ id }, at) => (
        <ForceReadings key={id} form={form} at={at} />
      ))}
      {usualDirection(item) !== 'torque' && fields.length < 2 && (
        <div>
          <button type="button" className={ui.button} onClick={() => append(other)}>
            The other direction as well
          </button>
        </div>
      )}
    </>
  );
}
