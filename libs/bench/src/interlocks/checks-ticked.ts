import type { Interlock } from './interlock.js';

/** Every required check at the frame was ticked. The shift check has an interlock of its own. */
export const checksTicked: Interlock = {
  moves: ['start'],
  judge({ checksAsked, job }) {
    const missing = checksAsked.filter(
      ({ kind, required, key }) => kind !== 'shift-check' && required && !(key in job.checks),
    );
    if (missing.length === 0) return null;
    return {
      code: 'bench/checks-missing',
      sentence: `Before ${job.reference} starts, check at the frame: ${missing.map(({ label }) => label).join('; ')}.`,
      facts: { missing: missing.map(({ key, label }) => ({ key, label })) },
    };
  },
};
