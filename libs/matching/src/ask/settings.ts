import type { FaceSurface, ItemKind } from '../register/item.js';
import type { MaterialGroup } from '../register/material.js';

/** The lab's own choices. Defaults are common practice, no published source. */
export interface MatchSettings {
  /** Reserve on the high end of the force band, as a fraction. */
  forceMargin: number;
  /** Hung weight above this fraction of the cell's capacity is a caution. */
  hungWeightCaution: number;
  /** Preferred place of the peak in the cell's capacity, as fractions. */
  cellBandLow: number;
  cellBandHigh: number;
  /** Free length that stays between the parts when the crosshead is at its end, mm. */
  clearanceMm: number;
  /** Room temperature when the request names none, and the band that needs no chamber (ISO 291 ambient: 18 to 28), °C. */
  roomC: number;
  roomMinC: number;
  roomMaxC: number;
  /** Energy from which a guard must be fitted, J: whatever breaks, and where fragments may fly. */
  guardFromJ: number;
  guardFragmentsFromJ: number;
  /** Stiffness of a frame with its train where nobody has measured it, N/mm. */
  assumedStiffnessNPerMm: number;
  /** Faces that suit a material group. */
  suitableFaces: Readonly<Record<MaterialGroup, readonly FaceSurface[]>>;
  /** Minutes to take off or put on one item of a kind. */
  changeMin: Readonly<Record<ItemKind, number>>;
  /** Minutes for the shift check after a cell was fitted. */
  shiftCheckMin: number;
  /** Points per unit of each part of the score. */
  weights: { changeoverPerMin: number; forceFit: number; scarce: number; accuracy: number; caution: number };
}

export const DEFAULT_SETTINGS: MatchSettings = {
  forceMargin: 0.2,
  hungWeightCaution: 0.1,
  cellBandLow: 0.1,
  cellBandHigh: 0.8,
  clearanceMm: 10,
  roomC: 23,
  roomMinC: 18,
  roomMaxC: 28,
  guardFromJ: 100,
  guardFragmentsFromJ: 2,
  assumedStiffnessNPerMm: 50_000,
  suitableFaces: {
    metal: ['serrated', 'diamond'],
    plastic: ['fine-serrated', 'diamond'],
    composite: ['fine-serrated', 'diamond'],
    elastomer: ['serrated', 'fine-serrated', 'rubber'],
    foam: ['smooth', 'rubber', 'fine-serrated'],
    concrete: ['serrated'],
    wood: ['serrated', 'fine-serrated'],
    film: ['rubber', 'smooth', 'lined'],
    ceramic: ['smooth', 'lined'],
    adhesive: ['serrated', 'fine-serrated', 'diamond'],
    packaging: ['rubber', 'smooth', 'lined'],
    textile: ['smooth', 'rubber', 'lined'],
  },
  changeMin: {
    frame: 0,
    'load-cell': 15,
    grip: 12,
    'jaw-face': 4,
    fixture: 12,
    platen: 8,
    adapter: 4,
    extensometer: 4,
    chamber: 30,
    guard: 5,
    transducer: 2,
  },
  shiftCheckMin: 10,
  weights: { changeoverPerMin: 1, forceFit: 20, scarce: 5, accuracy: 10, caution: 8 },
};
