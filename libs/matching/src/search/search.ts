/*
 * search/: finds the trains that pass, and the nearest one where none does. It may import register/, ask/ and rules/.
 */
import type { Frame, Item, ItemKind, TimeWindow } from '../register/item.js';
import type { Lab } from '../register/lab.js';
import type { Needs } from '../ask/needs.js';
import type { MatchSettings } from '../ask/settings.js';
import { AnyChoices, AnyMemo } from './any-choices.js';
import { CellRanks } from './cell-ranks.js';
import type { Tally } from './checks.js';
import { labTally } from './frame-tally.js';
import { holderGroups } from './holders.js';
import { JoinedEnds } from './joined-ends.js';
import { indexLab, indexThrough } from './lab-index.js';
import type { LabIndex } from './lab-index.js';
import { optionsFor, optionsWith } from './options.js';
import type { Options } from './options.js';
import { Reach } from './reach.js';
import { RequestContext } from './request-context.js';
import { Routes } from './routes.js';
import { SoundChoices, SoundMemo } from './sound-choices.js';

/** The data that the search of one request works with. */
export interface Search {
  index: LabIndex;
  context: RequestContext;
  options: Options;
  routes: Routes;
  cells: CellRanks;
  reach: Reach;
  joined: JoinedEnds;
  /** What the lab fails and cautions whatever frame is taken. */
  ofLab: Tally;
  /** Choices that fail nothing, and all of them; frames that are alike share what is found. */
  soundFor(frame: Frame): SoundChoices;
  anyFor(frame: Frame): AnyChoices;
}

/** Makes a lab ready for one request. */
export function searchOf(lab: Lab, needs: Needs, period: TimeWindow, settings: MatchSettings): Search {
  const index = indexLab(lab);
  const context = new RequestContext(needs, settings, period, lab.technicians);
  const options = optionsFor(index, context);
  const routes = new Routes(index, context);
  const anyMemo = new AnyMemo();
  return {
    index,
    context,
    options,
    routes,
    cells: new CellRanks(options, index, context),
    reach: new Reach(routes, holderGroups(options, index, settings), settings),
    joined: new JoinedEnds(options, routes),
    ofLab: labTally(context),
    soundFor: soundAmong(options, context),
    anyFor: (frame) => new AnyChoices(frame, options, context, anyMemo),
  };
}

/**
 * The search as it would be if an item were changed or bought, reduced to trains that contain the item: on a frame that was refused
 * before no other train can pass. Whatever does not depend on the item is shared with the original search.
 */
export function searchThrough(base: Search, item: Item): Search {
  const index = indexThrough(base.index, item);
  // A frame that changed keeps its id, by which a context remembers common windows.
  if (item.kind === 'frame') return { ...base, index, context: base.context.apartFrom([item]) };
  const units = (index.pools.get(item.kind) ?? []).flatMap((pool) => pool.units);
  const context = base.context.apartFrom(units);
  const options = optionsWith(base.options, item.kind, index, context);
  const { settings } = context;
  const routes = item.kind === 'adapter' ? new Routes(index, context) : base.routes;
  const held = routes === base.routes && options.ends === base.options.ends && options.faces === base.options.faces;
  const stands = BESIDE.includes(item.kind);
  return {
    ...base,
    index,
    context,
    options,
    routes,
    cells: item.kind === 'load-cell' ? new CellRanks(options, index, context) : base.cells,
    reach: held ? base.reach : new Reach(routes, holderGroups(options, index, settings), settings),
    soundFor: stands ? soundAmong(options, context) : base.soundFor,
  };
}

/** Kinds that stand beside the specimen. */
const BESIDE: readonly ItemKind[] = ['extensometer', 'chamber', 'guard', 'transducer'];

function soundAmong(options: Options, context: RequestContext): Search['soundFor'] {
  const memo = new SoundMemo();
  return (frame) => new SoundChoices(frame, options, context, memo);
}
