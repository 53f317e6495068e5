import type { ExportTable } from '#libs/contract/src/index.js';
import { Fetched } from '../../ui/faces.js';
import { useAsk } from '../../wire/asking.js';
import { addressOf } from '../../wire/call.js';

/** Everything that the lab keeps, to be saved as files. */
export function ExportList() {
  const tables = useAsk<ExportTable[]>('record', '/export');
  return (
    <section className="stack">
      <h2>Everything</h2>
      <p>
        All tables as they are in the database, but for what opens doors. Who saves what goes into the record.{' '}
        <a href={addressOf('/export/everything.jsonl')} download>
          Save all as lines of JSON
        </a>
      </p>
      <Fetched of={tables} what="the tables">
        {(rows) => (
          <table>
            <thead>
              <tr>
                <th>Table</th>
                <th className="fig">Rows</th>
                <th>Save</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ name, rows: count }) => (
                <tr key={name}>
                  <th>{name}</th>
                  <td className="fig">{count}</td>
                  <td>
                    <a href={addressOf(`/export/${name}.csv`)} download aria-label={`${name} as CSV`}>
                      CSV
                    </a>{' '}
                    <a href={addressOf(`/export/${name}.jsonl`)} download aria-label={`${name} as lines of JSON`}>
                      JSON
                    </a>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Fetched>
    </section>
  );
}
