import { Fragment } from 'react';
import type { ReactNode } from 'react';
import { sizesTable } from '#libs/contract/src/index.js';
import type { ReportBatch } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { ui } from '../../ui/styles.js';
import styles from './report.module.css';

/** One batch of a report: its method, its results, and under which conditions, with what and on what they were found. */
export function ReportBatchView({ batch, children }: { batch: ReportBatch; children: ReactNode }) {
  return (
    <section className={ui.stack}>
      <h3>
        {batch.results.label || 'Results'}{' '}
        <span className={ui.soft}>
          by {batch.method.designation}, {batch.method.title} (version {batch.method.version})
        </span>
      </h3>
      {children}
      <Definitions columns={batch.results.columns} />
      <Conditions batch={batch} />
      <Equipment items={batch.items} />
      <Specimens specimens={batch.specimens} />
      <Sizes specimens={batch.specimens} />
    </section>
  );
}

/** What each result is: which stress or strain, read where, over which length. */
function Definitions({ columns }: Pick<ReportBatch['results'], 'columns'>) {
  const defined = columns.filter(({ definition }) => definition);
  if (defined.length === 0) return null;
  return (
    <section>
      <h4>How the results are defined</h4>
      <dl className={ui.facts}>
        {defined.map(({ key, label, definition }) => (
          <Fragment key={key}>
            <dt>{label}</dt>
            <dd>{definition}</dd>
          </Fragment>
        ))}
      </dl>
    </section>
  );
}

function Conditions({ batch }: { batch: ReportBatch }) {
  const { conditions } = batch;
  return (
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
  );
}

function Equipment({ items }: Pick<ReportBatch, 'items'>) {
  const { day } = useMoments();
  return (
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
          {items.map((item) => (
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
  );
}

function Specimens({ specimens }: Pick<ReportBatch, 'specimens'>) {
  return (
    <details>
      <summary>Specimens as received</summary>
      <table>
        <tbody>
          {specimens.map((specimen) => (
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
  );
}

function Sizes({ specimens }: Pick<ReportBatch, 'specimens'>) {
  const table = sizesTable(specimens);
  if (!table) return null;
  return (
    <div className={ui.scrollX}>
      <table>
        <caption>Measured sizes: mean (number of readings)</caption>
        <thead>
          <tr>
            <th>Specimen</th>
            {table.columns.map(({ key, head }) => (
              <th key={key} className={ui.num}>
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {table.rows.map(({ label, cells }) => (
            <tr key={label}>
              <th className={ui.fig}>{label}</th>
              {cells.map((cell, index) => (
                <td key={table.columns[index]?.key} className={ui.num}>
                  {cell}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
