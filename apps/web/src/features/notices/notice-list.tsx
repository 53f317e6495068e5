import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { NoticeView } from '#libs/contract/src/index.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** What one has been told, newest first; opening one counts as having read it. */
export function NoticeList({ notices }: { notices: readonly NoticeView[] }) {
  const { moment } = useMoments();
  const read = useApiMutation(['notices']);
  return (
    <ul className={ui.stackWide}>
      {notices.map(({ id, path, subject, sentence, at, readAt }) => (
        <li key={id} className={readAt ? ui.stackTight : clsx(ui.note, ui.stackTight)}>
          <div className={ui.rowBetween}>
            <Link href={path} onClick={() => readAt || read.mutate(api('POST /notices/{id}/read', { id }))}>
              {readAt ? subject : <strong>{subject}</strong>}
            </Link>
            <span className={clsx(ui.soft, ui.small)}>{moment(at)}</span>
          </div>
          <p>{sentence}</p>
        </li>
      ))}
    </ul>
  );
}
