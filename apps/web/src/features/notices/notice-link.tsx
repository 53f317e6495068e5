import { Link, useLocation } from 'wouter';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** The way to what one has been told, with how much of it is new. */
export function NoticeLink() {
  const [path] = useLocation();
  const notices = useApiQuery('notices', api('GET /notices'));
  const unread = notices.value?.unread ?? 0;
  return (
    <Link href="/notices" aria-current={path === '/notices' ? 'page' : undefined}>
      Notices{unread > 0 && <strong className={ui.act}> ▲ {unread} new</strong>}
    </Link>
  );
}
