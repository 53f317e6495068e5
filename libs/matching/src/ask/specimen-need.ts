import type { Ask } from './ask.js';
import type { Method } from '../register/method.js';
import type { SpecimenNeed } from './needs.js';

/** What the specimen asks of grips, fixtures and test space, mm. Ends that are not described are as thick and wide as the body. */
export function specimenNeed(ask: Ask, method: Method): SpecimenNeed {
  const { geometry } = ask;
  const round = geometry.diameterMm ?? geometry.outerDiameterMm;
  const bodyThicknessMm = geometry.thicknessMm ?? round ?? 0;
  const bodyWidthMm = geometry.widthMm ?? round ?? 0;
  return {
    endShape: ask.endShape,
    gripThicknessMm: geometry.endThicknessMm ?? bodyThicknessMm,
    gripWidthMm: geometry.endWidthMm ?? geometry.endThicknessMm ?? bodyWidthMm,
    freeLengthMm: freeLength(ask, method),
    bodyThicknessMm,
    bodyWidthMm,
    totalLengthMm: geometry.lengthMm ?? null,
    spanMm: geometry.spanMm ?? null,
  };
}

/** Length between the two ends of the train at the start of the test. */
function freeLength({ geometry }: Ask, { ends }: Method): number {
  const { gripSeparationMm, heightMm, thicknessMm = 0, diameterMm = 0, parallelLengthMm = 0, lengthMm = 0 } = geometry;
  if (ends.by === 'platens') return heightMm ?? thicknessMm;
  if (ends.by === 'fixture') return gripSeparationMm ?? heightMm ?? Math.max(thicknessMm, diameterMm);
  return gripSeparationMm ?? (parallelLengthMm || lengthMm);
}
