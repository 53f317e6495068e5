import type { FaceShape, FaceSurface } from '../item.js';
import { told, worse, worstEnd } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** Shape and surface of the faces suit specimen and material (table in the lab's settings): else a caution. */
export const faceSuits: Rule = {
  code: 'face-suits',
  source: 'common practice, no source; liners: ISO 13934-2 (seen in a secondary copy)',
  checks: [
    {
      sees: ['ends'],
      judge: ({ ends }, context) =>
        worstEnd(ends, (end) =>
          end.kind === 'grip' && !end.details.faceSlot
            ? suits(end.id, end.details.fixedFaceShape, end.details.fixedFaceSurface, context)
            : null,
        ),
    },
    {
      sees: ['faces'],
      judge: ({ faces }, context) => faces && suits(faces.id, faces.details.shape, faces.details.surface, context),
    },
  ],
};

function suits(id: string, shape: FaceShape | null, surface: FaceSurface | null, context: Context): Finding | null {
  return worse(surfaceSuits(id, surface, context), shapeSuits(id, shape, context));
}

function surfaceSuits(id: string, surface: FaceSurface | null, { needs, settings }: Context): Finding | null {
  if (!surface || needs.ends.by !== 'grips' || needs.ends.surfaces.length === 0) return null;
  const byGroup = needs.materialGroup ? settings.suitableFaces[needs.materialGroup] : [];
  if (needs.ends.surfaces.includes(surface) || byGroup.includes(surface))
    return told('pass', 'surface', [id], surface, surface);
  return told('caution', 'surface', [id], [...new Set([...needs.ends.surfaces, ...byGroup])].join(', '), surface);
}

function shapeSuits(id: string, shape: FaceShape | null, { needs }: Context): Finding | null {
  if (!shape) return null;
  const round = needs.specimen.endShape === 'round';
  if (round === (shape === 'vee')) return null;
  return round || shape === 'vee' ? told('caution', 'face-shape', [id], round ? 'vee' : 'flat', shape) : null;
}
