import type { MailWay } from '#libs/contract/src/index.js';
import { Fetched, Refusal } from '../../ui/faces.js';
import { SelectField } from '../../ui/fields.js';
import { useTell } from '../../ui/notices.js';
import { api } from '../../wire/api.js';
import { useAsk, useSend } from '../../wire/asking.js';

const WAYS: { value: MailWay; label: string }[] = [
  { value: 'at-once', label: 'A mail for each, at once' },
  { value: 'daily', label: 'One mail a day, in the morning' },
  { value: 'off', label: 'No mails' },
];

/** How one hears by mail of what stands in the list anyway. */
export function MailChoice() {
  const tell = useTell();
  const chosen = useAsk('notices', api('GET /notices/preferences'));
  const choose = useSend(['notices'], () => tell('Your choice is kept.'));
  return (
    <Fetched of={chosen} what="your choice">
      {({ mail }) => (
        <div className="stack tight">
          <SelectField
            label="Mails"
            value={mail}
            choices={WAYS}
            onChange={(value) => choose.mutate(api('PUT /notices/preferences', { body: { mail: value } }))}
            help="They come where the lab has set up a mail server."
          />
          <Refusal error={choose.error} />
        </div>
      )}
    </Fetched>
  );
}
