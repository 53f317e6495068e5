import type { Direction, FrameDetails } from '../register/item.js';
import { FAIL } from './outcome.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';

/** The high end of the load band, with the lab's margin, stays within what the frame can do in that direction. */
export const frameCapacity = rule({
  code: 'frame-capacity',
  source: 'common practice, no source; margin is a lab setting',
  rulesOutFrame: true,
  checks: [
    {
      sees: ['frame'],
      judge({ frame }, context, report) {
        const { direction, loadUnit } = context.needs;
        const available = capacityOf(frame.details, direction);
        const required = peakWithMargin(context);
        return available === 0
          ? report.short(FAIL, 'frame-cannot-load', required, 0, loadUnit, frame)
          : report.atLeast('frame-too-small', required, available, loadUnit, frame);
      },
    },
  ],
  sentences: {
    'frame-cannot-load': ({ first }) => `${first} cannot load in this direction. Choose another frame.`,
    'frame-too-small': limit(
      ({ need, has, first }) => `Needs ${need} with margin; ${first} carries ${has}`,
      'Choose a larger frame or lower the peak.',
    ),
  },
});

/** High end of the load band with the lab's margin, N or N·m: what frame, cell and every link must carry. */
export function peakWithMargin({ needs, settings }: Pick<Context, 'needs' | 'settings'>): number {
  return needs.peakHigh.value * (1 + settings.forceMargin);
}

/** Capacity of a frame in a direction, N or N·m. */
export function capacityOf(frame: FrameDetails, direction: Direction): number {
  if (direction === 'torque') return frame.torqueCapacityNm;
  return direction === 'tension' ? frame.tensionCapacityN : frame.compressionCapacityN;
}

/** The fields that {@link capacityOf} reads. */
export const CAPACITY_FIELDS = ['tensionCapacityN', 'compressionCapacityN', 'torqueCapacityNm'] as const;

/** A frame that cannot load this way at all says so by its capacity; other rules then have nothing to add. */
export function cannotLoad(frame: FrameDetails, direction: Direction): boolean {
  return capacityOf(frame, direction) === 0;
}
