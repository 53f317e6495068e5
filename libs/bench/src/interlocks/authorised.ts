import type { Interlock } from './interlock.js';

/** The technician may run the method at this moment. */
export const authorised: Interlock = {
  moves: ['start', 'resume'],
  judge({ authorised: isAuthorised, method, job }) {
    if (isAuthorised) return null;
    return {
      code: 'bench/not-authorised',
      sentence: `You are not authorised for ${method.designation} now; ${job.reference} needs it. Give the job back, or ask the manager.`,
      facts: { methodCode: method.id },
    };
  },
};
