import { hasTrain } from './best-trains.js';
import type { Search } from './search.js';
import { Site } from './site.js';

/** Ids of the frames on which at least one train passes; cheaper than a whole answer. */
export function framesThatCan(search: Search, only: ReadonlySet<string>): string[] {
  return search.index.frames
    .filter((at) => only.has(at.frame.id) && hasTrain(new Site(at, search), search))
    .map(({ frame }) => frame.id);
}
