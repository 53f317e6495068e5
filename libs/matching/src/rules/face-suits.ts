import type { FaceShape, FaceSurface, Grip, JawFace } from '../item.js';
import type { Parts } from '../parts.js';
import { told, worst } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** Shape and surface of the faces suit specimen and material (table in the lab's settings): else a caution. */
export const faceSuits: Rule = {
  code: 'face-suits',
  source: 'common practice, no source; liners: ISO 13934-2 (seen in a secondary copy)',
  checks: [
    {
      sees: ['ends'],
      judge: ({ ends }, context) => worst(grips(ends).map((grip) => suits(grip, ends.faces, context))),
    },
  ],
};

function grips({ upper, lower }: Parts['ends']): Grip[] {
  return [upper, ...(upper.id === lower.id ? [] : [lower])].filter((end) => end.kind === 'grip');
}

function suits(grip: Grip, faces: JawFace | null, context: Context): Finding | null {
  const separate = faces && grip.details.faceSlot === faces.details.slot ? faces : null;
  const item = separate ?? grip;
  const surface = separate ? separate.details.surface : grip.details.fixedFaceSurface;
  const shape = separate ? separate.details.shape : grip.details.fixedFaceShape;
  return worst([surfaceSuits(item.id, surface, context), shapeSuits(item.id, shape, context)]);
}

function surfaceSuits(id: string, surface: FaceSurface | null, { needs, settings }: Context): Finding | null {
  if (!surface || needs.ends.by !== 'grips' || needs.ends.surfaces.length === 0) return null;
  const byGroup = needs.materialGroup ? settings.suitableFaces[needs.materialGroup] : [];
  const suitable = [...new Set([...needs.ends.surfaces, ...byGroup])];
  return suitable.includes(surface)
    ? told('pass', 'surface', [id], suitable.join(', '), surface)
    : told('caution', 'surface', [id], suitable.join(', '), surface);
}

function shapeSuits(id: string, shape: FaceShape | null, { needs }: Context): Finding | null {
  if (!shape) return null;
  const round = needs.specimen.endShape === 'round';
  if (round === (shape === 'vee')) return null;
  return round || shape === 'vee' ? told('caution', 'face-shape', [id], round ? 'vee' : 'flat', shape) : null;
}
