import { Fetched } from '../../ui/faces.js';
import { api } from '../../wire/api.js';
import { useAsk } from '../../wire/asking.js';
import { addressOf } from '../../wire/call.js';

/** Everything that the lab keeps, to be saved as files. */
export function ExportList() {
  const tables = useAsk('record', api('GET /export'));
  return (
    <section className="stack">
      <h2>Everything</h2>
      <p>
        All tables as they are in the database, but for what opens doors. Who saves what goes into the record.{' '}
        <a href={addressOf(api('GET /export/everything.jsonl'))} download>
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
                    <a
                      href={addressOf(api('GET /export/{table}.csv', { table: name }))}
                      download
                      aria-label={`${name} as CSV`}
                    >
                      CSV
                    </a>{' '}
                    <a
                      href={addressOf(api('GET /export/{table}.jsonl', { table: name }))}
                      download
                      aria-label={`${name} as lines of JSON`}
                    >
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
