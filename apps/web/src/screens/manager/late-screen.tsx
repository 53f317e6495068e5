import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { LateView } from '#libs/contract/src/index.js';
import { Causes } from '../../features/plan/booking-sheet.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { span } from '../../ui/moments.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

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
              ['plan', <span className={ui.fig} key="v">{`v${version}`}</span>],
              ['late', figures.lateJobs === 1 ? 'one job' : `${figures.lateJobs} jobs`],
              ['weighted lateness', `${Math.round(figures.weightedLatenessHours)} h`],
            ]}
          >
            <Link className={ui.button} href="/planning/help">
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
  const { moment } = useMoments();
  const overdueMin = (Date.parse(plannedAt) - Date.parse(entry.dueAt)) / 60_000;
  return (
    <li className={clsx(ui.split, ui.entry)}>
      <div className={ui.stackTight}>
        <div className={ui.row}>
          <Link href={`/requests/${entry.requestId}`} className={ui.fig}>
            {entry.jobReference}
          </Link>
          {entry.lateHours > 0 ? (
            <span className={ui.badgeAct}>▲ {span(entry.lateHours * 60)} late</span>
          ) : (
            <span className={ui.badge}>{entry.riskPct ?? 0} % chance to be late</span>
          )}
        </div>
        <strong>{entry.title}</strong>
        <span className={ui.small}>
          due {moment(entry.dueAt)}, {entry.endsAt ? `will end ${moment(entry.endsAt)}` : 'has no place in the plan'}
        </span>
        {overdueMin >= 1 && entry.causes.length > 0 && (
          <span className={clsx(ui.small, ui.soft)}>
            It was overdue by {span(overdueMin)} when this plan was made. The bars show the time since then.
          </span>
        )}
      </div>
      {entry.causes.length > 0 ? (
        <Causes causes={entry.causes} />
      ) : (
        <span className={ui.soft}>No single cause stands out.</span>
      )}
    </li>
  );
}
