import { clsx } from 'clsx';
import { useState } from 'react';
import type { RequestView } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from './requests.module.css';

/** What team and lab wrote to each other about a request. */
export function Messages({ requestId, messages }: { requestId: string; messages: RequestView['messages'] }) {
  const { moment } = useMoments();
  const [body, setBody] = useState('');
  const send = useApiMutation(['requests'], () => setBody(''));
  return (
    <section className={ui.stackTight}>
      <h2>Messages</h2>
      <ul className={styles.messages}>
        {messages.map((message) => (
          <li key={message.id}>
            <strong>{message.author.name}</strong> <span className={clsx(ui.soft, ui.small)}>{moment(message.at)}</span>
            <p>{message.body}</p>
          </li>
        ))}
      </ul>
      <form
        className={ui.stackTight}
        onSubmit={(event) => {
          event.preventDefault();
          send.mutate(api('POST /requests/{id}/messages', { id: requestId, body: { body } }));
        }}
      >
        <TextField label="Write to the other side" rows={2} value={body} onChange={setBody} />
        <ErrorMessage error={send.error} />
        <div>
          <button type="submit" className={ui.button} disabled={!body.trim() || send.isPending}>
            Send
          </button>
        </div>
      </form>
    </section>
  );
}
