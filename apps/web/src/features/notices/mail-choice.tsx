import type { MailWay } from '#libs/contract/src/index.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

const WAYS: { value: MailWay; label: string }[] = [
  { value: 'at-once', label: 'A mail for each, at once' },
  { value: 'daily', label: 'One mail a day, in the morning' },
  { value: 'off', label: 'No mails' },
];

/** How one hears by mail of what stands in the list anyway. */
export function MailChoice() {
  const toast = useToast();
  const chosen = useApiQuery('notices', api('GET /notices/preferences'));
  const choose = useApiMutation(['notices'], () => toast('Your choice is saved.'));
  return (
    <FetchStates of={chosen} what="your choice">
      {({ mail }) => (
        <div className={ui.stackTight}>
          <SelectField
            label="Mails"
            value={mail}
            choices={WAYS}
            onChange={(value) => choose.mutate(api('PUT /notices/preferences', { body: { mail: value } }))}
            help="They come where the lab has set up a mail server."
          />
          <ErrorMessage error={choose.error} />
        </div>
      )}
    </FetchStates>
  );
}
