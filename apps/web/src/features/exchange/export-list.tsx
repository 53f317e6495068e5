import { FetchStates } from '../../ui/fetch-states.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { urlOf } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** Everything that the lab keeps, to be saved as files. */
export function ExportList() {
  const tables = useApiQuery('record', api('GET /export'));
  return (
    <section className={ui.stack}>
      <h2>Everything</h2>
      <p>
        All tables as they are in the database, without passwords, keys and tokens. The record keeps who saved what.{' '}
        <a href={urlOf(api('GET /export/everything.jsonl'))} download>
          Save all as lines of JSON
        </a>
      </p>
      <FetchStates of={tables} what="the tables">
        {(rows) => (
          <table>
            <thead>
              <tr>
                <th>Table</th>
                <th className={ui.fig}>Rows</th>
                <th>Save</th>
              </tr>
            </thead>
            <tbody>
              {rows.map(({ name, rows: count }) => (
                <tr key={name}>
                  <th>{name}</th>
                  <td className={ui.fig}>{count}</td>
                  <td>
                    <a
                      href={urlOf(api('GET /export/{table}.csv', { table: name }))}
                      download
                      aria-label={`${name} as CSV`}
                    >
                      CSV
                    </a>{' '}
                    <a
                      href={urlOf(api('GET /export/{table}.jsonl', { table: name }))}
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
      </FetchStates>
    </section>
  );
}
