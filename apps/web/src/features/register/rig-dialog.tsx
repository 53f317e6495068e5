import { clsx } from 'clsx';
import { useState } from 'react';
import type { ItemView, RigView } from '#libs/contract/src/index.js';
import { Dialog } from '../../ui/dialog.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { useToast } from '../../ui/toasts.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ApiError } from '../../api-client/call.js';
import { ItemPicker } from './item-picker.js';
import { fromTheTop, placeProblems, PLACES, usualPlace } from './rig-places.js';
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
          <FittedLink
            key={link.itemId}
            link={link}
            wrong={places[at] ?? wrong[`links[${at}].itemId`] ?? wrong[`links[${at}].role`]}
            onRole={(role) => change(links.map((each, index) => (index === at ? { ...each, role } : each)))}
            onTakeOff={() => change(links.filter((_, index) => index !== at))}
          />
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

/** An item on the frame: its place, and the way to take it off. */
function FittedLink({
  link,
  wrong,
  onRole,
  onTakeOff,
}: {
  link: Fitted;
  wrong: string | undefined;
  onRole: (role: string) => void;
  onTakeOff: () => void;
}) {
  return (
    <div className={ui.rowBetween}>
      <div>
        <strong className={ui.fig}>{link.tag}</strong>
        <br />
        <span className={clsx(ui.small, ui.soft)}>{link.name}</span>
      </div>
      <div className={ui.row}>
        <SelectField
          label={`Place of ${link.tag}`}
          value={link.role}
          onChange={onRole}
          choices={choicesFor(link.role)}
          wrong={wrong}
        />
        <button
          type="button"
          className={clsx(ui.button, ui.buttonSmall)}
          aria-label={`Take ${link.tag} off`}
          onClick={onTakeOff}
        >
          Take off
        </button>
      </div>
    </div>
  );
}

function choicesFor(role: string) {
  const known = PLACES.some((place) => place === role) ? PLACES : [role, ...PLACES];
  return known.map((value) => ({ value, label: value.replaceAll('-', ' ') }));
}
