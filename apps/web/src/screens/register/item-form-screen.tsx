import { useWatch } from 'react-hook-form';
import { useLocation } from 'wouter';
import type { ItemDetail } from '#libs/contract/src/index.js';
import { ITEM_KINDS } from '#libs/matching/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { FormItemField } from '../../features/register/item-fields-form.js';
import {
  fieldOf,
  fieldsForKind,
  fieldsOf,
  itemBody,
  needsCalibration,
  startOf,
} from '../../features/register/item-typed.js';
import type { ItemTyped } from '../../features/register/item-typed.js';
import { KIND_WORDS } from '../../features/register/item-words.js';
import { FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormNumber } from '../../ui/form/form-number.js';
import { FormSelect } from '../../ui/form/form-select.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';

const KINDS = ITEM_KINDS.map((value) => ({ value, label: KIND_WORDS[value] }));

/** Registers an item, or changes one; the fields follow from its kind. */
export function ItemFormScreen({ id }: { id?: string }) {
  const item = useApiQuery('items', id ? api('GET /items/{id}', { id }) : null);
  if (!id) return <ItemForm />;
  return (
    <FetchStates of={item} what="the item">
      {(value) => <ItemForm key={value.id} item={value} />}
    </FetchStates>
  );
}

function ItemForm({ item }: { item?: ItemDetail }) {
  const form = useItemForm(item);
  return (
    <>
      <TitleBlock
        title={item ? `Change ${item.tag}` : 'Register an item'}
        back={{ to: item ? `/register/items/${item.id}` : '/register/items', label: item ? item.tag : 'Items' }}
      >
        <SubmitButton form={form}>Save</SubmitButton>
      </TitleBlock>
      <FormFrame form={form} label="Item">
        <ItemFields form={form} isNew={!item} />
      </FormFrame>
    </>
  );
}

function useItemForm(item: ItemDetail | undefined): LabForm<ItemTyped> {
  const [, go] = useLocation();
  const toast = useToast();
  const save = useApiMutation<ItemDetail>(['items', 'plan']);
  const form: LabForm<ItemTyped> = useLabForm<ItemTyped>({
    initial: startOf(item),
    fieldOf: (path) => fieldOf(path, form.hook.getValues('kind')),
    send: async (typed) => {
      const body = itemBody(typed);
      const saved = await save.mutateAsync(
        item ? api('PATCH /items/{id}', { id: item.id, body, version: item.version }) : api('POST /items', { body }),
      );
      toast(`${saved.tag} is saved.`);
      go(`/register/items/${saved.id}`);
    },
  });
  return form;
}

function ItemFields({ form, isNew }: { form: LabForm<ItemTyped>; isNew: boolean }) {
  const typed = useWatch({ control: form.control }) as ItemTyped;
  const changeKind = (kind: string) => form.hook.setValue('fields', fieldsForKind(kind, typed.fields));
  return (
    <div className={ui.fields}>
      {isNew && <FormSelect form={form} name="kind" label="Kind" choices={KINDS} onEdit={changeKind} />}
      <FormText form={form} name="serialNumber" label="Serial number" required={false} />
      {needsCalibration(typed) && (
        <FormNumber form={form} name="months" label="Calibration interval" unit="months" min={1} required />
      )}
      {fieldsOf(typed.kind).map((field) => (
        <FormItemField key={`${typed.kind} ${field.path}`} form={form} field={field} />
      ))}
    </div>
  );
}
