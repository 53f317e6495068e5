import { clsx } from 'clsx';
import { Link } from 'wouter';
import type { RequestLine } from '#libs/contract/src/index.js';
import { PromiseSpan } from './promise.js';
import { REQUEST_STATE_WORDS, REQUEST_WAY, placeOf } from './words.js';
import { ui } from '../../ui/styles.js';
import styles from './requests.module.css';

/** One line each: where it is, what it waits for, when it will be done. */
export function RequestLines({ lines }: { lines: readonly RequestLine[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.id} className={styles.requestLine}>
          <Link href={`/requests/${line.id}`} className={ui.fig}>
            {line.reference}
          </Link>
          <span>
            <Link href={`/requests/${line.id}`}>
              <strong>{line.title}</strong>
            </Link>
            <br />
            <span className={clsx(ui.soft, ui.small)}>
              {line.methods.join(', ')} · {line.specimens} specimens · {line.team.name}
            </span>
          </span>
          <span className={styles.where}>
            <span className={ui.row}>
              <Scale state={line.state} />
              <strong className={ui.small}>{REQUEST_STATE_WORDS[line.state]}</strong>
              {line.late && <span className={ui.badgeAct}>▲ late</span>}
              {!!line.unread && <span className={ui.badge}>{line.unread} new</span>}
            </span>
            <span className={ui.small}>{line.waitsFor}</span>
          </span>
          <PromiseSpan {...line} />
        </li>
      ))}
    </ul>
  );
}

function Scale({ state }: { state: RequestLine['state'] }) {
  const { at, aside } = placeOf(state);
  const here = REQUEST_WAY.findIndex(({ key }) => key === at);
  return (
    <span className={aside ? clsx(styles.scale, styles.aside) : styles.scale} aria-hidden="true">
      {REQUEST_WAY.map(({ key }, index) => (
        <i key={key} className={index < here ? styles.gone : index === here ? styles.here : undefined} />
      ))}
    </span>
  );
}
