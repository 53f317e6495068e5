import { Link } from 'wouter';
import type { RequestLine } from '#libs/contract/src/index.js';
import { PromiseSpan } from './promise.js';
import { REQUEST_STATE_WORDS, REQUEST_WAY, placeOf } from './words.js';

/** One line each: where it is, what it waits for, when it will be done. */
export function RequestLines({ lines }: { lines: readonly RequestLine[] }) {
  return (
    <ul>
      {lines.map((line) => (
        <li key={line.id} className="request-line">
          <Link href={`/requests/${line.id}`} className="fig">
            {line.reference}
          </Link>
          <span>
            <Link href={`/requests/${line.id}`}>
              <strong>{line.title}</strong>
            </Link>
            <br />
            <span className="soft small">
              {line.methods.join(', ')} · {line.specimens} specimens · {line.team.name}
            </span>
          </span>
          <span className="where">
            <span className="row">
              <Scale state={line.state} />
              <strong className="small">{REQUEST_STATE_WORDS[line.state]}</strong>
              {line.late && <span className="word act">▲ late</span>}
              {!!line.unread && <span className="word">{line.unread} new</span>}
            </span>
            <span className="small">{line.waitsFor}</span>
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
    <span className={aside ? 'scale aside' : 'scale'} aria-hidden="true">
      {REQUEST_WAY.map(({ key }, index) => (
        <i key={key} className={index < here ? 'gone' : index === here ? 'here' : ''} />
      ))}
    </span>
  );
}
