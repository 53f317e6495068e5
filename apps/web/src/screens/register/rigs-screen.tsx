import { clsx } from 'clsx';
import { useState } from 'react';
import { Link } from 'wouter';
import { linkWords } from '#libs/contract/src/index.js';
import type { RigView } from '#libs/contract/src/index.js';
import { RigDialog } from '../../features/register/rig-dialog.js';
import { fromTheTop } from '../../features/register/rig-places.js';
import { useHasRole } from '../../features/session/session.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/register/rig-line.module.css';

/** What is fitted on each frame right now, from crosshead to base. */
export function RigsScreen() {
  const mayEdit = useHasRole('manager', 'technician');
  const [editing, setEditing] = useState<string | null>(null);
  const rigs = useApiQuery('items', api('GET /rigs'));
  const chosen = rigs.value?.find(({ frame }) => frame.id === editing);
  return (
    <>
      <TitleBlock title="Rigs" />
      <FetchStates
        of={rigs}
        what="the rigs"
        empty={(value) => value.length === 0 && <Empty>No frame is registered yet.</Empty>}
      >
        {(value) => (
          <table>
            <thead>
              <tr>
                <th>Frame</th>
                <th>Fitted now, from the crosshead down</th>
                <th />
              </tr>
            </thead>
            <tbody>
              {value.map((rig) => (
                <RigRow key={rig.frame.id} rig={rig} onEdit={mayEdit ? () => setEditing(rig.frame.id) : null} />
              ))}
            </tbody>
          </table>
        )}
      </FetchStates>
      {chosen && <RigDialog key={chosen.frame.id} rig={chosen} onClose={() => setEditing(null)} />}
    </>
  );
}

function RigRow({ rig, onEdit }: { rig: RigView; onEdit: (() => void) | null }) {
  const { frame, links } = rig;
  return (
    <tr>
      <th>
        <Link href={`/register/items/${frame.id}`}>
          <span className={ui.fig}>{frame.tag}</span>
        </Link>
        <br />
        <span className={clsx(ui.soft, ui.small)}>{frame.name}</span>
      </th>
      <td>
        {links.length === 0 && <span className={ui.soft}>nothing</span>}
        <ol className={styles.rigLine}>
          {fromTheTop(links).map((link) => (
            <li key={link.role + link.itemId}>
              <Link href={`/register/items/${link.itemId}`} className={ui.fig}>
                {link.tag}
              </Link>
              <br />
              <span className={clsx(ui.small, ui.soft)}>{linkWords(link.role)}</span>
            </li>
          ))}
        </ol>
      </td>
      <td>
        {onEdit && (
          <button
            type="button"
            className={clsx(ui.button, ui.buttonSmall)}
            aria-label={`Change what is on ${frame.tag}`}
            onClick={onEdit}
          >
            Change
          </button>
        )}
      </td>
    </tr>
  );
}
