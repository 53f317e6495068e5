import type { CurveLack } from '#libs/bench/src/index.js';
import type { ResultEntity } from './result.entity.js';

/** What the curve behind a peak could not give; nothing for other results, and for curves read before this was kept. */
export function curveLacksOf({ basis }: Pick<ResultEntity, 'basis'>): CurveLack[] {
  return basis.lacks ?? [];
}
