import { Link } from 'wouter';
import type { LateView } from '#libs/contract/src/index.js';
import { Causes } from '../../features/plan/booking-sheet.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { moment, span } from '../../ui/moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import '../../features/plan/board.css';

/** What is late or may become so, and where the hours went. */
export function LateScreen() {
  const plan = useApiQuery('plan', api('GET /plan'));
  return (
    <FetchStates of={plan} what="the plan">
      {({ late, figures, version, publishedAt }) => (
        <>
          <TitleBlock
            title="Late and at risk"
            cells={[
              ['plan', <span className="fig" key="v">{`v${version}`}</span>],
              ['late', figures.lateJobs === 1 ? 'one job' : `${figures.lateJobs} jobs`],
              ['weighted', `${Math.round(figures.weightedLatenessHours)} h`],
            ]}
          >
            <Link className="button" href="/planning/help">
              What would help most?
            </Link>
          </TitleBlock>
          {late.length === 0 && (
            <Empty>Nothing is late, and nothing is likely to become so. The frame lanes show what comes next.</Empty>
          )}
          <ul>
            {late.map((entry) => (
              <Entry key={entry.jobId} entry={entry} plannedAt={publishedAt} />
            ))}
          </ul>
        </>
      )}
    </FetchStates>
  );
}

/** @param plannedAt when the plan was made: its causes tell the time from then on */
function Entry({ entry, plannedAt }: { entry: LateView; plannedAt: string }) {
  const overdueMin = (Date.parse(plannedAt) - Date.parse(entry.dueAt)) / 60_000;
  return (
    <li className="late-entry split">
      <div className="stack tight">
        <div className="row">
          <Link href={`/requests/${entry.requestId}`} className="fig">
            {entry.jobReference}
          </Link>
          <strong>{entry.title}</strong>
          {entry.lateHours > 0 ? (
            <span className="word act">▲ {span(entry.lateHours * 60)} late</span>
          ) : (
            <span className="word">{entry.riskPct ?? 0} % chance to be late</span>
          )}
        </div>
        <span className="small">
          due {moment(entry.dueAt)}, {entry.endsAt ? `will end ${moment(entry.endsAt)}` : 'has no place in the plan'}
        </span>
        {overdueMin >= 1 && entry.causes.length > 0 && (
          <span className="small soft">
            It was overdue by {span(overdueMin)} when this plan was made. Beside: the time since.
          </span>
        )}
      </div>
      {entry.causes.length > 0 ? (
        <Causes causes={entry.causes} />
      ) : (
        <span className="soft">No single cause stands out.</span>
      )}
    </li>
  );
}
