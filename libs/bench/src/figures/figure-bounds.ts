import { formatNumber } from '#libs/units/src/index.js';
import { figureKind } from './figure-kind.js';
import type { FigureKind } from './figure-kind.js';

/** What carried the specimen, and what the specimen makes of a load. */
export interface Carrier {
  /** The load cell of the train: its tag, and its rating in `loadUnit`. */
  cell: { tag: string; capacity: number };
  loadUnit: 'N' | 'N·m';
  /**
   * Load that one unit of stress (MPa), force per width (N/mm) or stress intensity (MPa·√m) means on this specimen, in
   * `loadUnit`; null where no formula or no length gives one.
   */
  loadPerStress: number | null;
  /** Whether `loadPerStress` comes from lengths that were measured; otherwise from those that were asked for. */
  isMeasured: boolean;
  /** Full travel of the crosshead, mm; null when no frame is known. */
  travelMm: number | null;
}

/** What a figure may be, in the unit in which it is kept. */
export interface FigureBounds {
  min?: number;
  above?: number;
  max: number;
  /** What to do when a figure lies outside; empty where the bounds say it all. */
  advice: string;
}

/**
 * The bounds of a result that somebody types.
 *
 * A load above the rating of the cell was not measured by it, and neither was a stress, an energy or a stiffness that
 * follows from such a load. The other bounds are what a figure of its kind can be; common practice, no source.
 */
export function figureBounds(key: string, unit: string, carrier: Carrier): FigureBounds {
  return BOUNDS[figureKind(key, unit)](carrier);
}

const BOUNDS: Readonly<Record<FigureKind, (carrier: Carrier) => FigureBounds>> = {
  load: ({ cell }) => ({
    above: 0,
    max: cell.capacity,
    advice: `${cell.tag} is rated for no more: if it was overloaded, mark the specimen invalid and report the cell.`,
  }),
  stress: stressBounds,
  slope: () => plain(0, HIGHEST_MODULUS_MPA),
  'flow-stress': () => plain(0, HIGHEST_STRESS),
  stiffness: ({ cell }) => ({
    min: 0,
    max: cell.capacity / SMALLEST_TRAVEL_MM,
    advice: `${cell.tag} would reach its rating within ${SMALLEST_TRAVEL_MM} mm.`,
  }),
  energy: energyBounds,
  'work-density': (carrier) => {
    const { max, advice } = stressBounds(carrier);
    return { min: 0, max: max * HIGHEST_STRAIN, advice };
  },
  travel: ({ travelMm }) => plain(0, travelMm ?? HIGHEST_TRAVEL_MM),
  strain: () => plain(LOWEST_STRAIN, HIGHEST_STRAIN),
  elongation: () => plain(0, HIGHEST_ELONGATION),
  share: () => plain(0, 1),
  other: () => plain(-HIGHEST_OTHER, HIGHEST_OTHER),
};

/** Above the modulus of diamond, the stiffest bulk material, about 1 100 000 MPa (from memory). */
const HIGHEST_MODULUS_MPA = 1_500_000;
/** MPa or N/mm, where no specimen says more; above the strongest fibres, about 7 000 MPa (from memory). */
const HIGHEST_STRESS = 20_000;
/** Strains as fractions; rubber reaches about 10 to 15 (common practice, no source). */
const HIGHEST_STRAIN = 30;
const LOWEST_STRAIN = -1;
/** Of a broken metal, as a fraction; superplastic ones left aside. */
const HIGHEST_ELONGATION = 10;
const HIGHEST_TRAVEL_MM = 10_000;
/** A micrometre, or a thousandth of a degree: nobody reads a stiffness from less. */
const SMALLEST_TRAVEL_MM = 0.001;
const HIGHEST_TURNS = 1_000;
const HIGHEST_OTHER = 1e9;

/** Lengths that were asked for may be off from those of the specimen; then the load behind a stress is known that well only. */
const ASKED_MARGIN = 2;
/** Rounding of lengths and figures, and the correction for large deflection in bending (ASTM D790: up to about 1.4 at a wide span, computed). */
const MEASURED_MARGIN = 1.5;

function stressBounds({ cell, loadUnit, loadPerStress, isMeasured }: Carrier): FigureBounds {
  if (loadPerStress === null || !(loadPerStress > 0)) return plain(0, HIGHEST_STRESS);
  const max = ((isMeasured ? MEASURED_MARGIN : ASKED_MARGIN) * cell.capacity) / loadPerStress;
  const size = isMeasured ? 'as measured' : 'of the size that was asked for';
  const rated = `${formatNumber(cell.capacity, 3)} ${loadUnit}`;
  return {
    min: 0,
    max,
    advice: `On a specimen ${size} more is a load beyond ${cell.tag}, which is rated for ${rated}.`,
  };
}

/** The rated load over the whole travel, or over a thousand turns. */
function energyBounds({ cell, loadUnit, travelMm }: Carrier): FigureBounds {
  const wayM = (travelMm ?? HIGHEST_TRAVEL_MM) / 1000;
  const max = cell.capacity * (loadUnit === 'N' ? wayM : HIGHEST_TURNS * 2 * Math.PI);
  return { min: 0, max, advice: `${cell.tag} at its rating over the whole travel of the frame would give no more.` };
}

function plain(min: number, max: number): FigureBounds {
  return { min, max, advice: '' };
}
