import { tick } from './bench-check.js';
import { mm, tagsOf } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** The extensometer is set to its gauge length. */
export const extensometer: CheckRule = ({ needs, train }) => {
  const tag = tagsOf(train, ['extensometer']);
  if (!tag) return null;
  const gauge = needs.strain.gaugeLength
    ? `gauge length ${mm(needs.strain.gaugeLength.value)}`
    : 'probe square to the specimen';
  return tick(
    'extensometer',
    'Extensometer set',
    `${tag}: ${gauge}, at zero, lock off; know when it has to come off before the break.`,
  );
};
