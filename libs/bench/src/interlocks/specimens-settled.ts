import { isOpen } from '../results/is-open.js';
import type { Interlock } from './interlock.js';

/** Every specimen is tested or invalid, or somebody says why it was not tested. */
export const specimensSettled: Interlock = {
  moves: ['finish'],
  judge({ specimens, notTestedWhy, job }) {
    const open = specimens.filter(isOpen).map(({ label }) => label);
    if (open.length === 0 || notTestedWhy !== null) return null;
    return {
      code: 'bench/specimens-open',
      sentence: `${open.length} of the specimens of ${job.reference} are neither tested nor invalid: ${open.join(', ')}. Test them, or say why they were not tested.`,
      facts: { open },
    };
  },
};
