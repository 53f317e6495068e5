import { fieldProblem, numberProblem, refuseIfAny } from '#libs/errors/src/index.js';

/** Bending of a specimen under load, each as a share of the mean axial strain, in percent. */
export interface Bending {
  meanStrain: number;
  /** Across the thickness and across the width; a sign says to which side. */
  thicknessPct: number;
  widthPct: number;
  /** |thickness| + |width|. */
  totalPct: number;
}

/**
 * Percent bending of a flat specimen with three gauges, ASTM E1012 (formulas from memory, medium):
 * mean = ((e1 + e2)/2 + e3)/2; thickness = (mean − e3)/mean; width = 4/3 · ((e2 − e1)/2)/mean.
 *
 * @param front1 front1 and front2: strain near the two edges of the front face, fraction
 * @param back strain in the middle of the back face, fraction
 * @throws {InvalidInput} when a strain is not finite or the mean is 0
 */
export function percentBendingFlat(front1: number, front2: number, back: number): Bending {
  refuseIfAny(strains({ front1, front2, back }));
  const meanStrain = ((front1 + front2) / 2 + back) / 2;
  refuseUnloaded(meanStrain);
  const thicknessPct = (100 * (meanStrain - back)) / meanStrain;
  const widthPct = (100 * (4 / 3) * ((front2 - front1) / 2)) / meanStrain;
  return { meanStrain, thicknessPct, widthPct, totalPct: Math.abs(thicknessPct) + Math.abs(widthPct) };
}

/**
 * Percent bending of two faces, |front − back|/|front + back| · 100, as ASTM D6641 uses it (from memory, medium).
 *
 * @throws {InvalidInput} when a strain is not finite or the mean is 0
 */
export function percentBendingTwoFaces(front: number, back: number): number {
  refuseIfAny(strains({ front, back }));
  refuseUnloaded((front + back) / 2);
  return (100 * Math.abs(front - back)) / Math.abs(front + back);
}

/**
 * Percent bending of a round specimen with four gauges a quarter turn apart, in order around it: the largest bending strain
 * at the surface, √((e1 − e3)² + (e2 − e4)²)/2, over the mean. It follows from a plane section; ASTM E1012 (from memory).
 *
 * @throws {InvalidInput} when a strain is not finite or the mean is 0
 */
export function percentBendingRound(e1: number, e2: number, e3: number, e4: number): number {
  refuseIfAny(strains({ e1, e2, e3, e4 }));
  const meanStrain = (e1 + e2 + e3 + e4) / 4;
  refuseUnloaded(meanStrain);
  return (100 * Math.hypot(e1 - e3, e2 - e4)) / 2 / Math.abs(meanStrain);
}

function strains(byField: Record<string, number>) {
  return Object.entries(byField).map(([field, strain]) => numberProblem(field, strain, { unit: '' }));
}

function refuseUnloaded(meanStrain: number): void {
  if (meanStrain !== 0) return;
  const problem = { field: 'meanStrain', found: meanStrain, allowed: 'other than 0', unit: '' };
  refuseIfAny([fieldProblem(problem, 'Put force on the specimen before reading the gauges.')]);
}
