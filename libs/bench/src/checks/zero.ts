import { tick } from './bench-check.js';
import type { CheckRule } from './check-facts.js';

/** Force is zeroed before the specimen carries any. */
export const zero: CheckRule = ({ needs }) =>
  needs.ends.by === 'grips'
    ? tick(
        'zero',
        'Force zeroed before the second end is gripped',
        'Specimen hangs in one grip only: zero the force now, and never after the second end is closed.',
      )
    : tick(
        'zero',
        'Force zeroed before contact',
        'Nothing touches the specimen yet: zero the force now, and never once it carries load.',
      );
