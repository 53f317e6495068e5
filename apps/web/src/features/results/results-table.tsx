import { clsx } from 'clsx';
import type { BatchResults, StatisticsView } from '#libs/contract/src/index.js';
import { reported, roundToSignificant } from '#libs/reduction/src/index.js';
import { ui } from '../../ui/styles.js';
import styles from './results-table.module.css';

/** A spread is worth two digits, on screen as on the report. */
const SPREAD_DIGITS = 2;
const K_DIGITS = 3;

/** Results of a batch, specimen by specimen, with their statistics, uncertainty and conformity. */
export function ResultsTable({ results }: { results: BatchResults }) {
  return (
    <div className={ui.stack}>
      <div className={ui.scrollX}>
        <table>
          <caption>
            {results.label || 'Results'}: {results.method}
            {results.material && `, ${results.material}`}
          </caption>
          <Columns columns={results.columns} />
          <tbody>
            {results.rows.map((row) => (
              <SpecimenRow key={row.specimenId} row={row} columns={results.columns} />
            ))}
          </tbody>
          <Statistics results={results} />
        </table>
      </div>
      <Flags results={results} />
      {results.statistics
        .filter(({ possibleOutliers }) => possibleOutliers.length > 0)
        .map(({ key, label, possibleOutliers }) => (
          <p key={key} className={ui.note}>
            {label}: {possibleOutliers.join(', ')} {possibleOutliers.length === 1 ? 'is' : 'are'} a possible outlier by
            Grubbs’ test. Flagged, not dropped.
          </p>
        ))}
      {results.conformity && (
        <p className={results.conformity.statement === 'conforms' ? ui.noteFit : ui.noteAct}>
          <strong>
            {results.conformity.specification}: {results.conformity.statement}.
          </strong>{' '}
          {results.conformity.detail} Rule: {results.conformity.rule}.
        </p>
      )}
    </div>
  );
}

function Columns({ columns }: Pick<BatchResults, 'columns'>) {
  return (
    <thead>
      <tr>
        <th>Specimen</th>
        {columns.map(({ key, label, unit }) => (
          <th key={key} className={ui.num}>
            {label}
            <br />
            {unit}
          </th>
        ))}
      </tr>
    </thead>
  );
}

function SpecimenRow({ row, columns }: { row: BatchResults['rows'][number]; columns: BatchResults['columns'] }) {
  return (
    <tr>
      <th className={ui.fig}>
        {row.label}
        {row.invalidWhy && <span className={clsx(ui.small, ui.act)}> ▲ invalid: {row.invalidWhy}</span>}
      </th>
      {columns.map((column) => {
        const { key } = column;
        const cell = row.values[key];
        return (
          <td key={key} className={ui.num}>
            {cell ? reported(cell.value, column) : '–'}
            {cell && cell.flags.length > 0 && (
              <abbr title={cell.flags.map((flag) => flag.replaceAll('-', ' ')).join('; ')} className={ui.act}>
                {' '}
                ▲
              </abbr>
            )}
            {cell && cell.revision > 1 && <span className={ui.soft}> rev {cell.revision}</span>}
          </td>
        );
      })}
    </tr>
  );
}

function Statistics({ results }: { results: BatchResults }) {
  return (
    <tfoot>
      <StatisticsRow name="mean" results={results} of={({ mean }) => mean} shown={reported} />
      <StatisticsRow name="standard deviation" results={results} of={({ standardDeviation }) => standardDeviation} />
      <StatisticsRow name="coefficient of variation, %" results={results} of={({ cvPct }) => cvPct} />
      <StatisticsRow
        name="expanded uncertainty"
        results={results}
        of={({ uncertainty }) => uncertainty?.expanded ?? null}
      />
      <StatisticsRow
        name="coverage factor k"
        results={results}
        of={({ uncertainty }) => uncertainty?.k ?? null}
        shown={(k) => roundToSignificant(k, K_DIGITS)}
      />
    </tfoot>
  );
}

function StatisticsRow({
  name,
  results,
  of,
  shown = (value) => roundToSignificant(value, SPREAD_DIGITS),
}: {
  name: string;
  results: BatchResults;
  of: (statistics: StatisticsView) => number | null;
  shown?: (value: number, column: BatchResults['columns'][number]) => string;
}) {
  const cells = results.columns.map(({ key }) => {
    const statistics = results.statistics.find((each) => each.key === key);
    return statistics ? of(statistics) : null;
  });
  if (cells.every((value) => value === null)) return null;
  return (
    <tr className={styles.statistics}>
      <th>{name}</th>
      {cells.map((value, index) => (
        <td key={results.columns[index]?.key} className={ui.num}>
          {value === null ? '–' : shown(value, results.columns[index]!)}
        </td>
      ))}
    </tr>
  );
}

/** What the flagged figures mean, with the specimens that they belong to. */
function Flags({ results }: { results: BatchResults }) {
  const found = new Map<string, string[]>();
  for (const row of results.rows) {
    for (const { key, label } of results.columns) {
      for (const flag of row.values[key]?.flags ?? []) {
        const name = `${label}: ${flag.replaceAll('-', ' ')}`;
        found.set(name, [...(found.get(name) ?? []), row.label]);
      }
    }
  }
  if (found.size === 0) return null;
  return (
    <ul className={ui.small}>
      {[...found].map(([name, labels]) => (
        <li key={name}>
          <span className={ui.act}>▲</span> {name} (
          {labels.length === results.rows.length ? 'every specimen' : labels.join(', ')})
        </li>
      ))}
    </ul>
  );
}
