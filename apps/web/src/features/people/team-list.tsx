import { clsx } from 'clsx';
import { useState } from 'react';
import type { TeamRef } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { Dialog } from '../../ui/dialog.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { useToast } from '../../ui/toasts.js';

/** The product teams that ask for tests. A request is seen by its team and by the lab. */
export function TeamList({ mayEdit }: { mayEdit: boolean }) {
  const teams = useApiQuery('people', api('GET /teams'));
  const [editing, setEditing] = useState<TeamRef | 'new' | null>(null);
  return (
    <section className={ui.stack} aria-label="Teams">
      <div className={ui.rowBetween}>
        <h2>Teams</h2>
        {mayEdit && (
          <button type="button" className={ui.button} onClick={() => setEditing('new')}>
            Add a team
          </button>
        )}
      </div>
      <FetchStates
        of={teams}
        what="the teams"
        empty={({ rows }) =>
          rows.length === 0 && <Empty>There is no team yet. A request is asked for by a team, so add the first.</Empty>
        }
      >
        {({ rows }) => (
          <ul>
            {rows.map((team) => (
              <li key={team.id} className={clsx(ui.rowBetween, ui.ruled)}>
                {team.name}
                {mayEdit && (
                  <button
                    type="button"
                    className={ui.buttonSmall}
                    aria-label={`Rename ${team.name}`}
                    onClick={() => setEditing(team)}
                  >
                    Rename
                  </button>
                )}
              </li>
            ))}
          </ul>
        )}
      </FetchStates>
      {editing && <TeamDialog team={editing === 'new' ? null : editing} onClose={() => setEditing(null)} />}
    </section>
  );
}

function TeamDialog({ team, onClose }: { team: TeamRef | null; onClose: () => void }) {
  const toast = useToast();
  const save = useApiMutation<TeamRef>(['people', 'session']);
  const form = useLabForm({
    initial: { name: team?.name ?? '' },
    send: async ({ name }) => {
      const kept = await save.mutateAsync(
        team ? api('PATCH /teams/{id}', { id: team.id, body: { name } }) : api('POST /teams', { body: { name } }),
      );
      toast(team ? `${team.name} is now ${kept.name}.` : `${kept.name} is a team.`);
      onClose();
    },
  });
  return (
    <Dialog title={team ? `Rename ${team.name}` : 'Add a team'} onClose={onClose}>
      <FormFrame form={form}>
        <FormText form={form} name="name" label="Name of the team" called="The name" required />
        <div>
          <SubmitButton form={form}>{team ? 'Rename it' : 'Add it'}</SubmitButton>
        </div>
      </FormFrame>
    </Dialog>
  );
}
