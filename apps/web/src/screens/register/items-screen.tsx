import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import type { CalibrationStatus, ItemView } from '#libs/contract/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { ITEM_KINDS } from '#libs/matching/src/index.js';
import { KIND_WORDS, STATUS_CHOICES, StateWord, StatusWord, capacityText } from '../../features/register/item-words.js';
import { useSearch } from '../../ui/use-search.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiPages } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Every registered piece of equipment. */
export function ItemsScreen() {
  const mayEdit = useHasRole('manager');
  const [kind, setKind] = useState<ItemKind | ''>('');
  const [status, setStatus] = useState<CalibrationStatus | ''>('');
  const [text, setText, q] = useSearch();
  const items = useApiPages('items', api('GET /items', { kind, status, q }));
  return (
    <>
      <TitleBlock
        title="Items"
        cells={[['shown', items.value ? `${items.value.length}${items.more ? ' and more' : ''}` : '…']]}
      >
        {mayEdit && (
          <Link className={ui.buttonMain} href="/register/items/new">
            Register an item
          </Link>
        )}
      </TitleBlock>
      <div className={ui.filters}>
        <TextField label="Find" type="search" value={text} onChange={setText} placeholder="tag, name, serial number" />
        <SelectField
          label="Kind"
          none="any"
          value={kind}
          onChange={setKind}
          choices={ITEM_KINDS.map((value) => ({ value, label: KIND_WORDS[value] }))}
        />
        <SelectField label="Calibration" none="any" value={status} onChange={setStatus} choices={STATUS_CHOICES} />
      </div>
      <FetchStates
        of={items}
        what="the items"
        empty={(value) =>
          value.length === 0 && (
            <Empty>
              {q || kind || status
                ? 'No item fits this search.'
                : 'Nothing is registered yet. Register frames first, then cells and grips; or import a list.'}
            </Empty>
          )
        }
      >
        {(value) => <ItemTable items={value} />}
      </FetchStates>
      {items.more && (
        <p style={{ paddingTop: '1rem' }}>
          <button type="button" className={ui.button} onClick={items.more}>
            Show more
          </button>
        </p>
      )}
    </>
  );
}

function ItemTable({ items }: { items: readonly ItemView[] }) {
  const { day } = useMoments();
  return (
    <div className={ui.scrollX}>
      <table>
        <thead>
          <tr>
            <th>Tag</th>
            <th>Item</th>
            <th>Kind</th>
            <th className={ui.num}>Carries</th>
            <th>Where</th>
            <th>Calibration</th>
            <th>Due</th>
          </tr>
        </thead>
        <tbody>
          {items.map((item) => (
            <tr key={item.id}>
              <th className={ui.fig}>
                <Link href={`/register/items/${item.id}`}>{item.tag}</Link>
              </th>
              <td>
                {item.name} <StateWord state={item.state} />
                <br />
                <span className={clsx(ui.soft, ui.small)}>{item.model}</span>
              </td>
              <td>{KIND_WORDS[item.kind]}</td>
              <td className={ui.num}>{capacityText(item)}</td>
              <td>{item.fittedOn ? `on ${item.fittedOn.frameTag}` : item.place}</td>
              <td>
                <StatusWord status={item.calibrationStatus} />
              </td>
              <td>{item.needsCalibration ? day(item.calibrationDueAt) : ''}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
