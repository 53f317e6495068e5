import type { FrameDetails } from '../item.js';
import type { Direction } from '../item.js';
import { atLeast, reaches, told } from './rule.js';
import type { Rule } from './rule.js';

/** The high end of the load band, with the lab's margin, stays within what the frame can do in that direction. */
export const frameCapacity: Rule = {
  code: 'frame-capacity',
  source: 'common practice, no source; margin is a lab setting',
  checks: [
    {
      sees: ['frame'],
      judge({ frame }, { needs, settings }) {
        const available = capacityOf(frame.details, needs.direction);
        const required = needs.peakHigh.value * (1 + settings.forceMargin);
        if (available === 0)
          return { ...told('fail', 'frame-cannot-load', [frame.id], required, 0, needs.loadUnit), margin: -required };
        return atLeast('frame-too-small', [frame.id], required, available, needs.loadUnit);
      },
      passes: ({ frame }, { needs, settings }) =>
        reaches(capacityOf(frame.details, needs.direction), needs.peakHigh.value * (1 + settings.forceMargin)),
    },
  ],
};

/** Capacity of a frame in a direction, N or N·m. */
export function capacityOf(frame: FrameDetails, direction: Direction): number {
  if (direction === 'torque') return frame.torqueCapacityNm;
  return direction === 'tension' ? frame.tensionCapacityN : frame.compressionCapacityN;
}

/** A frame that cannot load this way at all says so by its capacity; other rules then have nothing to add. */
export function cannotLoad(frame: FrameDetails, direction: Direction): boolean {
  return capacityOf(frame, direction) === 0;
}
