import type { FieldProblem } from '#libs/errors/src/index.js';
import { adviceFor } from './advice-for.js';
import type { MatchAnswer } from '../answer/answer.js';
import type { Ask } from '../ask/ask.js';
import type { TimeWindow } from '../register/item.js';
import type { Lab } from '../register/lab.js';
import { answerOf } from '../answer/match-trains.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import { isNeeds, needsOf } from '../ask/needs-of.js';
import { searchOf } from '../search/search.js';
import { DEFAULT_SETTINGS } from '../ask/settings.js';
import type { MatchSettings } from '../ask/settings.js';

/** A request with the version of the method that it names, and the material if it names one. */
export interface AskWithMethod {
  ask: Ask;
  method: Method;
  material: Material | null;
}

/**
 * The whole answer to an ask: needs, ranked load trains, why each other frame cannot, and what would make it fit.
 *
 * @param period when the test would run, half-open, UTC
 * @returns the answer, or every problem of the ask by field
 */
export function matchRequest(
  lab: Lab,
  { ask, method, material }: AskWithMethod,
  period: TimeWindow,
  settings: MatchSettings = DEFAULT_SETTINGS,
): MatchAnswer | FieldProblem[] {
  const needs = needsOf(ask, method, material, settings);
  if (!isNeeds(needs)) return needs;
  const search = searchOf(lab, needs, period, settings);
  const answer = answerOf(search);
  return { ...answer, advice: adviceFor({ lab, ask, method, material, needs, settings, period, search }, answer) };
}
