import { WEBHOOK_KINDS } from '#libs/contract/src/index.js';
import type { WebhookKind, WebhookView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { FormTicks } from '../../ui/form/form-ticks.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';

const KINDS = WEBHOOK_KINDS.map((kind) => ({ value: kind, label: kind.replace('/', ' ').replaceAll('-', ' ') }));

/** Names a program and what it is told of; the secret that signs its messages is shown once. */
export function NewWebhook() {
  const add = useApiMutation<WebhookView>(['settings']);
  const form = useLabForm<{ url: string; kinds: string[] }>({
    initial: { url: '', kinds: [] },
    check: ({ kinds }) => (kinds.length > 0 ? {} : { kinds: 'Choose one kind at least.' }),
    send: ({ url, kinds }) => add.mutateAsync(api('POST /webhooks', { body: { url, kinds: kinds as WebhookKind[] } })),
    after: 'clear',
  });
  return (
    <FormFrame form={form} label="New address">
      <FormText
        form={form}
        name="url"
        label="Address"
        type="url"
        needed="Give the address of the program."
        help="Begins with https."
      />
      <FormTicks form={form} name="kinds" label="What it is told of" choices={KINDS} />
      {add.data?.secret && (
        <div className={ui.noteFit} role="status">
          <strong>Copy this now, it is not shown again. It signs every message:</strong>
          <p>
            <code>{add.data.secret}</code>
          </p>
        </div>
      )}
      <div>
        <SubmitButton form={form} className={ui.button}>
          Add
        </SubmitButton>
      </div>
    </FormFrame>
  );
}
