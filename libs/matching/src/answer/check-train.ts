import type { Link, LimitStops, Train, Verdict } from './answer.js';
import type { TimeWindow } from '../register/item.js';
import { judgeTrain } from './judge-train.js';
import type { Lab } from '../register/lab.js';
import type { Needs } from '../ask/needs.js';
import { together } from '../rules/calibration-in-force.js';
import { limitStopsOf } from './limit-stops.js';
import { partsOf } from './links.js';
import { indexLab } from '../search/lab-index.js';
import { RequestContext } from '../search/request-context.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import type { MatchSettings } from '../ask/settings.js';

/** What the rules say about one train that somebody put together. */
export interface TrainCheck {
  verdicts: readonly Verdict[];
  passes: boolean;
  /** When all of its units are usable and somebody authorised is on shift. */
  windows: readonly TimeWindow[];
  limitStops: LimitStops;
}

/**
 * Judges one given train by every rule, unit by unit: at the bench when an equal unit stands in, in trial plans, and to re-check a
 * candidate. Nothing is searched.
 *
 * @param period when the test would run, half-open, UTC
 * @returns null when the train is not one: no frame, no cell, nothing that holds the specimen, or an unknown item
 */
export function checkTrain(
  lab: Lab,
  train: Pick<Train, 'frameId'> & { links: readonly Pick<Link, 'role' | 'itemId'>[] },
  needs: Needs,
  period: TimeWindow,
  settings: MatchSettings = DEFAULT_SETTINGS,
): TrainCheck | null {
  const { byId } = indexLab(lab);
  const parts = partsOf(train, byId);
  if (!parts) return null;
  const context = new RequestContext(needs, settings, period, lab.technicians);
  const verdicts = judgeTrain(parts, context, (id) => byId.get(id)?.tag ?? id);
  return {
    verdicts,
    passes: verdicts.every(({ outcome }) => outcome !== 'fail'),
    windows: together(parts, context),
    limitStops: limitStopsOf(parts, needs, settings),
  };
}
