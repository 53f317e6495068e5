import type { BenchCheckView, PersonRef } from '#libs/contract/src/index.js';
import type { BenchFacts } from './bench-facts.js';

/** The checks with what was done, and those that the system answers itself. */
export function checkViews(facts: BenchFacts): BenchCheckView[] {
  return [...facts.checksAsked.map((check) => asked(check, facts)), ...automatic(facts)];
}

function asked({ max: _, ...check }: BenchFacts['checksAsked'][number], facts: BenchFacts): BenchCheckView {
  if (check.kind === 'shift-check') return { ...check, ...shiftCheckDone(facts) };
  const done = facts.job.checks[check.key];
  return {
    ...check,
    done: done !== undefined,
    doneAt: done?.at ?? null,
    by: done ? personOf(done.by, facts) : null,
    problem: null,
  };
}

function shiftCheckDone(facts: BenchFacts): Pick<BenchCheckView, 'done' | 'doneAt' | 'by' | 'problem'> {
  const { shiftCheck: last, shiftCheckReason: reason } = facts;
  if (reason !== null)
    return { done: false, doneAt: null, by: null, problem: reason === 'failed' && last ? failed(last) : null };
  return { done: true, doneAt: last!.at.toISOString(), by: personOf(last!.technicianId, facts), problem: null };
}

function failed({ errorPct, tolerancePct }: NonNullable<BenchFacts['shiftCheck']>): string {
  return `The last check was off by ${errorPct.toFixed(2)} %; allowed is ${tolerancePct} %. The cell is out of use.`;
}

function personOf(id: string, { people }: BenchFacts): PersonRef {
  return { id, name: people.get(id) ?? '' };
}

function automatic(facts: BenchFacts): BenchCheckView[] {
  const { fit, job, train, authorised, work } = facts;
  const open = train.filter(({ confirmedAt }) => !confirmedAt).length;
  return [
    auto(
      'train-fit',
      'Calibration in force and train fit for the whole run',
      fit.problems.map(({ sentence }) => sentence).join(' '),
    ),
    auto(
      'links-confirmed',
      'Every link of the train confirmed',
      open === 0 ? '' : `${open} of ${train.length} links are not confirmed by their tag.`,
    ),
    auto(
      'authorised',
      `Authorised for ${work.method.designation}`,
      job.technicianId === null || authorised
        ? ''
        : `The technician is not authorised for ${work.method.designation} now.`,
    ),
  ];
}

function auto(key: string, label: string, problem: string): BenchCheckView {
  return {
    key,
    label,
    detail: 'Seen to by the system.',
    required: true,
    kind: 'auto',
    done: problem === '',
    doneAt: null,
    by: null,
    problem: problem || null,
  };
}
