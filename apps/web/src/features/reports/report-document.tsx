import type { ReactNode } from 'react';
import type { ReportBatch, ReportDocument } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import styles from './report.module.css';

/** The report as a page: the same content as the PDF. Results and curves are put in by the screen. */
export function ReportDocumentView({
  document: report,
  results,
}: {
  document: ReportDocument;
  results: (batch: ReportBatch) => ReactNode;
}) {
  const { day } = useMoments();
  return (
    <article className={styles.reportPage}>
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
      {report.batches.map((batch) => (
        <Batch key={batch.results.batchId} batch={batch}>
          {results(batch)}
        </Batch>
      ))}
      <Texts report={report} />
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
    </article>
  );
}

function Batch({ batch, children }: { batch: ReportBatch; children: ReactNode }) {
  const { day } = useMoments();
  const { conditions } = batch;
  return (
    <section className={ui.stack}>
      <h3>
        {batch.results.label || 'Results'}{' '}
        <span className={ui.soft}>
          by {batch.method.designation}, {batch.method.title} (version {batch.method.version})
        </span>
      </h3>
      {children}
      <div className={styles.reportParties}>
        <dl className={ui.facts}>
          <dt>Temperature</dt>
          <dd>{conditions.temperatureC === null ? 'not recorded' : `${conditions.temperatureC} °C`}</dd>
          <dt>Humidity</dt>
          <dd>{conditions.humidityPct === null ? 'not recorded' : `${conditions.humidityPct} %`}</dd>
          <dt>Speed</dt>
          <dd>{conditions.speed}</dd>
          <dt>Conditioning</dt>
          <dd>{conditions.conditioning}</dd>
          <dt>Technician</dt>
          <dd>{batch.technician}</dd>
          {conditions.remarks && (
            <>
              <dt>Remarks</dt>
              <dd>{conditions.remarks}</dd>
            </>
          )}
        </dl>
      </div>
      <div className={ui.scrollX}>
        <table>
          <caption>Equipment</caption>
          <thead>
            <tr>
              <th>Item</th>
              <th>Calibration</th>
              <th>Certificate</th>
              <th>Due</th>
            </tr>
          </thead>
          <tbody>
            {batch.items.map((item) => (
              <tr key={item.tag + item.role}>
                <th>
                  <span className={ui.fig}>{item.tag}</span> {item.name}
                </th>
                <td>{item.calibration}</td>
                <td>{item.certificate}</td>
                <td>{item.dueAt ? day(item.dueAt) : ''}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <details>
        <summary>Specimens as received</summary>
        <table>
          <tbody>
            {batch.specimens.map((specimen) => (
              <tr key={specimen.label}>
                <th className={ui.fig}>{specimen.label}</th>
                <td>{specimen.description}</td>
                <td>{specimen.condition}</td>
                <td>{specimen.fate}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
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
