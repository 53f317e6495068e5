import type { Fixture, Grip, JawFace, Platen } from '../item.js';
import { endItems, slotOf } from '../parts.js';
import type { EndItem, Ends, Parts } from '../parts.js';
import { atLeast, bothEnds, notBelow, reaches, told, worst, worstEnd } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** Thickness or diameter within the jaw opening, width within the face, span within the fixture's range, end shape accepted, faces that seat. */
export const specimenFit: Rule = {
  code: 'specimen-fit',
  source: 'item data; common practice, no source',
  checks: [
    {
      sees: ['ends'],
      judge: ({ ends }, context) => worstEnd(ends, (end) => fits(end, context)),
      passes: ({ ends }, context) => bothEnds(ends, context, takes),
      otherwise: 'fail',
    },
    {
      sees: ['ends'],
      judge: ({ ends }, context) => sphericalSeat(ends, context),
      passes: (_parts, { needs: { ends } }) => ends.by !== 'platens' || ends.sphericalSeat === 'not-needed',
    },
    {
      sees: ['faces'],
      judge: ({ faces }, context) => faces && inFaces(faces, context),
      passes: ({ faces }, context) => !faces || opens(faces.details, faces.details.widthMm, context),
      otherwise: 'fail',
    },
    {
      sees: ['ends', 'faces'],
      judge: facesSeat,
      passes: areSeated,
      otherwise: 'fail',
    },
  ],
};

function fits(end: EndItem, context: Context): Finding | null {
  switch (end.kind) {
    case 'grip':
      return inGrip(end, context);
    case 'platen':
      return onPlaten(end, context);
    case 'fixture':
      return inFixture(end, context);
  }
}

/** The same for the kinds of which a lab has hundreds. */
function takes(end: EndItem, context: Context): boolean {
  if (end.kind === 'grip') {
    const { details } = end;
    return (
      details.acceptedEnds.includes(context.needs.specimen.endShape) && opens(details, details.faceWidthMm, context)
    );
  }
  return fits(end, context)?.outcome !== 'fail';
}

function inGrip({ id, details }: Grip, context: Context): Finding | null {
  const { endShape } = context.needs.specimen;
  if (!details.acceptedEnds.includes(endShape))
    return told('fail', 'end-not-taken', [id], endShape, details.acceptedEnds.join(', '));
  return opening(id, details.openingMinMm, details.openingMaxMm, details.faceWidthMm, context);
}

/** Separate faces have an opening and a width of their own, besides those of the grip that carries them. */
function inFaces({ id, details }: JawFace, context: Context): Finding | null {
  return opening(id, details.openingMinMm, details.openingMaxMm, details.widthMm, context);
}

function opening(
  id: string,
  fromMm: number,
  toMm: number,
  widthMm: number,
  { needs: { specimen } }: Context,
): Finding | null {
  const items = [id];
  return worst([
    notBelow('too-thin', items, specimen.gripThicknessMm, fromMm, 'mm'),
    atLeast('too-thick', items, specimen.gripThicknessMm, toMm, 'mm'),
    atLeast('too-wide-for-face', items, specimen.gripWidthMm, widthMm, 'mm'),
  ]);
}

function opens(
  { openingMinMm, openingMaxMm }: { openingMinMm: number; openingMaxMm: number },
  widthMm: number,
  { needs: { specimen } }: Context,
): boolean {
  const { gripThicknessMm, gripWidthMm } = specimen;
  return (
    reaches(gripThicknessMm, openingMinMm) && reaches(openingMaxMm, gripThicknessMm) && reaches(widthMm, gripWidthMm)
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

function facesSeat(parts: Parts): Finding | null {
  if (areSeated(parts)) return null;
  const { ends, faces } = parts;
  const { upper, lower } = ends;
  const seat = slotOf(upper) ?? slotOf(lower);
  if (!faces) return told('fail', 'no-faces', [upper.id, lower.id], seat);
  return told('fail', 'faces-do-not-seat', [faces.id, upper.id], seat ?? 'none', faces.details.slot);
}

function onPlaten({ id, details }: Platen, { needs }: Context): Finding {
  const { bodyThicknessMm, bodyWidthMm } = needs.specimen;
  const round = bodyThicknessMm === bodyWidthMm && needs.specimen.endShape === 'round';
  const across = round ? bodyWidthMm : Math.hypot(bodyThicknessMm, bodyWidthMm);
  return atLeast('platen-too-small', [id], across, details.diameterMm, 'mm');
}

/** One spherical seat in the train is enough; brittle specimens need it. */
function sphericalSeat(both: Ends, { needs }: Context): Finding | null {
  if (needs.ends.by !== 'platens' || needs.ends.sphericalSeat === 'not-needed') return null;
  const ends = endItems(both);
  if (ends.some((end) => end.kind === 'platen' && end.details.sphericalSeat)) return null;
  const outcome = needs.ends.sphericalSeat === 'required' ? 'fail' : 'caution';
  return told(
    outcome,
    'no-spherical-seat',
    ends.map(({ id }) => id),
  );
}

function inFixture({ id, details }: Fixture, { needs }: Context): Finding | null {
  const { bodyThicknessMm, bodyWidthMm, spanMm } = needs.specimen;
  const span =
    spanMm === null || details.spanMaxMm === null
      ? []
      : [
          notBelow('span-too-short', [id], spanMm, details.spanMinMm ?? 0, 'mm'),
          atLeast('span-too-long', [id], spanMm, details.spanMaxMm, 'mm'),
        ];
  return worst([
    ...span,
    atLeast('too-wide-for-fixture', [id], bodyWidthMm, details.specimenWidthMaxMm, 'mm'),
    atLeast('too-thick-for-fixture', [id], bodyThicknessMm, details.specimenThicknessMaxMm, 'mm'),
  ]);
}
