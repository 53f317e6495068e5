import type { Frame, FrameDetails } from '../item.js';

/**
 * The fields of a frame that its checks with each other part look at. Frames alike in these pass and fail the same with every choice for
 * that part, so that a request works them out once. `test/properties/matching/frame-traits.spec.ts` holds the rules to it.
 */
export const FRAME_FIELDS = {
  cells: [
    'tensionCapacityN',
    'compressionCapacityN',
    'torqueCapacityNm',
    'crossheadCoupling',
    'baseCoupling',
    'cellPositions',
  ],
  ends: ['columnClearanceMm', 'utilitiesAtFrame'],
  faces: ['utilitiesAtFrame'],
  extensometers: ['channels', 'utilitiesAtFrame'],
  chambers: ['columnClearanceMm', 'utilitiesAtFrame'],
  guards: ['stiffnessNPerMm', 'guardEnergyJ', 'guardInterlocked', 'columnClearanceMm'],
  thermocouples: ['channels'],
} as const satisfies Record<string, readonly (keyof FrameDetails)[]>;

export type FramePart = keyof typeof FRAME_FIELDS;

/** For each part the values of those fields as one key, one key for all that stands beside the specimen, and one for the cells' seats. */
export type FrameTraits = Readonly<Record<FramePart | 'beside' | 'seats', string>>;

const known = new WeakMap<Frame, FrameTraits>();

export function traitsOf(frame: Frame): FrameTraits {
  const found = known.get(frame) ?? makeTraits(frame);
  known.set(frame, found);
  return found;
}

function makeTraits({ details }: Frame): FrameTraits {
  const of = (part: FramePart) => JSON.stringify(FRAME_FIELDS[part].map((field) => details[field]));
  const [extensometers, chambers, guards, thermocouples] = [
    of('extensometers'),
    of('chambers'),
    of('guards'),
    of('thermocouples'),
  ];
  return {
    seats: JSON.stringify([details.cellPositions, details.crossheadCoupling, details.baseCoupling]),
    cells: of('cells'),
    ends: of('ends'),
    faces: of('faces'),
    extensometers,
    chambers,
    guards,
    thermocouples,
    beside: [extensometers, chambers, guards, thermocouples].join('\n'),
  };
}

/** Makes a value once a key. */
export function onceAKey<T>(): (key: string, make: () => T) => T {
  const made = new Map<string, { value: T }>();
  return (key, make) => {
    const found = made.get(key) ?? { value: make() };
    made.set(key, found);
    return found.value;
  };
}
