import type { Direction, Item, RatingPoint } from './item.js';

/** A rating holds up to so much above its hottest point: steel loses little below about 100 °C (common practice, no source). */
const KNOWN_ABOVE_K = 50;

/**
 * What an item carries in a direction at a temperature, N or N·m: linear between the points of its curve, the coldest point's value
 * below them, the hottest one's up to 50 K above them. 0 when it is not made for that direction, and where it is hotter: nobody has
 * said what it carries there.
 */
export function ratingAt({ ratings }: Pick<Item, 'ratings'>, direction: Direction, temperatureC: number): number {
  const curve = ratings[direction];
  if (!curve) return 0;
  let below: RatingPoint | null = null;
  for (const point of curve) {
    if (point.temperatureC >= temperatureC) return below ? between(below, point, temperatureC) : point.rating;
    below = point;
  }
  return below && isKnownAt(below, temperatureC) ? below.rating : 0;
}

/** The hottest temperature that an item has a rating for in a direction, °C; null when it is not made for it. */
export function hottestRating({ ratings }: Pick<Item, 'ratings'>, direction: Direction): number | null {
  return ratings[direction]?.at(-1)?.temperatureC ?? null;
}

function isKnownAt(hottest: RatingPoint, temperatureC: number): boolean {
  return temperatureC <= hottest.temperatureC + KNOWN_ABOVE_K;
}

function between(low: RatingPoint, high: RatingPoint, temperatureC: number): number {
  const share = (temperatureC - low.temperatureC) / (high.temperatureC - low.temperatureC);
  return low.rating + share * (high.rating - low.rating);
}
