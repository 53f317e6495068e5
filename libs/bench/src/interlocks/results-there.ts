import type { Interlock } from './interlock.js';

/** Every result that was asked for has a figure on every tested specimen, or a reason why it has none. */
export const resultsThere: Interlock = {
  moves: ['finish'],
  judge({ job, lacks }) {
    const open = lacks
      .map(({ missing, ...specimen }) => ({ ...specimen, missing: missing.filter(({ why }) => why === null) }))
      .filter(({ missing }) => missing.length > 0);
    if (open.length === 0) return null;
    const named = open.map(({ label, missing }) => `${label} (${missing.map((each) => each.label).join(', ')})`);
    return {
      code: 'bench/results-missing',
      sentence: `Results of ${job.reference} that were asked for are missing: ${named.join('; ')}. Enter them, or say for each why there is none.`,
      facts: {
        missing: open.map(({ id, label, missing }) => ({
          ...{ specimenId: id, label },
          results: missing.map(({ key, label: name, hint }) => ({ key, label: name, hint })),
        })),
      },
    };
  },
};
