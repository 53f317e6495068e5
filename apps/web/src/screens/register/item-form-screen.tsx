import { useState } from 'react';
import { useLocation } from 'wouter';
import type { ItemDetail, SaveItemBody } from '#libs/contract/src/index.js';
import { ITEM_FIELDS, ITEM_KINDS } from '#libs/matching/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { ItemFieldInput, typedOf, valueOf } from '../../features/register/item-fields-form.js';
import type { FormTyped } from '../../features/register/item-fields-form.js';
import { KIND_WORDS } from '../../features/register/item-words.js';
import { readPath, withPath } from '../../features/register/paths.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

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

/** The state has its own act, with a reason. */
const fieldsOf = (kind: ItemKind) => ITEM_FIELDS[kind].filter(({ path }) => path !== 'state');

function startOf(kind: ItemKind, from: ItemDetail | undefined): FormTyped {
  return Object.fromEntries(fieldsOf(kind).map((field) => [field.path, typedOf(field, readPath(from, field.path))]));
}

function ItemForm({ item }: { item?: ItemDetail }) {
  const [, go] = useLocation();
  const toast = useToast();
  const [kind, setKind] = useState<ItemKind>(item?.kind ?? 'grip');
  const [typed, setTyped] = useState<FormTyped>(() => startOf(kind, item));
  const [serialNumber, setSerialNumber] = useState(item?.serialNumber ?? '');
  const [months, setMonths] = useState(String(item?.calibrationIntervalMonths ?? 12));
  const save = useApiMutation<ItemDetail>(['items', 'plan'], (saved) => {
    toast(`${saved.tag} is kept.`);
    go(`/register/items/${saved.id}`);
  });
  const wrong = save.error instanceof ApiError ? save.error.fields : {};
  const fields = fieldsOf(kind);
  const needsCalibration = fields.some(
    (field) => field.path === 'needsCalibration' && valueOf(field, typed[field.path] ?? { value: false }) === true,
  );
  function submit() {
    let body: Record<string, unknown> = {
      kind,
      serialNumber,
      ratings: {},
      details: {},
      calibrationIntervalMonths: needsCalibration ? Number(months) : null,
    };
    for (const field of fields) body = withPath(body, field.path, valueOf(field, typed[field.path] ?? { value: null }));
    const kept = withoutEmptyRatings(body as unknown as SaveItemBody);
    save.mutate(
      item
        ? api('PATCH /items/{id}', { id: item.id, body: kept, version: item.version })
        : api('POST /items', { body: kept }),
    );
  }
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        submit();
      }}
    >
      <TitleBlock
        title={item ? `Change ${item.tag}` : 'Register an item'}
        back={{ to: item ? `/register/items/${item.id}` : '/register/items', label: item ? item.tag : 'Items' }}
      >
        <button type="submit" className={ui.buttonMain} disabled={save.isPending}>
          Keep
        </button>
      </TitleBlock>
      <div className={ui.stackWide}>
        <ErrorMessage error={save.error} />
        <div className={ui.fields}>
          {!item && (
            <SelectField
              label="Kind"
              value={kind}
              onChange={(next) => {
                const chosen = next;
                setKind(chosen);
                setTyped({
                  ...startOf(chosen, undefined),
                  ...Object.fromEntries(Object.entries(typed).filter(([path]) => !path.startsWith('details.'))),
                });
              }}
              choices={ITEM_KINDS.map((value) => ({ value, label: KIND_WORDS[value] }))}
            />
          )}
          <TextField
            label="Serial number"
            required={false}
            value={serialNumber}
            onChange={setSerialNumber}
            wrong={wrong['serialNumber']}
          />
          {needsCalibration && (
            <TextField
              label="Calibration interval, months"
              type="number"
              value={months}
              onChange={setMonths}
              wrong={wrong['calibrationIntervalMonths']}
            />
          )}
          {fields.map((field) => (
            <ItemFieldInput
              key={field.path}
              field={field}
              typed={typed[field.path] ?? { value: null }}
              onChange={(next) => setTyped({ ...typed, [field.path]: next })}
              wrong={wrong[field.path]}
            />
          ))}
        </div>
      </div>
    </form>
  );
}

function withoutEmptyRatings(body: SaveItemBody): SaveItemBody {
  return {
    ...body,
    ratings: Object.fromEntries(Object.entries(body.ratings).filter(([, points]) => points.length > 0)),
  };
}
