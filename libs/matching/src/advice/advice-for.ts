/*
 * advice/: what would make a test fit. It comes last and may import every other folder.
 */
import type { Advice, AdviceKind, MatchAnswer } from '../answer/answer.js';
import { framesThatCan } from '../search/frames-that-can.js';
import { isNeeds, needsOf } from '../ask/needs-of.js';
import { searchOf, searchThrough } from '../search/search.js';
import { applyAdvice } from './apply-advice.js';
import type { Proposal, Question } from './proposal.js';
import { purchaseProposals } from './purchase-proposals.js';
import { registerProposals } from './register-proposals.js';
import { requestProposals } from './request-proposals.js';

/** Proposals that are tried out, and advices that are given, at most. */
const MOST_TRIED = 40;
const MOST_GIVEN = 8;

/** With so many frames that can run the test, purchases are not proposed. */
const ENOUGH_FRAMES = 3;

/** What costs least comes first among advices that open as many frames. */
const ORDER: readonly AdviceKind[] = ['free', 'repair', 'calibrate', 'authorise', 'change-request', 'buy'];

/**
 * What would make the test fit on the frames that refuse it. Every proposal is tried on a copy of lab and request. It is listed with
 * the frames that it opens, and dropped when it opens none.
 */
export function adviceFor(
  question: Question,
  { refusals, candidates }: Pick<MatchAnswer, 'refusals' | 'candidates'>,
): Advice[] {
  const scarce = new Set(candidates.map(({ frameId }) => frameId)).size < ENOUGH_FRAMES;
  const refused = new Set(refusals.map(({ frameId }) => frameId));
  return proposalsFor(question, refusals, scarce)
    .map((proposal) => ({ ...proposal, opensFrames: opens(proposal, question, refused) }))
    .filter(({ opensFrames }) => opensFrames.length > 0)
    .sort((a, b) => b.opensFrames.length - a.opensFrames.length || ORDER.indexOf(a.kind) - ORDER.indexOf(b.kind))
    .slice(0, MOST_GIVEN);
}

/** Each once; those that most frames ask for come first. */
function proposalsFor(question: Question, refusals: MatchAnswer['refusals'], purchases: boolean): Proposal[] {
  const counted = new Map<string, { proposal: Proposal; times: number }>();
  for (const refusal of refusals) {
    for (const verdict of refusal.failing) {
      const made = [
        ...registerProposals(verdict, question),
        ...requestProposals(verdict, question),
        ...(purchases ? purchaseProposals(verdict, refusal, question) : []),
      ];
      for (const proposal of made) {
        const key = JSON.stringify(proposal.apply);
        const times = (counted.get(key)?.times ?? 0) + 1;
        counted.set(key, { proposal, times });
      }
    }
  }
  return [...counted.values()]
    .sort((a, b) => b.times - a.times)
    .slice(0, MOST_TRIED)
    .map(({ proposal }) => proposal);
}

function opens({ apply }: Proposal, question: Question, refused: ReadonlySet<string>): string[] {
  const { search, settings, period } = question;
  if (apply.change === 'new-item') return framesThatCan(searchThrough(search, apply.item), refused);
  if (apply.change === 'item') {
    const item = search.index.byId.get(apply.itemId);
    return item ? framesThatCan(searchThrough(search, { ...item, ...apply.set }), refused) : [];
  }
  const { lab, ask } = applyAdvice({ apply }, question.lab, question.ask);
  const needs = ask === question.ask ? question.needs : needsOf(ask, question.method, question.material, settings);
  return isNeeds(needs) ? framesThatCan(searchOf(lab, needs, period, settings), refused) : [];
}
