import type { UnitPool } from '../candidate.js';
import type { Frame, Item, TimeWindow } from '../item.js';
import type { Lab } from '../lab.js';
import type { Needs } from '../needs.js';
import type { MatchSettings } from '../settings.js';
import { AnyChoices } from './any-choices.js';
import { CellRanks } from './cell-ranks.js';
import type { Tally } from './checks.js';
import { labTally } from './frame-tally.js';
import { holderGroups } from './holders.js';
import { indexLab } from './lab-index.js';
import type { LabIndex } from './lab-index.js';
import { optionsFor } from './options.js';
import type { Options } from './options.js';
import { Reach } from './reach.js';
import { RequestContext } from './request-context.js';
import { Routes } from './routes.js';
import { SoundChoices } from './sound-choices.js';

/** Everything that the search of one request has at hand. */
export interface Search {
  index: LabIndex;
  context: RequestContext;
  options: Options;
  routes: Routes;
  cells: CellRanks;
  reach: Reach;
  /** Equal units in the order of frames where none of them hangs, by their list. */
  pools: Map<readonly Item[], UnitPool>;
  /** What the lab fails and cautions whatever frame is taken. */
  ofLab: Tally;
  /** Choices that fail nothing, and all of them; frames of one class share them. */
  soundFor(frame: Frame, classKey: string): SoundChoices;
  anyFor(frame: Frame, classKey: string): AnyChoices;
}

/** Makes a lab ready for one request. */
export function searchOf(lab: Lab, needs: Needs, period: TimeWindow, settings: MatchSettings): Search {
  const index = indexLab(lab);
  const context = new RequestContext(needs, settings, period, lab.technicians);
  const options = optionsFor(index, context);
  const routes = new Routes(index, context);
  return {
    index,
    context,
    options,
    routes,
    cells: new CellRanks(options, context),
    reach: new Reach(routes, holderGroups(options, settings), settings),
    pools: new Map(),
    ofLab: labTally(context),
    soundFor: byClass((frame) => new SoundChoices(frame, options, context)),
    anyFor: byClass((frame) => new AnyChoices(frame, options, context)),
  };
}

function byClass<T>(make: (frame: Frame) => T): (frame: Frame, classKey: string) => T {
  const known = new Map<string, T>();
  return (frame, classKey) => {
    const choices = known.get(classKey) ?? make(frame);
    known.set(classKey, choices);
    return choices;
  };
}
