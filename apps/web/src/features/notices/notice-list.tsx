import { Link } from 'wouter';
import type { NoticeView } from '#libs/contract/src/index.js';
import { moment } from '../../ui/moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';

/** What one has been told, newest first; opening one counts as having read it. */
export function NoticeList({ notices }: { notices: readonly NoticeView[] }) {
  const read = useApiMutation(['notices']);
  return (
    <ul className="stack wide">
      {notices.map(({ id, path, subject, sentence, at, readAt }) => (
        <li key={id} className={readAt ? 'stack tight' : 'note stack tight'}>
          <div className="row between">
            <Link href={path} onClick={() => readAt || read.mutate(api('POST /notices/{id}/read', { id }))}>
              {readAt ? subject : <strong>{subject}</strong>}
            </Link>
            <span className="soft small">{moment(at)}</span>
          </div>
          <p>{sentence}</p>
        </li>
      ))}
    </ul>
  );
}
