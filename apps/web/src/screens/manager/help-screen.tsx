import { useState } from 'react';
import type { HelpView, TaskView } from '#libs/contract/src/index.js';
import { TaskWatch } from '../../features/plan/task-watch.js';
import { Empty, ErrorMessage } from '../../ui/fetch-states.js';
import { span } from '../../ui/moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiMutation } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';

/** Single changes, each tried by planning anew, ranked by the lateness that they would take away. */
export function HelpScreen() {
  const [taskId, setTaskId] = useState<string | null>(null);
  const ask = useApiMutation<TaskView>(['tasks'], ({ id }) => setTaskId(id));
  return (
    <>
      <TitleBlock title="What would help most">
        <button
          type="button"
          className={ui.buttonMain}
          disabled={ask.isPending}
          onClick={() => ask.mutate(api('POST /plan/help'))}
        >
          {taskId ? 'Work it out again' : 'Work it out'}
        </button>
      </TitleBlock>
      <ErrorMessage error={ask.error} />
      {!taskId && (
        <Empty>
          One more unit of a scarce item, an extra shift on a frame, an earlier calibration visit: each is tried by
          planning the whole lab anew. It takes a minute or so, changes nothing, and can be stopped.
        </Empty>
      )}
      {taskId && (
        <TaskWatch id={taskId} title="the trials">
          {({ result }) => <Suggestions help={result as HelpView | null | undefined} />}
        </TaskWatch>
      )}
    </>
  );
}

function Suggestions({ help }: { help: HelpView | null | undefined }) {
  if (!help || help.suggestions.length === 0)
    return (
      <Empty>
        No single change would take lateness away. The plan is held by work itself, not by one item, shift or visit.
      </Empty>
    );
  return (
    <table>
      <thead>
        <tr>
          <th>Change</th>
          <th className={ui.num}>Weighted lateness less</th>
          <th className={ui.num}>Late jobs fewer</th>
        </tr>
      </thead>
      <tbody>
        {help.suggestions.map(({ what, savesWeightedHours, lateJobsFewer }) => (
          <tr key={what}>
            <th>{what}</th>
            <td className={ui.num}>{span(savesWeightedHours * 60)}</td>
            <td className={ui.num}>{lateJobsFewer}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
