import { FeedKeys } from '../../features/notices/feed-keys.js';
import { MailChoice } from '../../features/notices/mail-choice.js';
import { NoticeList } from '../../features/notices/notice-list.js';
import { useHasRole, useSession } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiPages, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** What one has been told, and how one wants to hear of it. */
export function NoticesScreen() {
  const { person } = useSession();
  const seesPlan = useHasRole('technician', 'manager', 'auditor');
  const notices = useApiPages('notices', api('GET /notices'));
  const readAll = useApiMutation(['notices']);
  const isNew = notices.value?.some(({ readAt }) => readAt === null) ?? false;
  return (
    <>
      <TitleBlock title="Notices">
        <button
          type="button"
          className={ui.button}
          disabled={!isNew || readAll.isPending}
          onClick={() => readAll.mutate(api('POST /notices/read-all'))}
        >
          All read
        </button>
      </TitleBlock>
      <div className={ui.splitMainLeft}>
        <FetchStates
          of={notices}
          what="your notices"
          empty={(rows) =>
            rows.length === 0 && <Empty>Nothing yet. What happens to your requests and jobs is told here.</Empty>
          }
        >
          {(rows) => (
            <div className={ui.stack}>
              <NoticeList notices={rows} />
              {notices.more && (
                <div>
                  <button type="button" className={ui.button} onClick={notices.more}>
                    Older ones
                  </button>
                </div>
              )}
            </div>
          )}
        </FetchStates>
        <div className={ui.stack}>
          <section className={ui.stack}>
            <h2>By mail</h2>
            <MailChoice />
          </section>
          {seesPlan && <FeedKeys personId={person.id} />}
        </div>
      </div>
    </>
  );
}
