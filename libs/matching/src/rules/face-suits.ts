import type { Needs } from '../ask/needs.js';
import type { MatchSettings } from '../ask/settings.js';
import type { FaceShape, FaceSurface, Item } from '../register/item.js';
import { eachEnd } from './each-item.js';
import { CAUTION, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { EndItem } from './parts.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';

/** Shape and surface of the faces suit specimen and material (table in the lab's settings): else a caution. */
export const faceSuits = rule({
  code: 'face-suits',
  source: 'common practice, no source; liners: ISO 13934-2 (seen in a secondary copy)',
  cautionsByOnePart: true,
  checks: [
    { sees: ['ends'], judge: ({ ends }, context, report) => eachEnd(ends, fixedFaces, context, report) },
    {
      sees: ['faces'],
      judge: ({ faces }, context, report) =>
        faces ? suits(faces, faces.details.shape, faces.details.surface, context, report) : PASS,
    },
  ],
  sentences: {
    surface: ({ first, need, has, ok }) =>
      ok
        ? `The ${has} faces of ${first} suit the material.`
        : `${first} has ${has} faces; ${need} suit this material. Watch for slip or a break in the jaw.`,
    'face-shape': ({ first, need, has }) => `${first} has ${has} faces; ${need} ones suit these ends. Watch for slip.`,
  },
});

/** The faces that are part of a grip; separate ones are judged apart. */
function fixedFaces(end: EndItem, context: Context, report: Report): Outcome {
  if (end.kind !== 'grip' || end.details.faceSlot) return PASS;
  return suits(end, end.details.fixedFaceShape, end.details.fixedFaceSurface, context, report);
}

function suits(
  item: Item,
  shape: FaceShape | null,
  surface: FaceSurface | null,
  context: Context,
  report: Report,
): Outcome {
  return worst(surfaceSuits(item, surface, context, report), shapeSuits(item, shape, context, report));
}

function surfaceSuits(item: Item, surface: FaceSurface | null, { needs, settings }: Context, report: Report): Outcome {
  const { ends } = needs;
  if (!surface || ends.by !== 'grips' || ends.surfaces.length === 0) return PASS;
  const suitable = suitableFor(needs, settings);
  if (ends.surfaces.includes(surface) || suitable.includes(surface))
    return report.say(PASS, 'surface', item, surface, surface);
  const words = () => [...new Set([...ends.surfaces, ...suitable])].join(', ');
  return report.say(CAUTION, 'surface', item, words, surface);
}

function suitableFor({ materialGroup }: Needs, { suitableFaces }: MatchSettings): readonly FaceSurface[] {
  return materialGroup ? suitableFaces[materialGroup] : NONE;
}

const NONE: readonly FaceSurface[] = [];

/** Round ends go into vees, and vees take nothing else. */
function shapeSuits(item: Item, shape: FaceShape | null, { needs }: Context, report: Report): Outcome {
  const round = needs.specimen.endShape === 'round';
  if (!shape || round === (shape === 'vee')) return PASS;
  return report.say(CAUTION, 'face-shape', item, round ? 'vee' : 'flat', shape);
}
