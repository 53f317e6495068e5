import type { FrameRefusal, Verdict } from './answer.js';
import { linksOf } from './candidate.js';
import { judgeTrain, verdictOf } from './judge-train.js';
import { endWords } from './end-words.js';
import { RULES } from './rules/rules.js';
import { told, worst } from './rules/rule.js';
import type { Rule } from './rules/rule.js';
import type { Naming } from './words.js';
import type { Parts } from './parts.js';
import type { IndexedFrame } from './search/lab-index.js';
import { nearestTrain } from './search/nearest-train.js';
import type { Search } from './search/search.js';

/**
 * Why a frame has no candidate: the fewest rules that stand in the way, on the train that comes nearest. A frame that is too weak for
 * the load has no near train: every link that would carry it only adds failures that say the same.
 */
export function refusalOf(at: IndexedFrame, search: Search): FrameRefusal {
  const alone = frameAlone(at.frame, search);
  const near = alone.some(({ rule }) => rule === 'frame-capacity') ? null : nearestTrain(at, search);
  if (!near) return { frameId: at.frame.id, failing: [...alone, ...lacks(search)], nearest: null };
  const failing = judgeTrain(near, search.context, naming(search)).filter(({ outcome }) => outcome === 'fail');
  return {
    frameId: at.frame.id,
    failing,
    nearest: { frameId: at.frame.id, cellAt: near.cellAt, links: linksOf(near) },
  };
}

function naming({ index }: Search): Naming {
  return (id) => index.byId.get(id)?.tag ?? id;
}

/** What the frame fails whatever hangs in it. */
function frameAlone(frame: Parts['frame'], search: Search): Verdict[] {
  const parts = { frame } as Partial<Parts> as Parts;
  return FRAME_RULES.flatMap(({ code, source, checks }) => {
    const found = worst(checks.map((check) => check.judge(parts, search.context)));
    return found?.outcome === 'fail' ? [verdictOf(code, source, found, naming(search))] : [];
  });
}

/** The rules with those of their checks that look at no more than the frame. */
const FRAME_RULES: readonly Rule[] = RULES.map((rule) => ({
  ...rule,
  checks: rule.checks.filter(({ sees }) => sees.every((part) => part === 'frame')),
})).filter(({ checks }) => checks.length > 0);

/** The lab lacks a whole kind of item. */
function lacks(search: Search): Verdict[] {
  const { cells, ends } = search.options;
  const { needs } = search.context;
  return [
    ...(cells.length === 0
      ? [verdictOf('cell-capacity', 'register', told('fail', 'no-cell', [], needs.direction), naming(search))]
      : []),
    ...(ends.length === 0
      ? [verdictOf('specimen-fit', 'register', told('fail', 'no-ends', [], endWords(needs)), naming(search))]
      : []),
  ];
}
