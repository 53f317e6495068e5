import { clsx } from 'clsx';
import type { RequestView } from '#libs/contract/src/index.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { useMoments } from '../../ui/use-moments.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from './requests.module.css';

interface Props {
  requestId: string;
  messages: RequestView['messages'];
  /** The other side: `the lab`, or who asked. */
  to: string;
}

/** What team and lab wrote to each other about a request. */
export function Messages({ requestId, messages, to }: Props) {
  const { moment } = useMoments();
  const send = useApiMutation(['requests']);
  const form = useLabForm({
    initial: { body: '' },
    send: (body) => send.mutateAsync(api('POST /requests/{id}/messages', { id: requestId, body })),
    keepAs: `request.${requestId}.message`,
    after: 'clear',
  });
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
      <FormFrame form={form} className={ui.stackTight} label="A message">
        <FormText form={form} name="body" label={`Write to ${to}`} needed="Write something first." rows={2} />
        <div>
          <SubmitButton form={form} className={ui.button}>
            Send
          </SubmitButton>
        </div>
      </FormFrame>
    </section>
  );
}
