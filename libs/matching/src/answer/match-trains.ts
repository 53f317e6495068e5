import type { Candidate, FrameRefusal, MatchAnswer } from './answer.js';
import { candidateOf } from './candidate.js';
import { forceLadder } from './force-ladder.js';
import type { TimeWindow } from '../register/item.js';
import type { Lab } from '../register/lab.js';
import type { Needs } from '../ask/needs.js';
import { refusalOf } from './refusal.js';
import { bestTrains } from '../search/best-trains.js';
import { searchOf } from '../search/search.js';
import type { Search } from '../search/search.js';
import { Site } from '../search/site.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import type { MatchSettings } from '../ask/settings.js';

/** Trains kept for each frame; the others differ from these by costlier choices only. */
const TRAINS_PER_FRAME = 2;

/**
 * Which load trains can run a test, ranked, and for every frame that cannot, why not.
 *
 * A lab is indexed once for each list of items: one that changed must come with a new list. The answer carries no advice, see
 * {@link adviceFor}.
 *
 * @param period when the test would run, half-open, UTC
 * @param perFrame how many trains to keep for each frame
 */
export function matchTrains(
  lab: Lab,
  needs: Needs,
  period: TimeWindow,
  settings: MatchSettings = DEFAULT_SETTINGS,
  perFrame: number = TRAINS_PER_FRAME,
): MatchAnswer {
  return answerOf(searchOf(lab, needs, period, settings), perFrame);
}

/** The answer of a search that is ready. */
export function answerOf(search: Search, perFrame: number = TRAINS_PER_FRAME): MatchAnswer {
  const { needs, settings } = search.context;
  const shared = { search, pools: new Map(), verdicts: new Map() };
  const candidates: Candidate[] = [];
  const refusals: FrameRefusal[] = [];
  for (const at of search.index.frames) {
    const site = new Site(at, search);
    const found = bestTrains(site, search, perFrame);
    for (const each of found) candidates.push(candidateOf(each, at, shared));
    if (found.length === 0) refusals.push(refusalOf(site, search));
  }
  candidates.sort((a, b) => a.score - b.score);
  const ladder = forceLadder(needs, candidates[0] ?? null, settings, (id) => search.index.byId.get(id));
  return { needs, candidates, refusals, advice: [], ladder };
}
