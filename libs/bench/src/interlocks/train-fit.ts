import type { Interlock } from './interlock.js';

/** No rule speaks against the train until the run is over, and no other job has the frame. */
export const trainFit: Interlock = {
  moves: ['start', 'resume'],
  judge({ problems: found, frameHolder, frame, job }) {
    const inUse =
      frameHolder === null
        ? []
        : [{ rule: 'frame-state', items: frame ? [frame.id] : [], sentence: `The frame is in use by ${frameHolder}.` }];
    const problems = [...found, ...inUse];
    if (problems.length === 0) return null;
    const sentences = problems.map(({ sentence }) => sentence);
    return {
      code: 'bench/train-not-fit',
      sentence: `${job.reference} cannot start on this train. ${sentences.join(' ')} Block the job, or give it back.`,
      facts: { problems, sentences },
    };
  },
};
