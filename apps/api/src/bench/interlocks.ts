import { LabError } from '#libs/errors/src/index.js';
import type { BenchFacts } from './bench-facts.js';
import { SHIFT_CHECK_WORDS } from './shift-check.js';

/**
 * What must hold at the moment in which something moves. Read in the transaction of the transition, and never waived.
 *
 * @throws LabError `bench/not-authorised`, `bench/link-unconfirmed`, `bench/train-not-fit`, `bench/shift-check-needed`
 */
export function refuseUnsafe(facts: BenchFacts): void {
  refuseUnauthorised(facts);
  refuseUnconfirmed(facts);
  refuseUnfit(facts);
  refuseUnchecked(facts);
}

function refuseUnauthorised({ authorised, work, job }: BenchFacts): void {
  if (authorised) return;
  const { designation, id } = work.method;
  throw new LabError(
    'bench/not-authorised',
    `You are not authorised for ${designation} now; ${job.reference} needs it. Give the job back, or ask the manager.`,
    { methodCode: id },
  );
}

function refuseUnconfirmed({ train, trainItems, rig, frame }: BenchFacts): void {
  const open = trainItems.filter(
    ({ item }) => !train.some(({ itemId, confirmedAt }) => itemId === item.id && confirmedAt),
  );
  const gone = trainItems.filter(({ item }) => !rig.some(({ itemId }) => itemId === item.id));
  const tags = [...new Set([...open, ...gone].map(({ item }) => item.tag))];
  if (tags.length === 0) return;
  throw new LabError(
    'bench/link-unconfirmed',
    `Not confirmed on ${frame?.tag ?? 'the frame'}: ${tags.join(', ')}. Every link has to be confirmed by its tag before the start.`,
    { tags },
  );
}

function refuseUnfit({ fit, busy, frameId, job }: BenchFacts): void {
  const holder = frameId === null ? undefined : busy.get(frameId);
  const inUse =
    holder === undefined
      ? []
      : [{ rule: 'frame-state', items: [frameId!], sentence: `The frame is in use by ${holder}.` }];
  const problems = [...fit.problems, ...inUse];
  if (problems.length === 0) return;
  const sentences = problems.map(({ sentence }) => sentence);
  throw new LabError(
    'bench/train-not-fit',
    `${job.reference} cannot start on this train. ${sentences.join(' ')} Block the job, or give it back.`,
    { problems, sentences },
  );
}

function refuseUnchecked({ shiftCheckReason: reason, trainItems, settings }: BenchFacts): void {
  if (reason === null) return;
  const cell = trainItems.find(({ role }) => role === 'load-cell')?.item.tag ?? 'The cell';
  const hours = settings.shiftCheckValidMin / 60;
  throw new LabError(
    'bench/shift-check-needed',
    `${cell} needs a shift check: ${SHIFT_CHECK_WORDS[reason]}. It holds for one shift, ${hours} h at most. Check it with a known load.`,
    {
      reason,
      longestHours: hours,
    },
  );
}

/** @throws LabError `bench/checks-missing` with the list */
export function refuseUnticked({ checksAsked, job }: BenchFacts): void {
  const missing = checksAsked.filter(
    ({ kind, required, key }) => kind !== 'shift-check' && required && !(key in job.checks),
  );
  if (missing.length === 0) return;
  const labels = missing.map(({ label }) => label);
  throw new LabError(
    'bench/checks-missing',
    `Before ${job.reference} starts, check at the frame: ${labels.join('; ')}.`,
    { missing: missing.map(({ key, label }) => ({ key, label })) },
  );
}
