import { clsx } from 'clsx';
import { useState } from 'react';
import type { ReportView } from '#libs/contract/src/index.js';
import { ReportDocumentView } from '../../features/reports/report-document.js';
import { Amend, Remarks } from '../../features/reports/report-forms.js';
import { REPORT_STATE_WORDS } from '../../features/reports/report-words.js';
import { CurvePlot } from '../../features/results/curve-plot.js';
import { ResultsTable } from '../../features/results/results-table.js';
import { useHasRole } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
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
                  {batch.stressStrain && batch.stressStrain.length > 0 && (
                    <CurvePlot curves={batch.stressStrain} title={`Stress and strain of ${batch.results.label}`} />
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
  const mayIssue = useHasRole('manager');
  const draft = report.state === 'draft';
  return (
    <aside className={clsx(ui.stackWide, ui.noPrint)} aria-label="What is to be done">
      {draft && <Missing report={report} />}
      {draft && mayIssue && <Remarks report={report} />}
      {draft && mayIssue && <Issue report={report} />}
      {report.state === 'issuing' && <p className={ui.note}>The PDF is being made …</p>}
      {report.sha256 && <Issued report={report} sha256={report.sha256} />}
      {report.state === 'issued' && mayIssue && <AmendButton report={report} />}
    </aside>
  );
}

function Missing({ report: { missing } }: { report: ReportView }) {
  if (missing.length === 0)
    return <p className={ui.noteFit}>Nothing that ISO/IEC 17025:2017, 7.8 asks for is missing.</p>;
  return (
    <section className={ui.noteAct}>
      <strong>Missing before it can be issued</strong>
      <ul>
        {missing.map(({ clause, what, how }) => (
          <li key={clause + what}>
            {what}: {how} <span className={ui.small}>({clause})</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Issue({ report }: { report: ReportView }) {
  const toast = useToast();
  const issue = useApiMutation<ReportView>(['reports', 'requests'], () =>
    toast(`${report.number} is being issued; its PDF is made now.`),
  );
  return (
    <section className={ui.stackTight}>
      <p className={ui.small}>
        You authorise the report with your name. Once issued it never changes; a correction is a new revision beside it.
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
  );
}

function Issued({ report, sha256 }: { report: ReportView; sha256: string }) {
  const { moment } = useMoments();
  return (
    <section className={ui.stackTight}>
      <h2>Issued</h2>
      <p className={ui.small}>
        {moment(report.issuedAt)}, authorised by {report.authorisedBy?.name}
      </p>
      <p className={clsx(ui.small, ui.soft, ui.fig)} style={{ whiteSpace: 'normal', overflowWrap: 'anywhere' }}>
        SHA-256 {sha256}
      </p>
      <a href={`/verify/${report.number}?hash=${sha256}`}>Verification page</a>
    </section>
  );
}

function AmendButton({ report }: { report: ReportView }) {
  const [amending, setAmending] = useState(false);
  return (
    <div>
      <button type="button" className={ui.button} onClick={() => setAmending(true)}>
        Amend …
      </button>
      {amending && <Amend report={report} onClose={() => setAmending(false)} />}
    </div>
  );
}
