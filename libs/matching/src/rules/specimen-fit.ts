import type { Fixture, Grip, Item, Platen } from '../register/item.js';
import { eachEnd } from './each-item.js';
import { CAUTION, FAIL, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import { endItems, slotOf } from './parts.js';
import type { EndItem, Ends, Parts } from './parts.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';

/** Thickness or diameter within the jaw opening, width within the face, span within the fixture's range, end shape accepted, faces that seat. */
export const specimenFit = rule({
  code: 'specimen-fit',
  source: 'item data; common practice, no source',
  cautionsByOnePart: true,
  checks: [
    { sees: ['ends'], judge: ({ ends }, context, report) => eachEnd(ends, fits, context, report) },
    { sees: ['ends'], judge: ({ ends }, context, report) => sphericalSeat(ends, context, report) },
    {
      sees: ['faces'],
      // Separate faces have an opening and a width of their own, besides those of the grip that carries them.
      judge: ({ faces }, context, report) =>
        faces ? opening(faces, faces.details, faces.details.widthMm, context, report) : PASS,
    },
    { sees: ['ends', 'faces'], judge: facesSeat },
  ],
  sentences: {
    'no-ends': ({ need }) => `The lab has nothing to hold the specimen: ${need}.`,
    'end-not-taken': ({ first, need, has }) => `${first} takes ${has} ends, not ${need}. Choose other grips.`,
    'too-thin': limit(
      ({ need, has, all }) => `The end is ${need} thick; ${all} holds from ${has}`,
      'Choose faces for thinner ends.',
    ),
    'too-thick': limit(
      ({ need, has, all }) => `The end is ${need} thick; ${all} opens to ${has}`,
      'Choose grips that open wider, or a thinner end.',
    ),
    'too-wide-for-face': limit(
      ({ need, has, all }) => `The end is ${need} wide; the faces of ${all} are ${has}`,
      'Choose wider faces or a narrower specimen.',
    ),
    'no-faces': ({ all, need }) => `${all} needs faces for the seat ${need}. Put some on.`,
    'faces-do-not-seat': ({ first, second, need, has }) =>
      `${first} is made for the seat ${has}; ${second} has ${need}. Choose other faces.`,
    'platen-too-small': limit(
      ({ need, has, first }) => `The specimen is ${need} across; ${first} has ${has}`,
      'Choose a larger platen.',
    ),
    'no-spherical-seat': ({ all }) => `${all} has no spherical seat, which this method needs or prefers.`,
    'span-too-short': limit(
      ({ need, has, first }) => `The span is ${need}; ${first} sets ${has} at least`,
      'Choose a smaller fixture or a longer span.',
    ),
    'span-too-long': limit(
      ({ need, has, first }) => `The span is ${need}; ${first} sets ${has} at most`,
      'Choose a longer fixture or a shorter span.',
    ),
    'too-wide-for-fixture': limit(
      ({ need, has, first }) => `The specimen is ${need} wide; ${first} takes ${has}`,
      'Choose a wider fixture or a narrower specimen.',
    ),
    'too-thick-for-fixture': limit(
      ({ need, has, first }) => `The specimen is ${need} thick; ${first} takes ${has}`,
      'Choose a larger fixture or a thinner specimen.',
    ),
  },
});

function fits(end: EndItem, context: Context, report: Report): Outcome {
  switch (end.kind) {
    case 'grip':
      return inGrip(end, context, report);
    case 'platen':
      return onPlaten(end, context, report);
    case 'fixture':
      return inFixture(end, context, report);
  }
}

function inGrip(grip: Grip, context: Context, report: Report): Outcome {
  const { acceptedEnds, faceWidthMm } = grip.details;
  const { endShape } = context.needs.specimen;
  if (!acceptedEnds.includes(endShape))
    return report.say(FAIL, 'end-not-taken', grip, endShape, () => acceptedEnds.join(', '));
  return opening(grip, grip.details, faceWidthMm, context, report);
}

function opening(
  item: Item,
  { openingMinMm, openingMaxMm }: { openingMinMm: number; openingMaxMm: number },
  widthMm: number,
  { needs: { specimen } }: Context,
  report: Report,
): Outcome {
  const { gripThicknessMm, gripWidthMm } = specimen;
  return worst(
    report.notBelow('too-thin', gripThicknessMm, openingMinMm, 'mm', item),
    report.atLeast('too-thick', gripThicknessMm, openingMaxMm, 'mm', item),
    report.atLeast('too-wide-for-face', gripWidthMm, widthMm, 'mm', item),
  );
}

/** Grips with a seat need faces of that seat on both sides; nothing else takes any. */
function areSeated({ ends: { upper, lower }, faces }: Parts): boolean {
  if (!faces) return slotOf(upper) === null && slotOf(lower) === null;
  const { slot } = faces.details;
  return (upper.kind === 'grip' || lower.kind === 'grip') && seats(upper, slot) && seats(lower, slot);
}

function seats(end: EndItem, slot: string): boolean {
  return end.kind !== 'grip' || slotOf(end) === slot;
}

function facesSeat(parts: Parts, _context: Context, report: Report): Outcome {
  if (areSeated(parts)) return PASS;
  const { ends, faces } = parts;
  const { upper, lower } = ends;
  const seat = slotOf(upper) ?? slotOf(lower);
  if (!faces) return report.say(FAIL, 'no-faces', [upper, lower], seat);
  return report.say(FAIL, 'faces-do-not-seat', [faces, upper], seat ?? 'none', faces.details.slot);
}

function onPlaten(platen: Platen, { needs }: Context, report: Report): Outcome {
  const { bodyThicknessMm, bodyWidthMm } = needs.specimen;
  const round = bodyThicknessMm === bodyWidthMm && needs.specimen.endShape === 'round';
  const across = round ? bodyWidthMm : Math.hypot(bodyThicknessMm, bodyWidthMm);
  return report.atLeast('platen-too-small', across, platen.details.diameterMm, 'mm', platen);
}

/** One spherical seat in the train is enough; brittle specimens need it. */
function sphericalSeat(both: Ends, { needs }: Context, report: Report): Outcome {
  if (needs.ends.by !== 'platens' || needs.ends.sphericalSeat === 'not-needed') return PASS;
  const ends = endItems(both);
  if (ends.some((end) => end.kind === 'platen' && end.details.sphericalSeat)) return PASS;
  return report.say(needs.ends.sphericalSeat === 'required' ? FAIL : CAUTION, 'no-spherical-seat', ends);
}

function inFixture(fixture: Fixture, { needs }: Context, report: Report): Outcome {
  const { details } = fixture;
  const { bodyThicknessMm, bodyWidthMm, spanMm } = needs.specimen;
  const span =
    spanMm === null || details.spanMaxMm === null
      ? PASS
      : worst(
          report.notBelow('span-too-short', spanMm, details.spanMinMm ?? 0, 'mm', fixture),
          report.atLeast('span-too-long', spanMm, details.spanMaxMm, 'mm', fixture),
        );
  return worst(
    span,
    report.atLeast('too-wide-for-fixture', bodyWidthMm, details.specimenWidthMaxMm, 'mm', fixture),
    report.atLeast('too-thick-for-fixture', bodyThicknessMm, details.specimenThicknessMaxMm, 'mm', fixture),
  );
}
