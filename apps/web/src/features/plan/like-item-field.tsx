import type { ItemView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { TextField } from '../../ui/fields/text-field.js';
import { FormSelect } from '../../ui/form/form-select.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useSearch } from '../../ui/use-search.js';
import type { EditTyped } from './trial-edit-typed.js';

/** Finds one of all items of the register, but the frames, by its tag, name or serial number. */
export function LikeItemField({ form }: { form: LabForm<EditTyped> }) {
  const [text, setText, settled] = useSearch();
  const found = useApiQuery('items', api('GET /items', { q: settled }));
  const items = (found.value?.rows ?? []).filter(({ kind }) => kind !== 'frame');
  return (
    <>
      <TextField label="Find an item" type="search" value={text} onChange={setText} help={helpOf(items, found.value)} />
      <FormSelect
        form={form}
        name="likeItemId"
        label="Like"
        none="Choose …"
        choices={items.map(({ id, tag, name }) => ({ value: id, label: `${tag} ${name}` }))}
      />
    </>
  );
}

function helpOf(items: readonly ItemView[], page: { next: string | null } | undefined): string {
  if (!page) return 'Looking …';
  if (page.next) return 'More items fit than the list shows: type more of the tag or the name.';
  return items.length === 1 ? 'One item fits.' : `${items.length} items fit.`;
}
