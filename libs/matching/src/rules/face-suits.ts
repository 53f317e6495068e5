import type { FaceShape, FaceSurface } from '../item.js';
import type { Needs } from '../needs.js';
import type { MatchSettings } from '../settings.js';
import { bothEnds, told, worse, worstEnd } from './rule.js';
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
      passes: ({ ends }, context) =>
        bothEnds(
          ends,
          context,
          (end, { needs, settings }) =>
            end.kind !== 'grip' ||
            end.details.faceSlot !== null ||
            (isSuitable(end.details.fixedFaceSurface, needs, settings) && isOfShape(end.details.fixedFaceShape, needs)),
        ),
      otherwise: 'caution',
    },
    {
      sees: ['faces'],
      judge: ({ faces }, context) => faces && suits(faces.id, faces.details.shape, faces.details.surface, context),
      passes: ({ faces }, { needs, settings }) =>
        !faces || (isSuitable(faces.details.surface, needs, settings) && isOfShape(faces.details.shape, needs)),
      otherwise: 'caution',
    },
  ],
};

function suits(id: string, shape: FaceShape | null, surface: FaceSurface | null, context: Context): Finding | null {
  return worse(surfaceSuits(id, surface, context), shapeSuits(id, shape, context));
}

function surfaceSuits(id: string, surface: FaceSurface | null, { needs, settings }: Context): Finding | null {
  if (!surface || needs.ends.by !== 'grips' || needs.ends.surfaces.length === 0) return null;
  if (isSuitable(surface, needs, settings)) return told('pass', 'surface', [id], surface, surface);
  const suitable = [...new Set([...needs.ends.surfaces, ...suitableFor(needs, settings)])].join(', ');
  return told('caution', 'surface', [id], suitable, surface);
}

function isSuitable(surface: FaceSurface | null, needs: Needs, settings: MatchSettings): boolean {
  if (!surface || needs.ends.by !== 'grips' || needs.ends.surfaces.length === 0) return true;
  return needs.ends.surfaces.includes(surface) || suitableFor(needs, settings).includes(surface);
}

function suitableFor({ materialGroup }: Needs, { suitableFaces }: MatchSettings): readonly FaceSurface[] {
  return materialGroup ? suitableFaces[materialGroup] : NONE;
}

const NONE: readonly FaceSurface[] = [];

function shapeSuits(id: string, shape: FaceShape | null, { needs }: Context): Finding | null {
  if (!shape || isOfShape(shape, needs)) return null;
  return told('caution', 'face-shape', [id], needs.specimen.endShape === 'round' ? 'vee' : 'flat', shape);
}

/** Round ends go into vees, and vees take nothing else. */
function isOfShape(shape: FaceShape | null, { specimen }: Needs): boolean {
  return !shape || (specimen.endShape === 'round') === (shape === 'vee');
}
