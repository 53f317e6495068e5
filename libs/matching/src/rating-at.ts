import type { Direction, Item, RatingPoint } from './item.js';

/**
 * What an item carries in a direction at a temperature, N or N·m: linear between the points of its curve, the nearest point's
 * value beyond them. 0 when it is not made for that direction.
 */
export function ratingAt({ ratings }: Pick<Item, 'ratings'>, direction: Direction, temperatureC: number): number {
  const curve = ratings[direction] ?? [];
  const above = curve.findIndex((point) => point.temperatureC >= temperatureC);
  if (above === -1) return curve.at(-1)?.rating ?? 0;
  return above === 0 ? curve[0]!.rating : between(curve[above - 1]!, curve[above]!, temperatureC);
}

function between(low: RatingPoint, high: RatingPoint, temperatureC: number): number {
  const share = (temperatureC - low.temperatureC) / (high.temperatureC - low.temperatureC);
  return low.rating + share * (high.rating - low.rating);
}
