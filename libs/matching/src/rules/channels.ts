import type { ChannelKind, Frame } from '../register/item.js';
import { cannotLoad } from './frame-capacity.js';
import { PASS } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Sentence } from './sentence.js';

/** The frame has a free signal channel of the right kind for every transducer of the train. */
export const channels = rule({
  code: 'channels',
  source: 'frame data',
  checks: [
    {
      sees: ['frame'],
      judge: ({ frame }, { needs }, report) =>
        cannotLoad(frame.details, needs.direction) ? PASS : enough(frame, cellChannel(needs.direction), 1, report),
    },
    {
      sees: ['frame', 'extensometer'],
      frameFields: ['channels'],
      judge({ frame, extensometer }, { needs }, report) {
        if (!extensometer) return PASS;
        const { channel } = extensometer.details;
        return enough(frame, channel, channel === cellChannel(needs.direction) ? 2 : 1, report);
      },
    },
    {
      sees: ['frame', 'thermocouple'],
      frameFields: ['channels'],
      judge: ({ frame, thermocouple }, _context, report) =>
        thermocouple ? enough(frame, thermocouple.details.channel, 1, report) : PASS,
    },
  ],
  sentences: {
    'channel-force': channelSentence('force'),
    'channel-torque': channelSentence('torque'),
    'channel-strain': channelSentence('strain'),
    'channel-temperature': channelSentence('temperature'),
    'channel-video': channelSentence('video'),
    'channel-displacement': channelSentence('displacement'),
  } satisfies Record<`channel-${ChannelKind}`, Sentence>,
});

function channelSentence(kind: ChannelKind): Sentence {
  return ({ first, need, has, ok }) =>
    ok
      ? `${first} has ${has} ${kind} channels; ${need} needed.`
      : `${first} has ${has} free ${kind} channels; ${need} needed. Choose another frame or add a channel.`;
}

function cellChannel(direction: string): ChannelKind {
  return direction === 'torque' ? 'torque' : 'force';
}

function enough(frame: Frame, kind: ChannelKind, needed: number, report: Report): Outcome {
  let count = 0;
  for (const channel of frame.details.channels) if (channel.kind === kind) count += channel.count;
  return report.atLeast(`channel-${kind}`, needed, count, 'channels', frame);
}
