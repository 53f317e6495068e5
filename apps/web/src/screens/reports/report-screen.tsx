import { clsx } from 'clsx';
import { useState } from 'react';
import { useLocation } from 'wouter';
import type { ReportRemarks, ReportView } from '#libs/contract/src/index.js';
import { ReportDocumentView } from '../../features/reports/report-document.js';
import { REPORT_STATE_WORDS } from '../../features/reports/report-words.js';
import { CurvePlot } from '../../features/results/curve-plot.js';
import { ResultsTable } from '../../features/results/results-table.js';
import { useHasRole } from '../../features/session/session.js';
import { Dialog } from '../../ui/dialog.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { urlOf } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/reports/report.module.css';

const ISSUING_MS = 1500;

/** One report: the page as it will be issued, and beside it what is missing, remarks, and the acts. */
export function ReportScreen({ id }: { id: string }) {
  const { moment } = useMoments();
  const report = useApiQuery('reports', api('GET /reports/{id}', { id }), (value) =>
    value?.state === 'issuing' ? ISSUING_MS : false,
  );
  return (
    <FetchStates of={report} what="the report">
      {(value) => (
        <>
          <TitleBlock
            title={`Report ${value.number}`}
            back={{ to: '/reports', label: 'Reports' }}
            cells={[
              ['revision', value.revision],
              ['state', REPORT_STATE_WORDS[value.state]],
              ['prepared', `${value.preparedBy.name}, ${moment(value.preparedAt)}`],
            ]}
          >
            <Downloads report={value} />
          </TitleBlock>
          <div className={styles.reportDesk}>
            <ReportDocumentView
              document={value.document}
              results={(batch) => (
                <>
                  <ResultsTable results={{ ...batch.results, conformity: null }} />
                  {batch.curves.length > 0 && (
                    <CurvePlot curves={batch.curves} title={`Curves of ${batch.results.label}`} />
                  )}
                </>
              )}
            />
            <Beside key={value.version} report={value} />
          </div>
        </>
      )}
    </FetchStates>
  );
}

function Downloads({ report }: { report: ReportView }) {
  const to = (file: 'file.pdf' | 'data.csv' | 'data.json') =>
    urlOf(api(`GET /reports/{id}/${file}`, { id: report.id }));
  return (
    <>
      {report.hasFile && (
        <a className={ui.buttonMain} href={to('file.pdf')}>
          PDF
        </a>
      )}
      <a className={ui.button} href={to('data.csv')}>
        CSV
      </a>
      <a className={ui.button} href={to('data.json')}>
        JSON
      </a>
    </>
  );
}

function Beside({ report }: { report: ReportView }) {
  const { moment } = useMoments();
  const mayIssue = useHasRole('manager');
  const toast = useToast();
  const [amending, setAmending] = useState(false);
  const issue = useApiMutation<ReportView>(['reports', 'requests'], () =>
    toast(`${report.number} is being issued; its PDF is made now.`),
  );
  const draft = report.state === 'draft';
  return (
    <aside className={clsx(ui.stackWide, ui.noPrint)} aria-label="What is to be done">
      {draft && report.missing.length > 0 && (
        <section className={ui.noteAct}>
          <strong>Missing before it can be issued</strong>
          <ul>
            {report.missing.map(({ clause, what, how }) => (
              <li key={clause + what}>
                {what}: {how} <span className={ui.small}>({clause})</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {draft && report.missing.length === 0 && (
        <p className={ui.noteFit}>Nothing that ISO/IEC 17025:2017, 7.8 asks for is missing.</p>
      )}
      {draft && mayIssue && <Remarks report={report} />}
      {draft && mayIssue && (
        <section className={ui.stackTight}>
          <p className={ui.small}>
            You authorise the report with your name. Once issued it never changes; a correction is a new revision beside
            it.
          </p>
          <ErrorMessage error={issue.error} />
          <button
            type="button"
            className={ui.buttonMain}
            disabled={report.missing.length > 0 || issue.isPending}
            onClick={() => issue.mutate(api('POST /reports/{id}/issue', { id: report.id, version: report.version }))}
          >
            Authorise and issue
          </button>
        </section>
      )}
      {report.state === 'issuing' && <p className={ui.note}>The PDF is being made …</p>}
      {report.sha256 && (
        <section className={ui.stackTight}>
          <h2>Issued</h2>
          <p className={ui.small}>
            {moment(report.issuedAt)}, authorised by {report.authorisedBy?.name}
          </p>
          <p className={clsx(ui.small, ui.soft, ui.fig)} style={{ whiteSpace: 'normal', overflowWrap: 'anywhere' }}>
            SHA-256 {report.sha256}
          </p>
          <a href={`/verify/${report.number}?hash=${report.sha256}`}>Verification page</a>
        </section>
      )}
      {report.state === 'issued' && mayIssue && (
        <div>
          <button type="button" className={ui.button} onClick={() => setAmending(true)}>
            Amend …
          </button>
        </div>
      )}
      {amending && <Amend report={report} onClose={() => setAmending(false)} />}
    </aside>
  );
}

const TEXTS: { key: keyof ReportRemarks; label: string; rows: number }[] = [
  { key: 'title', label: 'Title', rows: 1 },
  { key: 'sampling', label: 'Sampling', rows: 2 },
  { key: 'deviations', label: 'Deviations', rows: 2 },
  { key: 'opinions', label: 'Opinions, marked as such', rows: 3 },
  { key: 'external', label: 'Results from others', rows: 2 },
];

function Remarks({ report }: { report: ReportView }) {
  const [remarks, setRemarks] = useState<ReportRemarks>(report.remarks);
  const save = useApiMutation(['reports']);
  const changed = JSON.stringify(remarks) !== JSON.stringify(report.remarks);
  return (
    <section className={ui.stack}>
      <h2>Remarks</h2>
      {TEXTS.map(({ key, label, rows }) => (
        <TextField
          key={key}
          label={label}
          required={false}
          {...(rows > 1 ? { rows } : {})}
          value={remarks[key] ?? ''}
          onChange={(text) => setRemarks({ ...remarks, [key]: text })}
        />
      ))}
      <ErrorMessage error={save.error} />
      <div>
        <button
          type="button"
          className={ui.button}
          disabled={!changed || save.isPending}
          onClick={() =>
            save.mutate(api('PATCH /reports/{id}', { id: report.id, body: remarks, version: report.version }))
          }
        >
          Keep the remarks
        </button>
      </div>
    </section>
  );
}

function Amend({ report, onClose }: { report: ReportView; onClose: () => void }) {
  const [why, setWhy] = useState('');
  const [, go] = useLocation();
  const amend = useApiMutation<ReportView>(['reports', 'requests'], ({ id }) => {
    onClose();
    go(`/reports/${id}`);
  });
  return (
    <Dialog title={`Amend ${report.number}`} onClose={onClose}>
      <p>
        A new revision is prepared from the record as it is now. This one stays readable and is marked as replaced when
        the new one is issued.
      </p>
      <TextField label="What changes, and why" required rows={3} value={why} onChange={setWhy} />
      <ErrorMessage error={amend.error} />
      <button
        type="button"
        className={ui.buttonMain}
        disabled={!why.trim() || amend.isPending}
        onClick={() => amend.mutate(api('POST /reports/{id}/amend', { id: report.id, body: { why } }))}
      >
        Prepare revision {report.revision + 1}
      </button>
    </Dialog>
  );
}
