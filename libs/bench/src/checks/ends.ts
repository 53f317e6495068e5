import { tick } from './bench-check.js';
import { mm, tagsOf } from './check-facts.js';
import type { CheckRule } from './check-facts.js';

/** What holds the specimen is seated, clean and aligned. */
export const ends: CheckRule = ({ needs, train }) => {
  const { spanMm } = needs.specimen;
  if (needs.ends.by === 'platens')
    return tick('platens', 'Platens clean and parallel', 'No grit between the faces; a spherical seat moves freely.');
  if (needs.ends.by === 'fixture') {
    return tick(
      'fixture',
      'Fixture set',
      spanMm === null
        ? `${tagsOf(train, ['ends', 'upper', 'lower'])} seated and centred.`
        : `Supports measured at a span of ${mm(spanMm)}, load nose at the middle and square to it.`,
    );
  }
  const faces = tagsOf(train, ['faces']);
  return tick(
    'faces',
    'Jaw faces and alignment aid fitted',
    `${faces ? `${faces} on both sides, seated` : 'Faces seated'} and clean; alignment aid in place, so that the specimen sits on the axis.`,
  );
};
