import { clsx } from 'clsx';
import { useState } from 'react';
import type { ItemView } from '#libs/contract/src/index.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { call } from '../../api-client/call.js';
import { useSearch } from '../../ui/use-search.js';
import { ui } from '../../ui/styles.js';

const SHOWN = 6;

/** Finds an item by its tag, typed or read by a barcode reader: Enter takes the one whose tag it is. */
export function ItemPicker({
  without,
  frameTag,
  onPick,
}: {
  without: readonly string[];
  frameTag: string;
  onPick: (item: ItemView) => void;
}) {
  const [text, setText, q] = useSearch();
  const items = useApiQuery('items', q ? api('GET /items', { q }) : null);
  const found = (q ? (items.value?.rows ?? []) : []).filter(
    ({ id, kind }) => kind !== 'frame' && !without.includes(id),
  );
  const [trouble, setTrouble] = useState<string>();
  const pick = (item: ItemView) => {
    onPick(item);
    setText('');
  };
  const type = (next: string) => {
    setTrouble(undefined);
    setText(next);
  };
  /** A reader types and enters faster than the list settles, so that Enter asks by itself. */
  async function enter(tag: string) {
    const { rows } = await call(api('GET /items', { q: tag }));
    const exact = rows.find((row) => row.tag.toLowerCase() === tag.toLowerCase());
    if (!exact || exact.kind === 'frame') setTrouble(`No item that is fitted on a frame has the tag ${tag}.`);
    else if (without.includes(exact.id)) setTrouble(`${exact.tag} is on it already.`);
    else pick(exact);
  }
  return (
    <form
      className={ui.stack}
      onSubmit={(event) => {
        event.preventDefault();
        if (text.trim()) enter(text.trim()).catch((error: Error) => setTrouble(error.message));
      }}
    >
      <TextField label="Put on, by its tag" type="search" value={text} onChange={type} wrong={trouble} />
      {q && !trouble && items.state === 'ready' && found.length === 0 && (
        <p className={ui.soft}>The register has no other item that fits “{q}”.</p>
      )}
      {items.state === 'failed' && <ErrorMessage error={items.error} />}
      <ul className={ui.stack}>
        {found.slice(0, SHOWN).map((item) => (
          <FoundItem key={item.id} item={item} frameTag={frameTag} onPick={() => pick(item)} />
        ))}
      </ul>
    </form>
  );
}

function FoundItem({ item, frameTag, onPick }: { item: ItemView; frameTag: string; onPick: () => void }) {
  return (
    <li className={ui.rowBetween}>
      <span>
        <span className={ui.fig}>{item.tag}</span> <span className={clsx(ui.small, ui.soft)}>{item.name}</span>{' '}
        {item.fittedOn && <span className={ui.small}>comes off {item.fittedOn.frameTag}</span>}
      </span>
      <button
        type="button"
        className={clsx(ui.button, ui.buttonSmall)}
        aria-label={`Put ${item.tag} on ${frameTag}`}
        onClick={onPick}
      >
        Put on
      </button>
    </li>
  );
}
