import type { Frame, FrameDetails } from '../register/item.js';
import { FRAME_CHECKS } from './checks.js';
import type { ChosenPart } from './checks.js';

/**
 * The fields of a frame that its checks with one other part read, as the checks say themselves. Frames that agree in these pass and
 * fail the same with every choice for that part, so that a request works them out once.
 */
function fieldsFor(part: ChosenPart): readonly (keyof FrameDetails)[] {
  return [...new Set(FRAME_CHECKS[part].flatMap(({ frameFields = [] }) => frameFields))];
}

/** For each part the values of those fields as one key, one key for all that stands beside the specimen, and one for the cells' seats. */
export type FrameTraits = Readonly<Record<ChosenPart | 'beside' | 'seats', string>>;

const known = new WeakMap<Frame, FrameTraits>();

export function traitsOf(frame: Frame): FrameTraits {
  const found = known.get(frame) ?? makeTraits(frame);
  known.set(frame, found);
  return found;
}

const FIELDS = Object.entries(FRAME_CHECKS).map(([part]) => [part, fieldsFor(part as ChosenPart)] as const);

function makeTraits({ details }: Frame): FrameTraits {
  const traits = Object.fromEntries(
    FIELDS.map(([part, fields]) => [part, JSON.stringify(fields.map((field) => details[field]))]),
  ) as Record<ChosenPart, string>;
  const { extensometer, chamber, guard, thermocouple } = traits;
  return {
    ...traits,
    seats: JSON.stringify([details.cellPositions, details.crossheadCoupling, details.baseCoupling]),
    beside: [extensometer, chamber, guard, thermocouple].join('\n'),
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
