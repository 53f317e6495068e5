import { Link, useLocation } from 'wouter';
import type { NoticesView } from '#libs/contract/src/index.js';
import { useAsk } from '../../wire/asking.js';

/** The way to what one has been told, with how much of it is new. */
export function NoticeLink() {
  const [path] = useLocation();
  const notices = useAsk<NoticesView>('notices', '/notices');
  const unread = notices.value?.unread ?? 0;
  return (
    <Link href="/notices" aria-current={path === '/notices' ? 'page' : undefined}>
      Notices{unread > 0 && <strong className="act"> ▲ {unread} new</strong>}
    </Link>
  );
}
