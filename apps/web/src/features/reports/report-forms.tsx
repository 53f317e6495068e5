import { useLocation } from 'wouter';
import type { ReportRemarks, ReportView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { Dialog } from '../../ui/dialog.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';

const TEXTS: { key: keyof ReportRemarks; label: string; rows?: number }[] = [
  { key: 'title', label: 'Title' },
  { key: 'sampling', label: 'Sampling', rows: 2 },
  { key: 'deviations', label: 'Deviations', rows: 2 },
  { key: 'opinions', label: 'Opinions, marked as such', rows: 3 },
  { key: 'external', label: 'Results from others', rows: 2 },
];

type RemarksTyped = Record<keyof ReportRemarks, string>;

/** What the lab adds to a draft in its own words. */
export function Remarks({ report }: { report: ReportView }) {
  const save = useApiMutation(['reports']);
  const form = useLabForm<RemarksTyped>({
    initial: Object.fromEntries(TEXTS.map(({ key }) => [key, report.remarks[key] ?? ''])) as RemarksTyped,
    send: ({ title, ...rest }) => {
      const body = title.trim() ? { title, ...rest } : rest;
      return save.mutateAsync(api('PATCH /reports/{id}', { id: report.id, body, version: report.version }));
    },
  });
  return (
    <FormFrame form={form} label="Remarks">
      <h2>Remarks</h2>
      {TEXTS.map(({ key, label, rows }) => (
        <FormText key={key} form={form} name={key} label={label} required={false} rows={rows} />
      ))}
      <div>
        <SubmitButton form={form} className={ui.button} disabled={!form.dirty}>
          Save the remarks
        </SubmitButton>
      </div>
    </FormFrame>
  );
}

/** Prepares the next revision of a report that was issued. */
export function Amend({ report, onClose }: { report: ReportView; onClose: () => void }) {
  const [, go] = useLocation();
  const amend = useApiMutation<ReportView>(['reports', 'requests'], ({ id }) => {
    onClose();
    go(`/reports/${id}`);
  });
  const form = useLabForm({
    initial: { why: '' },
    send: (body) => amend.mutateAsync(api('POST /reports/{id}/amend', { id: report.id, body })),
  });
  return (
    <Dialog title={`Amend ${report.number}`} onClose={onClose}>
      <FormFrame form={form}>
        <p>
          A new revision is prepared from the record as it is now. This one stays readable and is marked as replaced
          when the new one is issued.
        </p>
        <FormText
          form={form}
          name="why"
          label="What changes, and why"
          called="The reason"
          rows={3}
          needed="Say what changes, and why."
        />
        <div>
          <SubmitButton form={form}>Prepare revision {report.revision + 1}</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
