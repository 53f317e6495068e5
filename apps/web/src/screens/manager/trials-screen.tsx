import { Link, useLocation } from 'wouter';
import type { TrialView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useApiMutation, useApiQuery } from '../../api-client/queries.js';
import { Empty, FetchStates } from '../../ui/fetch-states.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { FormText } from '../../ui/form/form-text.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';

/** What-if copies of the plan. */
export function TrialsScreen() {
  const trials = useApiQuery('plan', api('GET /trials'));
  return (
    <>
      <TitleBlock title="Trial plans" />
      <NewTrial />
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

function NewTrial() {
  const [, go] = useLocation();
  const create = useApiMutation<TrialView>(['plan'], ({ id }) => go(`/planning/trials/${id}`));
  const form = useLabForm({
    initial: { name: '' },
    send: (body) => create.mutateAsync(api('POST /trials', { body })),
  });
  return (
    <FormFrame form={form} className={ui.filters} label="New trial plan">
      <div className={ui.wideField}>
        <FormText
          form={form}
          name="name"
          label="What do you want to try?"
          placeholder="e.g. FR-30K down until Thursday"
          needed="Give it a name."
        />
      </div>
      <SubmitButton form={form}>Start a trial plan</SubmitButton>
    </FormFrame>
  );
}
