import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import { isNeeds, matchTrains, needsOf } from '#libs/matching/src/index.js';
import type { MatchAnswer } from '#libs/matching/src/index.js';
import type { OpenJob, PlanFacts } from '#libs/records/src/index.js';

/** Which load trains can run a job within the horizon; null when its request does not give what its method needs. */
export function matchJob(job: Pick<OpenJob, 'ask' | 'method' | 'material'>, facts: PlanFacts): MatchAnswer | null {
  const { settings, nowMs, lab } = facts;
  const needs = needsOf(job.ask, job.method, job.material, settings.matching);
  if (!isNeeds(needs)) return null;
  const period = { startMs: nowMs, endMs: nowMs + settings.horizonDays * MS_PER_DAY };
  return matchTrains(lab, needs, period, settings.matching);
}
