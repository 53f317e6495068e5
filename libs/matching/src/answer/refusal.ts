import type { FrameRefusal, Verdict } from './answer.js';
import { linksOf } from './links.js';
import { failuresOf, verdictOf } from './judge-train.js';
import { endWords } from '../ask/end-words.js';
import { RULES } from '../rules/rules.js';
import { cellCapacity } from '../rules/cell-capacity.js';
import { FAIL } from '../rules/outcome.js';
import { FullReport } from '../rules/report.js';
import type { Rule } from '../rules/rule.js';
import type { RuleCode } from '../rules/rules.js';
import { specimenFit } from '../rules/specimen-fit.js';
import type { Naming } from '../rules/sentence.js';
import { blankParts } from '../rules/parts.js';
import type { Parts } from '../rules/parts.js';
import { FRAME_RULES_OUT } from '../search/checks.js';
import { NO_RULES, ruleSets } from '../search/rule-set.js';
import { nearestTrain } from '../search/nearest-train.js';
import type { Search } from '../search/search.js';
import type { Site } from '../search/site.js';

/**
 * Why a frame has no candidate: the fewest rules that stand in the way, on the train that comes nearest. A frame that is too weak for
 * the load has no near train: every link that would carry it only adds failures that say the same.
 */
export function refusalOf(site: Site, search: Search): FrameRefusal {
  return new Refusal(site, search);
}

/** The failing rules are worked out on first use. JSON holds them. */
class Refusal implements FrameRefusal {
  readonly frameId: string;
  readonly nearest: FrameRefusal['nearest'];
  readonly #near: Parts | null;
  readonly #site: Site;
  readonly #search: Search;
  #failing: FrameRefusal['failing'] | null = null;

  constructor(site: Site, search: Search) {
    const { frame } = site.at;
    const near = isRuledOut(site) ? null : nearestTrain(site, search);
    this.frameId = frame.id;
    this.nearest = near && { frameId: frame.id, cellAt: near.cellAt, links: linksOf(near) };
    this.#near = near;
    this.#site = site;
    this.#search = search;
  }

  get failing(): FrameRefusal['failing'] {
    return (this.#failing ??= this.#near
      ? failuresOf(this.#near, this.#search.context, naming(this.#search))
      : [...frameAlone(this.#site, this.#search), ...lacks(this.#search)]);
  }

  toJSON(): FrameRefusal {
    const { frameId, failing, nearest } = this;
    return { frameId, failing, nearest };
  }
}

function isRuledOut({ own }: Site): boolean {
  return ruleSets.common(own.fails, FRAME_RULES_OUT) !== NO_RULES;
}

function naming({ index }: Search): Naming {
  return (id) => index.byId.get(id)?.tag ?? id;
}

/** What the frame fails whatever hangs in it. */
function frameAlone({ at: { frame }, own }: Site, search: Search): Verdict[] {
  if (own.fails === NO_RULES) return [];
  return failuresOf({ ...blankParts(), frame }, search.context, naming(search), FRAME_RULES);
}

/** The rules with those of their checks that look at no more than the frame. */
const FRAME_RULES: readonly Rule<RuleCode>[] = RULES.map((rule) => ({
  ...rule,
  checks: rule.checks.filter(({ sees }) => sees.every((part) => part === 'frame')),
})).filter(({ checks }) => checks.length > 0);

/** The lab lacks a whole kind of item. */
function lacks(search: Search): Verdict[] {
  const { cells, ends } = search.options;
  const { needs } = search.context;
  return [
    ...(cells.isEmpty ? [lack(cellCapacity, 'no-cell', needs.direction, search)] : []),
    ...(ends.isEmpty ? [lack(specimenFit, 'no-ends', endWords(needs), search)] : []),
  ];
}

function lack(rule: Rule<RuleCode>, reason: string, required: string, search: Search): Verdict {
  const report = new FullReport();
  report.say(FAIL, reason, [], required);
  return verdictOf({ ...rule, source: 'register' }, report.found, naming(search));
}
