import type { Interlock } from './interlock.js';

/** Every link of the train was confirmed by its tag, and still hangs on the frame. */
export const linksConfirmed: Interlock = {
  moves: ['start', 'resume'],
  judge({ train, trainItems, rig, frame }) {
    const isConfirmed = (id: string) => train.some(({ itemId, confirmedAt }) => itemId === id && confirmedAt);
    const hangs = (id: string) => rig.some(({ itemId }) => itemId === id);
    const open = trainItems.filter(({ item }) => !isConfirmed(item.id) || !hangs(item.id));
    const tags = [...new Set(open.map(({ item }) => item.tag))];
    if (tags.length === 0) return null;
    return {
      code: 'bench/link-unconfirmed',
      sentence: `Not confirmed on ${frame?.tag ?? 'the frame'}: ${tags.join(', ')}. Every link has to be confirmed by its tag before the start.`,
      facts: { tags },
    };
  },
};
