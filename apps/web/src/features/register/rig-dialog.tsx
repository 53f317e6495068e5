import { clsx } from 'clsx';
import { useState } from 'react';
import type { ItemView, RigView } from '#libs/contract/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TextField } from '../../ui/fields/text-field.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { call, ApiError } from '../../api-client/call.js';
import { fromTheTop, placeProblems, PLACES, usualPlace } from './rig-places.js';
import { useSearch } from '../../ui/use-search.js';
import { ui } from '../../ui/styles.js';

type Fitted = Pick<RigView['links'][number], 'role' | 'itemId' | 'tag' | 'name'>;

/** Says what is on a frame, as somebody found it. */
export function RigDialog({ rig, onClose }: { rig: RigView; onClose: () => void }) {
  const { frame } = rig;
  const toast = useToast();
  const [seen] = useState(rig.version); // the list behind may learn of another one meanwhile
  const [links, setLinks] = useState<Fitted[]>(fromTheTop(rig.links));
  const save = useApiMutation(['items', 'plan', 'jobs'], () => {
    toast(`What is on ${frame.tag} is kept. A new plan is on its way.`);
    onClose();
  });
  const wrong = save.error instanceof ApiError ? save.error.fields : {};
  const places = placeProblems(links);
  function change(next: Fitted[]) {
    setLinks(next);
    save.reset(); // what was refused is told by the place in the list, which may be another one now
  }
  const add = (item: ItemView) => {
    const role = usualPlace(
      item.kind,
      links.map((link) => link.role),
    );
    change([...links, { role, itemId: item.id, tag: item.tag, name: item.name }]);
  };
  return (
    <Dialog title={`What is on ${frame.tag}`} onClose={onClose} wide>
      {links.length === 0 && <p className={ui.soft}>Nothing is on it.</p>}
      <div className={ui.stack}>
        {links.map((link, at) => (
          <div key={link.itemId} className={ui.rowBetween}>
            <div>
              <strong className={ui.fig}>{link.tag}</strong>
              <br />
              <span className={clsx(ui.small, ui.soft)}>{link.name}</span>
            </div>
            <div className={ui.row}>
              <SelectField
                label={`Place of ${link.tag}`}
                value={link.role}
                onChange={(role) => change(links.map((each, index) => (index === at ? { ...each, role } : each)))}
                choices={choicesFor(link.role)}
                wrong={places[at] ?? wrong[`links[${at}].itemId`] ?? wrong[`links[${at}].role`]}
              />
              <button
                type="button"
                className={clsx(ui.button, ui.buttonSmall)}
                aria-label={`Take ${link.tag} off`}
                onClick={() => change(links.filter((_, index) => index !== at))}
              >
                Take off
              </button>
            </div>
          </div>
        ))}
      </div>
      <ItemPicker without={links.map(({ itemId }) => itemId)} frameTag={frame.tag} onPick={add} />
      <ErrorMessage error={save.error} />
      <div>
        <button
          type="button"
          className={ui.buttonMain}
          disabled={save.isPending || places.some(Boolean)}
          onClick={() =>
            save.mutate(
              api('PUT /rigs/{frameId}', {
                frameId: frame.id,
                version: seen,
                body: { links: links.map(({ role, itemId }) => ({ role, itemId })) },
              }),
            )
          }
        >
          Keep this for {frame.tag} and plan anew
        </button>
      </div>
    </Dialog>
  );
}

function choicesFor(role: string) {
  const known = PLACES.some((place) => place === role) ? PLACES : [role, ...PLACES];
  return known.map((value) => ({ value, label: value.replaceAll('-', ' ') }));
}

const SHOWN = 6;

/** Finds an item by its tag, typed or read by a barcode reader: Enter takes the one whose tag it is. */
function ItemPicker({
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
          <li key={item.id} className={ui.rowBetween}>
            <span>
              <span className={ui.fig}>{item.tag}</span> <span className={clsx(ui.small, ui.soft)}>{item.name}</span>{' '}
              {item.fittedOn && <span className={ui.small}>comes off {item.fittedOn.frameTag}</span>}
            </span>
            <button
              type="button"
              className={clsx(ui.button, ui.buttonSmall)}
              aria-label={`Put ${item.tag} on ${frameTag}`}
              onClick={() => pick(item)}
            >
              Put on
            </button>
          </li>
        ))}
      </ul>
    </form>
  );
}
