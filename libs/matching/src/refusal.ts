import type { FrameRefusal } from './answer.js';
import { linksOf } from './candidate.js';
import { judgeTrain, verdictOf } from './judge-train.js';
import { endWords } from './end-words.js';
import { RULES } from './rules/rules.js';
import { told, worst } from './rules/rule.js';
import type { Check, Finding } from './rules/rule.js';
import type { Parts } from './parts.js';
import type { IndexedFrame } from './search/lab-index.js';
import { nearestTrain } from './search/search-frame.js';
import type { ClassOptions, Search } from './search/search-frame.js';

/** Why a frame has no candidate: the fewest rules that stand in the way, on the train that comes nearest. */
export function refusalOf(at: IndexedFrame, choices: ClassOptions, search: Search): FrameRefusal {
  const { context, index } = search;
  const name = (id: string) => index.byId.get(id)?.tag ?? id;
  const near = nearestTrain(at, choices, search);
  if (!near) return { frameId: at.frame.id, failing: withoutTrain(at, choices, search), nearest: null };
  const failing = judgeTrain(near.parts, context, name).filter(({ outcome }) => outcome === 'fail');
  return {
    frameId: at.frame.id,
    failing,
    nearest: { frameId: at.frame.id, cellAt: near.parts.cellAt, links: linksOf(near.parts) },
  };
}

/** The lab lacks a whole kind of item: what the frame itself fails, and the lack. */
function withoutTrain(
  { frame }: IndexedFrame,
  choices: ClassOptions,
  { context, index }: Search,
): FrameRefusal['failing'] {
  const name = (id: string) => index.byId.get(id)?.tag ?? id;
  const alone = RULES.flatMap(({ code, source, checks }) => {
    const found = worst(checks.filter(seesFrameOnly).map((check) => check.judge({ frame } as Parts, context)));
    return found?.outcome === 'fail' ? [verdictOf(code, source, found, name)] : [];
  });
  const lack = (rule: 'cell-capacity' | 'specimen-fit', finding: Finding) => verdictOf(rule, 'register', finding, name);
  return [
    ...alone,
    ...(choices.cells.length === 0
      ? [lack('cell-capacity', told('fail', 'no-cell', [], context.needs.direction))]
      : []),
    ...(choices.ends.length === 0 ? [lack('specimen-fit', told('fail', 'no-ends', [], endWords(context.needs)))] : []),
  ];
}

function seesFrameOnly({ sees }: Check): boolean {
  return sees.every((part) => part === 'frame');
}
