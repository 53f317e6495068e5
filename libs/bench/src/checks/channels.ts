import { tick } from './bench-check.js';
import type { CheckRule } from './check-facts.js';

/** Each transducer answers on its own channel. */
export const channels: CheckRule = ({ train }) => {
  const wired = train.filter(({ item }) => ['load-cell', 'extensometer', 'transducer'].includes(item.kind));
  return tick(
    'channels',
    'Transducers on the right channels',
    `${wired.map(({ item }) => item.tag).join(', ')}: touch each lightly and see that its own channel answers, with the right sign.`,
  );
};
