import type { ChannelKind, Frame } from '../item.js';
import { cannotLoad } from './frame-capacity.js';
import { atLeast } from './rule.js';
import type { Finding, Rule } from './rule.js';

/** The frame has a free signal channel of the right kind for every transducer of the train. */
export const channels: Rule = {
  code: 'channels',
  source: 'frame data',
  checks: [
    {
      sees: ['frame'],
      judge: ({ frame }, { needs }) =>
        cannotLoad(frame.details, needs.direction) ? null : enough(frame, cellChannel(needs.direction), 1),
      passes: ({ frame }, { needs }) => countOf(frame, cellChannel(needs.direction)) >= 1,
    },
    {
      sees: ['frame', 'extensometer'],
      judge({ frame, extensometer }, { needs }) {
        if (!extensometer) return null;
        const { channel } = extensometer.details;
        return enough(frame, channel, channel === cellChannel(needs.direction) ? 2 : 1);
      },
      passes: ({ extensometer }) => !extensometer,
    },
    {
      sees: ['frame', 'thermocouple'],
      judge: ({ frame, thermocouple }) => thermocouple && enough(frame, thermocouple.details.channel, 1),
    },
  ],
};

function cellChannel(direction: string): ChannelKind {
  return direction === 'torque' ? 'torque' : 'force';
}

function enough(frame: Frame, kind: ChannelKind, needed: number): Finding {
  return atLeast(`channel-${kind}`, [frame.id], needed, countOf(frame, kind), 'channels');
}

function countOf({ details }: Frame, kind: ChannelKind): number {
  let count = 0;
  for (const channel of details.channels) if (channel.kind === kind) count += channel.count;
  return count;
}
