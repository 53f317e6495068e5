import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { ReportLine } from '#libs/contract/src/index.js';
import { REPORT_STATE_WORDS } from '../../features/reports/report-words.js';
import { useSearch } from '../../ui/use-search.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiPages } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Reports by number, request or team. */
export function ReportsScreen() {
  const [text, setText, q] = useSearch();
  const reports = useApiPages('reports', api('GET /reports', { q }));
  return (
    <>
      <TitleBlock title="Reports" />
      <div className={ui.filters}>
        <TextField
          label="Find"
          type="search"
          value={text}
          onChange={setText}
          placeholder="report number, request, title, team"
        />
      </div>
      <FetchStates
        of={reports}
        what="the reports"
        empty={(value) =>
          value.length === 0 && (
            <Empty>
              {q
                ? 'No report fits this search.'
                : 'No report is there yet. One is prepared from a request whose work is done.'}
            </Empty>
          )
        }
      >
        {(value) => <ReportTable reports={value} />}
      </FetchStates>
      {reports.more && (
        <button type="button" className={ui.button} onClick={reports.more}>
          Show more
        </button>
      )}
    </>
  );
}

function ReportTable({ reports }: { reports: readonly ReportLine[] }) {
  const { moment } = useMoments();
  return (
    <table>
      <thead>
        <tr>
          <th>Report</th>
          <th>Request</th>
          <th>Team</th>
          <th>State</th>
          <th>Issued</th>
        </tr>
      </thead>
      <tbody>
        {reports.map((report) => (
          <tr key={report.id}>
            <th>
              <Link href={`/reports/${report.id}`} className={ui.fig}>
                {report.number}
              </Link>{' '}
              <span className={clsx(ui.soft, ui.small, ui.oneLine)}>revision {report.revision}</span>
            </th>
            <td>
              <Link href={`/requests/${report.request.id}`} className={ui.fig}>
                {report.request.reference}
              </Link>{' '}
              {report.request.title}
            </td>
            <td>{report.team}</td>
            <td>
              <span className={report.state === 'issued' ? ui.badgeFit : ui.badgeQuiet}>
                {REPORT_STATE_WORDS[report.state]}
              </span>
            </td>
            <td>
              <span className={ui.oneLine}>{moment(report.issuedAt)}</span>{' '}
              {report.authorisedBy && (
                <span className={clsx(ui.soft, ui.small, ui.oneLine)}>{report.authorisedBy.name}</span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
