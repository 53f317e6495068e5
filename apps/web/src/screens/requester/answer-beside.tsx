import { clsx } from 'clsx';
import type { BatchBody, LandingView } from '#libs/contract/src/index.js';
import { AdviceList, Candidates, NeedsList, Refusals } from '../../features/matching/answer-views.js';
import { LadderDrawing } from '../../features/matching/force-ladder.js';
import { useLanding } from '../../features/matching/use-preview.js';
import type { Preview } from '../../features/matching/use-preview.js';
import { TrainDrawing } from '../../features/train/train-drawing.js';
import { Empty, FetchFailed } from '../../ui/fetch-states.js';
import { useMoments } from '../../ui/use-moments.js';
import { ApiError } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';
import matching from '../../features/matching/matching.module.css';

interface Props {
  preview: Preview;
  chosen: boolean;
  missing: readonly string[];
  /** Whether a figure of the form cannot be read or lies out of its bounds. */
  unreadable: boolean;
  confirmed: readonly string[];
  onConfirm: (name: string) => void;
  batches: BatchBody[] | null;
}

/** What the lab can do about the batch as it is typed: verdict, ladder, likely finish, needs, trains, reasons, advice. */
export function AnswerBeside({ preview, chosen, missing, unreadable, confirmed, onConfirm, batches }: Props) {
  const { answer } = preview;
  const landing = useLanding(batches);
  if (!chosen || !answer || hasFailed(preview))
    return <NotYet preview={preview} chosen={chosen} missing={missing} unreadable={unreadable} />;
  const { candidates, refusals, advice, items, drawings } = answer;
  return (
    <div
      className={preview.busy || preview.error || unreadable ? clsx(ui.stackWide, matching.stale) : ui.stackWide}
      aria-live="polite"
    >
      <Verdict answer={answer} />
      {answer.ladder && <LadderDrawing ladder={answer.ladder} />}
      {landing.data && <Landing landing={landing.data} />}
      {candidates.length === 0 && advice.length > 0 && (
        <section>
          <h2>What would make it fit</h2>
          <AdviceList advice={advice} items={items} />
        </section>
      )}
      {candidates.length === 0 && refusals.length > 0 && (
        <section>
          <h2>Why no frame fits</h2>
          <Refusals refusals={refusals} items={items} />
        </section>
      )}
      {candidates.length > 0 && (
        <section>
          <h2>Load trains, best first</h2>
          <Candidates
            candidates={candidates}
            items={items}
            picture={(index) => drawings[index] && <TrainDrawing segments={drawings[index].segments} />}
          />
        </section>
      )}
      <section>
        <h2>What the test needs</h2>
        <NeedsList needs={answer.needs} confirmed={confirmed} onConfirm={onConfirm} />
      </section>
      {candidates.length > 0 && refusals.length > 0 && (
        <section>
          <h2>Why not the others</h2>
          <Refusals refusals={refusals} items={items} />
        </section>
      )}
      {candidates.length > 0 && advice.length > 0 && (
        <section>
          <h2>What would open more frames</h2>
          <AdviceList advice={advice} items={items} />
        </section>
      )}
    </div>
  );
}

/** No answer was given, as against one that names what is wrong with a figure. */
function hasFailed({ error, wrong }: Preview): boolean {
  return !!error && !(error instanceof ApiError && Object.keys(wrong).length > 0);
}

/** Why there is no answer to show, and what to do about it. */
function NotYet({
  preview,
  chosen,
  missing,
  unreadable,
}: Pick<Props, 'preview' | 'chosen' | 'missing' | 'unreadable'>) {
  const { answer } = preview;
  if (!chosen)
    return (
      <Empty>
        Choose a method. This side then shows, while you type, which load trains can run the test, how the forces lie,
        and when it would be done.
      </Empty>
    );
  if (missing.length === 1 && missing[0] === 'materialId' && !answer)
    return (
      <Empty>
        Choose the material, or give a strength band or a load: from it follows which load the train must carry.
      </Empty>
    );
  if (missing.length > 0 && !answer)
    return (
      <Empty>{`${missing.length} ${missing.length === 1 ? 'figure is' : 'figures are'} still needed before the lab can answer.`}</Empty>
    );
  if (hasFailed(preview)) return <FetchFailed error={preview.error} />;
  return (
    <Empty>
      {preview.error || unreadable ? 'A figure cannot be right: see the mark beside it.' : 'Looking for load trains …'}
    </Empty>
  );
}

function Verdict({ answer: { candidates, refusals } }: { answer: NonNullable<Preview['answer']> }) {
  return (
    <p className={candidates.length > 0 ? ui.noteFit : ui.noteAct}>
      <strong>
        {candidates.length > 0
          ? `Fits: ${new Set(candidates.map(({ frameId }) => frameId)).size} of ${new Set([...candidates, ...refusals].map(({ frameId }) => frameId)).size} frames can run it.`
          : 'No load train of the lab can run it as it stands.'}
      </strong>
    </p>
  );
}

function Landing({ landing }: { landing: LandingView }) {
  const { moment } = useMoments();
  return (
    <section className={ui.note}>
      <strong>
        {landing.finish50At
          ? `If it came now: done by ${moment(landing.finish50At)} (even chance), ${moment(landing.finish80At)} (four in five).`
          : 'If it came now, it would find no place in the plan.'}
      </strong>
      <ul className={ui.small}>
        {landing.batches.map((batch, index) => (
          <li key={`${index}-${batch.sentence}`}>{batch.sentence}</li>
        ))}
      </ul>
    </section>
  );
}
