import type { ReactNode } from 'react';
import type { ReportBatch, ReportDocument } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import { ReportBatchView } from './report-batch.js';
import styles from './report.module.css';

/** The report as a page: the same content as the PDF. Results and curves are put in by the screen. */
export function ReportDocumentView({
  document: report,
  results,
}: {
  document: ReportDocument;
  results: (batch: ReportBatch) => ReactNode;
}) {
  return (
    <article className={styles.reportPage}>
      <Head report={report} />
      <Parties report={report} />
      <Summary report={report} />
      {report.batches.map((batch) => (
        <ReportBatchView key={batch.results.batchId} batch={batch}>
          {results(batch)}
        </ReportBatchView>
      ))}
      <Texts report={report} />
      <Foot report={report} />
    </article>
  );
}

function Head({ report }: { report: ReportDocument }) {
  const { day } = useMoments();
  return (
    <header className={styles.reportHead}>
      <div>
        <p className={ui.soft}>Test report</p>
        <h2>{report.title === 'Test report' ? report.request.title : report.title}</h2>
        {report.amendment && (
          <p className={ui.act}>
            Amendment: {report.amendment} {report.replaces && `Replaces ${report.replaces}.`}
          </p>
        )}
      </div>
      <dl className={ui.facts}>
        <dt>Number</dt>
        <dd className={ui.fig}>{report.number}</dd>
        <dt>Revision</dt>
        <dd className={ui.fig}>{report.revision}</dd>
        <dt>Issued</dt>
        <dd>{report.dates.issued ? day(report.dates.issued) : 'not yet'}</dd>
      </dl>
    </header>
  );
}

/** The laboratory, the customer and the request. */
function Parties({ report }: { report: ReportDocument }) {
  const { day } = useMoments();
  return (
    <div className={styles.reportParties}>
      <section>
        <h3>Laboratory</h3>
        <p className={styles.lines}>
          {report.laboratory.name}
          {'\n'}
          {report.laboratory.address}
          {'\n'}
          {report.laboratory.contact}
        </p>
        {report.laboratory.place && <p className={ui.small}>Tests were done at: {report.laboratory.place}</p>}
      </section>
      <section>
        <h3>Customer</h3>
        <p className={styles.lines}>
          {report.customer.team}
          {'\n'}
          {report.customer.requester}
          {'\n'}
          {report.customer.contact}
        </p>
      </section>
      <section>
        <h3>Request</h3>
        <p>
          <span className={ui.fig}>{report.request.reference}</span> {report.request.title}
        </p>
        <p className={ui.small}>{report.request.purpose}</p>
        <p className={ui.small}>
          Received {day(report.dates.received)}; tested {day(report.dates.testedFrom)} to {day(report.dates.testedTo)}
        </p>
      </section>
    </div>
  );
}

function Summary({ report }: { report: ReportDocument }) {
  return (
    <section>
      <h3>Summary</h3>
      <ul>
        {report.summary.map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      {report.conformity.map((statement) => (
        <p key={statement.specification} className={ui.note}>
          <strong>
            {statement.specification}: {statement.statement}.
          </strong>{' '}
          {statement.detail} Decision rule: {statement.rule}.
        </p>
      ))}
    </section>
  );
}

function Foot({ report }: { report: ReportDocument }) {
  return (
    <footer className={styles.reportFoot}>
      <p>{report.relatesOnlyToItems}</p>
      {report.authorisedBy ? (
        <p>
          Authorised by {report.authorisedBy.name}, {report.authorisedBy.function}
        </p>
      ) : (
        <p className={ui.act}>Not authorised yet.</p>
      )}
      <p className={styles.endMark}>End of report {report.number}</p>
    </footer>
  );
}

function Texts({ report }: { report: ReportDocument }) {
  const parts: [string, string[]][] = [
    ['Sampling', [report.sampling]],
    ['Deviations from the methods', report.deviations],
    ['Opinions and interpretations', report.opinions],
    ['Measurement uncertainty', [report.uncertaintyNote]],
    ['Results from others', [report.external]],
  ];
  return (
    <>
      {parts
        .map(([title, lines]): [string, string[]] => [title, lines.filter(Boolean)])
        .filter(([, lines]) => lines.length > 0)
        .map(([title, lines]) => (
          <section key={title}>
            <h3>{title}</h3>
            {lines.map((line) => (
              <p key={line}>{line}</p>
            ))}
          </section>
        ))}
    </>
  );
}
