import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { RequestLine } from '#libs/contract/src/index.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { NoBreak } from '../../ui/no-break.js';
import { api } from '../../api-client/api.js';
import { useApiPages } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** What waits for the lab's review, and what was returned with a question. */
export function IntakeScreen() {
  const submitted = useApiPages('requests', api('GET /requests', { state: 'submitted' }));
  const returned = useApiPages('requests', api('GET /requests', { state: 'returned' }));
  return (
    <>
      <TitleBlock
        title="Intake"
        cells={[
          ['to review', submitted.value?.length ?? '…'],
          ['returned', returned.value?.length ?? '…'],
        ]}
      />
      <div className={ui.stackWide}>
        <section>
          <h2>To review</h2>
          <FetchStates
            of={submitted}
            what="what was submitted"
            empty={(value) =>
              value.length === 0 && <Empty>Nothing waits for a review. New requests show up here by themselves.</Empty>
            }
          >
            {(value) => <Lines lines={value} act="Review" />}
          </FetchStates>
        </section>
        {returned.value && returned.value.length > 0 && (
          <section>
            <h2>Returned with a question</h2>
            <Lines lines={returned.value} act="Look" />
          </section>
        )}
      </div>
    </>
  );
}

function Lines({ lines, act }: { lines: readonly RequestLine[]; act: string }) {
  const { day } = useMoments();
  return (
    <table>
      <thead>
        <tr>
          <th>Request</th>
          <th>What</th>
          <th>Method</th>
          <th className={ui.num}>Specimens</th>
          <th>Requested by</th>
          <th>Due</th>
          <th />
        </tr>
      </thead>
      <tbody>
        {lines.map((line) => (
          <tr key={line.id}>
            <td className={ui.fig}>{line.reference}</td>
            <th>{line.title}</th>
            <td>
              <NoBreak>{line.methods.join(', ')}</NoBreak>
            </td>
            <td className={ui.num}>{line.specimens}</td>
            <td>
              {line.requester.name}, {line.team.name}
            </td>
            <td className={line.late ? clsx(ui.oneLine, ui.act) : ui.oneLine}>
              {line.late && '▲ '}
              {day(line.dueAt)}
            </td>
            <td>
              <Link
                className={clsx(ui.button, ui.buttonSmall)}
                href={`/planning/intake/${line.id}`}
                aria-label={`${act} ${line.reference}`}
              >
                {act}
              </Link>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
