import { useState } from 'react';
import { Link, useLocation } from 'wouter';
import type { TrialView } from '#libs/contract/src/index.js';
import { Empty, FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { TextField } from '../../ui/fields/text-field.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** What-if copies of the plan. */
export function TrialsScreen() {
  const trials = useApiQuery('plan', api('GET /trials'));
  const [name, setName] = useState('');
  const [, go] = useLocation();
  const create = useApiMutation<TrialView>(['plan'], ({ id }) => go(`/planning/trials/${id}`));
  return (
    <>
      <TitleBlock title="Trial plans" />
      <form
        className={ui.filters}
        onSubmit={(event) => {
          event.preventDefault();
          create.mutate(api('POST /trials', { body: { name } }));
        }}
      >
        <TextField
          label="What do you want to try?"
          value={name}
          onChange={setName}
          placeholder="e.g. FR-30K down until Thursday"
        />
        <button type="submit" className={ui.buttonMain} disabled={!name.trim() || create.isPending}>
          Start a trial plan
        </button>
      </form>
      <ErrorMessage error={create.error} />
      <FetchStates
        of={trials}
        what="the trial plans"
        empty={(value) =>
          value.length === 0 && (
            <Empty>
              No trial is open. A trial plan is a copy: move jobs, take a frame down, add a shift, see the difference,
              then publish or drop it.
            </Empty>
          )
        }
      >
        {(value) => (
          <table>
            <thead>
              <tr>
                <th>Trial</th>
                <th>Based on</th>
                <th>Changes</th>
                <th>State</th>
              </tr>
            </thead>
            <tbody>
              {value.map((trial) => (
                <tr key={trial.id}>
                  <th>
                    <Link href={`/planning/trials/${trial.id}`}>{trial.name}</Link>
                  </th>
                  <td className={ui.fig}>v{trial.basedOnVersion}</td>
                  <td className={ui.num} style={{ textAlign: 'left' }}>
                    {trial.edits.length}
                  </td>
                  <td>
                    {trial.state}
                    {trial.stale && trial.state === 'open' && <span className={ui.act}> ▲ the plan has moved on</span>}
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </FetchStates>
    </>
  );
}
