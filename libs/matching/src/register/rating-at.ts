import type { Direction, Item, RatingPoint } from './item.js';

/**
 * What an item carries in a direction at a temperature, N or N·m: linear between the points of its curve, the nearest point's
 * value beyond them. 0 when it is not made for that direction.
 */
export function ratingAt({ ratings }: Pick<Item, 'ratings'>, direction: Direction, temperatureC: number): number {
  const curve = ratings[direction];
  if (!curve) return 0;
  let below: RatingPoint | null = null;
  for (const point of curve) {
    if (point.temperatureC >= temperatureC) return below ? between(below, point, temperatureC) : point.rating;
    below = point;
  }
  return below?.rating ?? 0;
}

function between(low: RatingPoint, high: RatingPoint, temperatureC: number): number {
  const share = (temperatureC - low.temperatureC) / (high.temperatureC - low.temperatureC);
  return low.rating + share * (high.rating - low.rating);
}
