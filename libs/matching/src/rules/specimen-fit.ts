import type { Fixture, Grip, JawFace, Platen } from '../item.js';
import type { EndItem } from '../parts.js';
import { atLeast, notBelow, told, worst } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** Thickness or diameter within the jaw opening, width within the face, span within the fixture's range, end shape accepted. */
export const specimenFit: Rule = {
  code: 'specimen-fit',
  source: 'item data; common practice, no source',
  checks: [
    {
      sees: ['ends'],
      judge: ({ ends: { upper, lower, faces } }, context) =>
        worst([fits(upper, faces, context), ...(upper.id === lower.id ? [] : [fits(lower, faces, context)])]),
    },
    { sees: ['ends'], judge: ({ ends: { upper, lower } }, context) => seat([upper, lower], context) },
  ],
};

function fits(end: EndItem, faces: JawFace | null, context: Context): Finding | null {
  switch (end.kind) {
    case 'grip':
      return inGrip(end, faces, context);
    case 'platen':
      return onPlaten(end, context);
    case 'fixture':
      return inFixture(end, context);
  }
}

function inGrip({ id, details }: Grip, faces: JawFace | null, { needs }: Context): Finding | null {
  const { endShape, gripThicknessMm, gripWidthMm } = needs.specimen;
  if (!details.acceptedEnds.includes(endShape))
    return told('fail', 'end-not-taken', [id], endShape, details.acceptedEnds.join(', '));
  const own = faces && details.faceSlot === faces.details.slot ? faces.details : null;
  const items = own ? [id, faces!.id] : [id];
  const from = Math.max(details.openingMinMm, own?.openingMinMm ?? 0);
  const to = Math.min(details.openingMaxMm, own?.openingMaxMm ?? Infinity);
  const width = Math.min(details.faceWidthMm, own?.widthMm ?? Infinity);
  return worst([
    notBelow('too-thin', items, gripThicknessMm, from, 'mm'),
    atLeast('too-thick', items, gripThicknessMm, to, 'mm'),
    atLeast('too-wide-for-face', items, gripWidthMm, width, 'mm'),
  ]);
}

function onPlaten({ id, details }: Platen, { needs }: Context): Finding | null {
  const { bodyThicknessMm, bodyWidthMm } = needs.specimen;
  const round = bodyThicknessMm === bodyWidthMm && needs.specimen.endShape === 'round';
  const across = round ? bodyWidthMm : Math.hypot(bodyThicknessMm, bodyWidthMm);
  return atLeast('platen-too-small', [id], across, details.diameterMm, 'mm');
}

/** One spherical seat in the train is enough; brittle specimens need it. */
function seat(ends: readonly EndItem[], { needs }: Context): Finding | null {
  if (needs.ends.by !== 'platens' || needs.ends.sphericalSeat === 'not-needed') return null;
  if (ends.some((end) => end.kind === 'platen' && end.details.sphericalSeat)) return null;
  const outcome = needs.ends.sphericalSeat === 'required' ? 'fail' : 'caution';
  return told(outcome, 'no-spherical-seat', [...new Set(ends.map(({ id }) => id))]);
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
