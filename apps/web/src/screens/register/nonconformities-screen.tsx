import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { NonconformityView } from '#libs/contract/src/index.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Work or items found not to conform, with what they touched and what was decided. */
export function NonconformitiesScreen() {
  const list = useApiQuery('items', api('GET /nonconformities'));
  return (
    <>
      <TitleBlock
        title="Nonconformities"
        cells={[['open', list.value?.filter(({ state }) => state === 'open').length ?? '…']]}
      />
      <FetchStates
        of={list}
        what="the nonconformities"
        empty={(value) =>
          value.length === 0 && (
            <Empty>None was ever opened. One is opened from the page of an item, under “What it touched”.</Empty>
          )
        }
      >
        {(value) => (
          <ul>
            {value.map((each) => (
              <Entry key={each.id} entry={each} />
            ))}
          </ul>
        )}
      </FetchStates>
    </>
  );
}

const SINGULAR: Readonly<Record<string, string>> = { jobs: 'job', reports: 'report', people: 'person' };

function Entry({ entry }: { entry: NonconformityView }) {
  const { day, moment } = useMoments();
  const mayDecide = useHasRole('manager') && entry.state === 'open';
  const touched = Object.entries(entry.touched).flatMap(([what, list]) =>
    Array.isArray(list) ? [`${list.length} ${list.length === 1 ? (SINGULAR[what] ?? what) : what}`] : [],
  );
  return (
    <li className={clsx(ui.split, ui.entry)}>
      <div>
        <div className={ui.row}>
          <strong className={ui.fig}>{entry.reference}</strong>
          <span className={entry.state === 'open' ? ui.badgeAct : ui.badgeQuiet}>
            {entry.state === 'open' ? '▲ open' : 'closed'}
          </span>
          {entry.item && (
            <Link href={`/register/items/${entry.item.id}`} className={ui.fig}>
              {entry.item.tag}
            </Link>
          )}
        </div>
        <p>{entry.what}</p>
        <p className={clsx(ui.small, ui.soft)}>
          since {day(entry.since)}; opened by {entry.openedBy.name}, {moment(entry.openedAt)}; touches{' '}
          {touched.join(', ') || 'nothing'}
        </p>
      </div>
      {mayDecide ? (
        <Decide entry={entry} />
      ) : (
        <p>{entry.decision ?? <span className={ui.soft}>Not decided yet.</span>}</p>
      )}
    </li>
  );
}

function Decide({ entry }: { entry: NonconformityView }) {
  const decide = useApiMutation(['items']);
  const form = useLabForm({
    initial: { decision: '' },
    send: ({ decision }) => {
      const body = { state: 'closed' as const, decision };
      return decide.mutateAsync(api('PATCH /nonconformities/{id}', { id: entry.id, body, version: entry.version }));
    },
  });
  return (
    <FormFrame form={form} className={ui.stackTight} label={`Decide ${entry.reference}`}>
      <FormText
        form={form}
        name="decision"
        label="What was decided, and what was done about what it touched"
        called="The decision"
        needed="Say what was decided."
        rows={2}
      />
      <div>
        <SubmitButton form={form} className={ui.button}>
          Close it with this decision
        </SubmitButton>
      </div>
    </FormFrame>
  );
}
