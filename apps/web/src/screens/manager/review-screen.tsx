import type { BatchView, PreviewBody } from '#libs/contract/src/index.js';
import { AdviceList, Candidates, NeedsList, Refusals } from '../../features/matching/answer-views.js';
import { LadderDrawing } from '../../features/matching/force-ladder.js';
import { usePreview } from '../../features/matching/use-preview.js';
import { BatchTable } from '../../features/requests/batch-table.js';
import { Messages } from '../../features/requests/messages.js';
import { REQUEST_STATE_WORDS } from '../../features/requests/words.js';
import { TrainDrawing } from '../../features/train/train-drawing.js';
import { FetchStates, ErrorMessage, Loading } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery } from '../../api-client/queries.js';
import { ui } from '../../ui/styles.js';
import { Review } from './review-form.js';

/** The review of a request before it is accepted: every point of ISO/IEC 17025:2017, 7.1 is settled here. */
export function ReviewScreen({ id }: { id: string }) {
  const { moment } = useMoments();
  const request = useApiQuery('requests', api('GET /requests/{id}', { id }));
  return (
    <FetchStates of={request} what="the request">
      {(value) => (
        <>
          <TitleBlock
            title={`${value.reference} ${value.title}`}
            back={{ to: '/planning/intake', label: 'Intake' }}
            cells={[
              ['requested by', `${value.requester.name}, ${value.team.name}`],
              ['due', moment(value.dueAt)],
              ['state', REQUEST_STATE_WORDS[value.state]],
            ]}
          />
          <div className={ui.splitMainLeft}>
            <div className={ui.stackWide}>
              <p className={ui.note}>{value.purpose || 'No purpose is given.'}</p>
              <BatchTable request={value} />
              {value.batches.map((batch) => (
                <Capability key={batch.id} batch={batch} />
              ))}
            </div>
            <div className={ui.stackWide}>
              <Review request={value} />
              <Messages requestId={value.id} messages={value.messages} to={value.requester.name} />
            </div>
          </div>
        </>
      )}
    </FetchStates>
  );
}

/** Whether the lab can do one batch today, with its trains and reasons. */
function Capability({ batch }: { batch: BatchView }) {
  const body: PreviewBody = { methodId: batch.method.id, materialId: batch.material?.id ?? null, ask: batch.ask };
  const { answer, error } = usePreview(body);
  return (
    <section className={ui.stack}>
      <h2>Can the lab do {batch.label || `batch ${batch.position}`}?</h2>
      <ErrorMessage error={error} />
      {!answer && !error && <Loading what="the load trains" />}
      {answer && (
        <>
          <p className={answer.candidates.length > 0 ? ui.noteFit : ui.noteAct}>
            {answer.candidates.length > 0
              ? `Yes: ${answer.candidates.length} load trains pass every rule.`
              : 'No load train passes every rule.'}
          </p>
          {answer.ladder && <LadderDrawing ladder={answer.ladder} />}
          <Candidates
            candidates={answer.candidates}
            items={answer.items}
            picture={(index) => answer.drawings[index] && <TrainDrawing segments={answer.drawings[index].segments} />}
          />
          {answer.advice.length > 0 && (
            <details>
              <summary>What would {answer.candidates.length > 0 ? 'open more frames' : 'make it fit'}</summary>
              <AdviceList advice={answer.advice} items={answer.items} />
            </details>
          )}
          <details>
            <summary>What the test needs</summary>
            <NeedsList needs={answer.needs} />
          </details>
          {answer.refusals.length > 0 && (
            <details>
              <summary>Why not the other {answer.refusals.length} frames</summary>
              <Refusals refusals={answer.refusals} items={answer.items} />
            </details>
          )}
        </>
      )}
    </section>
  );
}
