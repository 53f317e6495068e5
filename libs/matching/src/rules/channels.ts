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
    },
    {
      sees: ['frame', 'extensometer'],
      judge({ frame, extensometer }, { needs }) {
        if (!extensometer) return null;
        const { channel } = extensometer.details;
        return enough(frame, channel, channel === cellChannel(needs.direction) ? 2 : 1);
      },
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

function enough({ id, details }: Frame, kind: ChannelKind, needed: number): Finding {
  const count = details.channels
    .filter((channel) => channel.kind === kind)
    .reduce((sum, channel) => sum + channel.count, 0);
  return atLeast(`channel-${kind}`, [id], needed, count, 'channels');
}
