import type { Coupling, Direction, FixtureDetails, FixturePurpose, Side } from '#libs/matching/src/index.js';
import { rated, ratedOver, ROOM, socket, UNCALIBRATED } from './item-parts.js';
import type { DemoItem } from './item-parts.js';

const BEND: Partial<FixtureDetails> = { noseRadiusMm: 5, supportRadiusMm: 5 };

/** Bend fixtures, peel tables and what the lab built itself to hold bicycle parts and tent fittings. */
export const FIXTURES: DemoItem<'fixture'>[] = [
  fixture('FX-BEND-S1', 'Three-point bend fixture, small', 'Trestle B1', ['flexure-3', 'short-beam'], 2000, socket(15), {
    ...BEND, noseRadiusMm: 2.5, supportRadiusMm: 2, spanMinMm: 8, spanMaxMm: 100, specimenWidthMaxMm: 30, specimenThicknessMaxMm: 12,
  }),
  fixture('FX-BEND-S2', 'Three-point bend fixture, small', 'Trestle B2', ['flexure-3'], 2000, socket(15), {
    ...BEND, spanMinMm: 30, spanMaxMm: 200, specimenWidthMaxMm: 40, specimenThicknessMaxMm: 15,
  }),
  fixture('FX-BEND-M1', 'Three- and four-point bend fixture', 'Trestle B10', ['flexure-3', 'flexure-4-third', 'flexure-4-half'], 10_000, socket(30), {
    ...BEND, spanMinMm: 30, spanMaxMm: 360, specimenWidthMaxMm: 60, specimenThicknessMaxMm: 30,
  }, [-70, 200]),
  fixture('FX-BEND-M2', 'Three-point bend fixture', 'Trestle B10', ['flexure-3'], 10_000, socket(30), {
    ...BEND, spanMinMm: 30, spanMaxMm: 360, specimenWidthMaxMm: 60, specimenThicknessMaxMm: 30,
  }),
  fixture('FX-BEND-L1', 'Heavy bend fixture', 'Trestle B100', ['flexure-3', 'flexure-4-third'], 100_000, socket(60), {
    noseRadiusMm: 15, supportRadiusMm: 15, spanMinMm: 100, spanMaxMm: 600, specimenWidthMaxMm: 160, specimenThicknessMaxMm: 150,
  }),
  fixture('FX-ILSS-1', 'Short-beam fixture', 'Trestle K10', ['short-beam'], 10_000, socket(30), {
    noseRadiusMm: 3, supportRadiusMm: 1.5, spanMinMm: 8, spanMaxMm: 40, specimenWidthMaxMm: 20, specimenThicknessMaxMm: 8,
  }),
  fixture('FX-CLC-1', 'Combined-loading compression fixture', 'Trestle Q50', ['combined-compression'], 50_000, socket(30), {
    specimenWidthMaxMm: 14, specimenThicknessMaxMm: 6,
  }),
  single('FX-PEEL90-1', 'Peel table 90°', 'Trestle P90', ['peel-90'], 500, socket(15), 'lower', { specimenWidthMaxMm: 100, specimenThicknessMaxMm: 12 }),
  single('FX-PEEL180-1', 'Panel clamp for 180° peel', 'Trestle P180', ['peel-180'], 1000, socket(15), 'lower', { specimenWidthMaxMm: 60, specimenThicknessMaxMm: 10 }),
  fixture('FX-SHEAR2-1', 'Double-shear block for pins', 'Trestle D50', ['double-shear'], 50_000, socket(30), {
    specimenWidthMaxMm: 16, specimenThicknessMaxMm: 16,
  }, undefined, 'tension'),
  fixture('FX-SAND-1', 'Universal joints for bonded blocks', 'Trestle J20', ['sandwich-flatwise'], 20_000, socket(30), {
    specimenWidthMaxMm: 80, specimenThicknessMaxMm: 80,
  }, undefined, 'tension'),
  fixture('FX-FRAC-1', 'Bend rig for notched bars', 'Trestle N100', ['fracture-bend'], 100_000, socket(60), {
    noseRadiusMm: 10, supportRadiusMm: 10, spanMinMm: 100, spanMaxMm: 300, specimenWidthMaxMm: 60, specimenThicknessMaxMm: 60,
  }),
  fixture('FX-HOOK-1', 'Pannier rail and hook puller', 'Northmoor shop 14', ['component-pull'], 5000, socket(15), {
    specimenWidthMaxMm: 120, specimenThicknessMaxMm: 40, outsideWidthMm: 160,
  }, undefined, 'tension'),
  fixture('FX-BUCKLE-1', 'Buckle and webbing yokes', 'Northmoor shop 19', ['component-pull'], 5000, socket(15), {
    specimenWidthMaxMm: 60, specimenThicknessMaxMm: 30, outsideWidthMm: 100,
  }, undefined, 'tension'),
  fixture('FX-PULL-30', 'Yokes for frame lugs and dropouts', 'Northmoor shop 07', ['component-pull'], 30_000, socket(30), {
    specimenWidthMaxMm: 200, specimenThicknessMaxMm: 80, outsideWidthMm: 260,
  }, undefined, 'tension'),
  fixture('FX-BAR-1', 'Handlebar clamp and loading saddle', 'Northmoor shop 03', ['component-push'], 10_000, socket(30), {
    specimenWidthMaxMm: 820, specimenThicknessMaxMm: 200, outsideWidthMm: 380,
  }),
  fixture('FX-RIM-1', 'Rim cradle and radial loading shoe', 'Northmoor shop 05', ['component-push'], 30_000, socket(30), {
    specimenWidthMaxMm: 700, specimenThicknessMaxMm: 80, outsideWidthMm: 410,
  }),
  fixture('FX-CRANK-1', 'Crank block and pedal loader', 'Northmoor shop 11', ['component-push'], 100_000, socket(60), {
    specimenWidthMaxMm: 220, specimenThicknessMaxMm: 120, outsideWidthMm: 420,
  }),
];

function fixture(
  tag: string,
  name: string,
  model: string,
  purposes: readonly FixturePurpose[],
  ratingN: number,
  coupling: Coupling,
  details: Partial<FixtureDetails>,
  chamber?: readonly [number, number],
  direction: Direction = 'compression',
  side: Side = 'pair',
): DemoItem<'fixture'> {
  const heavy = ratingN / 10_000;
  return {
    kind: 'fixture',
    tag,
    name,
    model,
    serialNumber: `TR-${tag.slice(3)}`,
    place: 'Fixture shelf',
    massKg: Number((0.6 + heavy * 1.1).toFixed(2)),
    lengthMm: Math.round(70 + heavy * 8),
    ratings: chamber ? ratedOver(ratingN, chamber[0], chamber[1], 0.8, direction) : rated(ratingN, direction),
    ...ROOM,
    ...(chamber ? { temperatureMinC: chamber[0], temperatureMaxC: chamber[1] } : {}),
    ...UNCALIBRATED,
    details: {
      side,
      coupling,
      lowerMassKg: side === 'pair' ? Number((1.4 + heavy * 2.2).toFixed(2)) : null,
      lowerLengthMm: side === 'pair' ? Math.round(90 + heavy * 8) : null,
      outsideWidthMm: 180,
      purposes,
      spanMinMm: null,
      spanMaxMm: null,
      noseRadiusMm: null,
      supportRadiusMm: null,
      specimenWidthMaxMm: 50,
      specimenThicknessMaxMm: 20,
      ...details,
    },
  };
}

/** A fixture below that works against a grip above. */
function single(
  tag: string,
  name: string,
  model: string,
  purposes: readonly FixturePurpose[],
  ratingN: number,
  coupling: Coupling,
  side: Side,
  details: Partial<FixtureDetails>,
): DemoItem<'fixture'> {
  return fixture(tag, name, model, purposes, ratingN, coupling, details, undefined, 'tension', side);
}
