import { clsx } from 'clsx';
import { useState } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import type { LinkRole, TrainSegment } from '#libs/matching/src/index.js';
import { BlockDialog } from '../../features/bench/block-dialog.js';
import { BenchFrame, Cautions } from '../../features/bench/bench-frame.js';
import { ScanField } from '../../features/bench/scan-field.js';
import { useJobAct } from '../../features/bench/sending.js';
import { SetupSteps, openStep } from '../../features/bench/setup-steps.js';
import { WhyDialog } from '../../features/bench/why-dialog.js';
import { TrainDrawing } from '../../features/train/train-drawing.js';
import type { Fate } from '../../features/train/train-drawing.js';
import { formatNumber } from '#libs/units/src/index.js';
import { api } from '../../api-client/api.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/bench/bench.module.css';

const CONFIRM_WORDS = {
  'take-off': 'is off: scan its tag',
  keep: 'stays: scan its tag',
  'put-on': 'is on: scan its tag',
} as const;

/** What is on the frame, what comes off, what goes on; each link is confirmed by its tag. */
export function SetupStep({ job }: { job: JobView }) {
  const act = useJobAct(job.id);
  const [asking, setAsking] = useState<'give-back' | 'block' | null>(null);
  const now = openStep(job);
  const { confirm, busy, wrong } = useConfirm(job, now);
  return (
    <BenchFrame
      job={job}
      step="setup"
      bar={<Bar onGiveBack={() => setAsking('give-back')} onBlock={() => setAsking('block')} />}
    >
      <div className={styles.setup}>
        <div className={ui.stack}>
          {now && (
            <ScanField
              label={`${now.item.tag} ${CONFIRM_WORDS[now.action]}`}
              busy={busy}
              wrong={wrong}
              onTag={(tag) => void confirm(tag)}
            />
          )}
          <SetupSteps steps={job.setup} now={now} />
          <Cautions cautions={job.cautions} />
        </div>
        <Train job={job} />
      </div>
      {asking === 'give-back' && (
        <WhyDialog
          title={`Give ${job.reference} back`}
          explain="It goes back into the plan, and somebody else may take it. What is fitted stays on the frame."
          button="Give it back"
          onWhy={(why) => act(api('POST /jobs/{id}/give-back', { id: job.id, body: { why } }))}
          onClose={() => setAsking(null)}
        />
      )}
      {asking === 'block' && <BlockDialog job={job} onClose={() => setAsking(null)} />}
    </BenchFrame>
  );
}

/** Confirms the open step by a tag: that of the link itself, or of one that may stand in for it. */
function useConfirm(job: JobView, now: ReturnType<typeof openStep>) {
  const act = useJobAct(job.id);
  const [wrong, setWrong] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  async function confirm(tag: string) {
    setBusy(true);
    setWrong(null);
    const standIn = now?.standIns.find((each) => each.tag.toLowerCase() === tag.toLowerCase());
    try {
      await (standIn && now
        ? act(api('POST /jobs/{id}/stand-in', { id: job.id, body: { itemId: now.item.itemId, tag: standIn.tag } }))
        : act(api('POST /jobs/{id}/confirm', { id: job.id, body: { tag } })));
    } catch (refused) {
      setWrong((refused as Error).message);
    }
    setBusy(false);
  }
  return { confirm, busy, wrong };
}

function Bar({ onGiveBack, onBlock }: { onGiveBack: () => void; onBlock: () => void }) {
  return (
    <>
      <button type="button" className={ui.button} onClick={() => print()}>
        Print the sheet
      </button>
      <button type="button" className={ui.button} onClick={onGiveBack}>
        Give back …
      </button>
      <button type="button" className={ui.buttonSharp} onClick={onBlock}>
        Something failed …
      </button>
    </>
  );
}

/** The load train to fit, with the limit stops and speeds to set. */
function Train({ job }: { job: JobView }) {
  return (
    <div className={clsx(ui.stack, ui.mm, ui.framed)}>
      <TrainDrawing segments={segmentsOf(job)} fates={fatesOf(job)} title="Load train to fit" />
      {job.limitStops && (
        <p>
          Limit stops: upper <strong className={ui.fig}>{formatNumber(job.limitStops.upperMm)} mm</strong>, lower{' '}
          <strong className={ui.fig}>{formatNumber(job.limitStops.lowerMm)} mm</strong>.{' '}
          <span className={ui.small}>{job.limitStops.sentence}</span>
        </p>
      )}
      <p className={ui.small}>
        {job.speeds.map(({ label, valueMmMin }) => (
          <span key={label}>
            {label} <strong className={ui.fig}>{formatNumber(valueMmMin)} mm/min</strong>{' '}
          </span>
        ))}
      </p>
    </div>
  );
}

const BESIDE = ['extensometer', 'chamber', 'guard', 'thermocouple', 'faces'];
const ORDER = [
  'load-cell',
  'upper-adapter',
  'upper-adapter-2',
  'upper',
  'ends',
  'specimen',
  'lower',
  'lower-adapter',
  'lower-adapter-2',
];
const SPECIMEN_MM = 150;

/** The train of a job as segments; a pair fills both ends. */
export function segmentsOf(job: JobView): TrainSegment[] {
  const parts = job.train.map((item): TrainSegment => ({
    role: item.role as LinkRole,
    itemId: item.itemId,
    label: item.tag,
    ratingText: item.rating ? `${formatNumber(item.rating)} ${item.ratingUnit ?? ''}` : '',
    lengthMm: item.lengthMm,
    widthMm: item.role === 'load-cell' ? 80 : item.role.includes('adapter') ? 40 : 70,
    beside: BESIDE.includes(item.role),
  }));
  const end = (role: TrainSegment['role'], label: string): TrainSegment => ({
    role,
    itemId: null,
    label,
    ratingText: '',
    lengthMm: role === 'specimen' ? SPECIMEN_MM : 0,
    widthMm: 30,
    beside: false,
  });
  const pair = parts.find(({ role }) => role === 'ends');
  const stack = [...parts.filter(({ beside }) => !beside), end('specimen', `specimen ${job.batch.label}`.trim())].sort(
    (a, b) => ORDER.indexOf(a.role) - ORDER.indexOf(b.role),
  );
  const withLower = pair
    ? stack.flatMap((part) =>
        part.role === 'specimen'
          ? [part, { ...pair, role: 'lower' as const, label: `${pair.label}, lower half` }]
          : [part],
      )
    : stack;
  return [
    end('crosshead', `${job.frame?.tag ?? ''} crosshead`),
    ...withLower,
    end('base', 'base'),
    ...parts.filter(({ beside }) => beside),
  ];
}

function fatesOf(job: JobView): Record<string, Fate> {
  return Object.fromEntries(job.setup.map(({ item, action }) => [item.itemId, action]));
}
