import { addDays, instantAt, localDateAt, minuteAtOrAfter, weekdayOf } from '#libs/calendar/src/index.js';
import type { HelpView, LabSettings } from '#libs/contract/src/index.js';
import { changesToTry, whatWouldHelpMost, withChange } from '#libs/planning/src/index.js';
import type { Change, Help, Plan, Window } from '#libs/planning/src/index.js';
import { LabRecords, readPlanFacts } from '#libs/records/src/index.js';
import type { PlanFacts } from '#libs/records/src/index.js';
import type { TaskContext } from '#libs/tasks/src/index.js';
import { Injectable } from '@nestjs/common';
import type { TaskProcessor } from '../platform/task-processor.js';
import { matchJob } from './match-job.js';
import { planInThread } from './plan-in-thread.js';
import { problemOf } from './problem-of.js';
import { sayMinutes, Words } from './words.js';

/** The same short thought for each change, or the ranking would mean nothing: as many rounds as the plan without any made in its time. */
const THINKING_MS = 400;
const LONGEST_MS = 1_200;
const MOST_CHANGES = 24;
const EXTRA_SHIFT_MIN = 240;
/** Evenings that are tried. */
const DAYS_AHEAD = 3;

/** Tries single changes of the lab, each by replanning, and ranks them. Nothing is kept but the answer. */
@Injectable()
export class WhatWouldHelpProcessor implements TaskProcessor<'what-would-help'> {
  readonly handles = 'what-would-help';

  constructor(private readonly records: LabRecords) {}

  async run(_: unknown, context: TaskContext): Promise<Record<string, unknown>> {
    const facts = await readPlanFacts(this.records.source, this.records.clock.nowMs());
    const { problem, originMs } = problemOf(facts, matchJob);
    let rounds: number | null = null;
    const plan = await planInThread(problem, THINKING_MS, 1, { onEnd: (made) => (rounds = made) });
    const timeMs = rounds === null ? THINKING_MS : LONGEST_MS;
    const changes = changesToTry(problem, plan, eveningShifts(facts, originMs)).slice(0, MOST_CHANGES);
    const plans = new Map<Change, Plan>();
    for (const [index, change] of changes.entries()) {
      if (await context.cancelled()) break;
      plans.set(change, await planInThread(withChange(problem, change), timeMs, 1, { rounds }));
      await context.progress(((index + 1) / changes.length) * 100, `${index + 1} of ${changes.length} changes tried`);
    }
    const tried = [...plans.keys()];
    const inTurn = [...plans.values()];
    const helps = whatWouldHelpMost(problem, plan, tried, () => inTurn.shift()!);
    const words = new Words(facts, originMs);
    const view: HelpView = {
      suggestions: helps
        .filter(({ savesWeightedLateMin, lateJobsFewer }) => savesWeightedLateMin > 0 || lateJobsFewer > 0)
        .map((help) => suggestionOf(help, words)),
    };
    return { ...view };
  }
}

function suggestionOf(
  { change, savesWeightedLateMin, lateJobsFewer }: Help,
  words: Words,
): HelpView['suggestions'][number] {
  return {
    kind: change.kind,
    what: sentenceOf(change, words),
    savesWeightedHours: Math.round(savesWeightedLateMin / 6) / 10,
    lateJobsFewer,
  };
}

function sentenceOf(change: Change, words: Words): string {
  switch (change.kind) {
    case 'one-more-unit':
      return `One more unit like ${words.tag(change.likeUnit)}`;
    case 'extra-shift':
      return `An extra shift of ${sayMinutes(change.shift.endMin - change.shift.startMin)} on ${words.tag(change.frameId)} from ${words.at(change.shift.startMin)}`;
    case 'earlier-visit':
      return `Calibrate ${words.tag(change.visitId.replace(/^visit-/, ''))} as soon as can be`;
  }
}

/** After the last shift of the coming days, on the lab's wall clock. */
function eveningShifts({ settings, nowMs }: PlanFacts, originMs: number): Window[] {
  const today = localDateAt(nowMs, settings.timeZone);
  return Array.from({ length: DAYS_AHEAD }, (_, index) => addDays(today, index)).flatMap((date) => {
    const last = lastShiftEnd(settings, date);
    if (last === null) return [];
    const startMin = minuteAtOrAfter(originMs, instantAt(date, last, settings.timeZone));
    return startMin > 0 ? [{ startMin, endMin: startMin + EXTRA_SHIFT_MIN }] : [];
  });
}

function lastShiftEnd({ shifts }: LabSettings, date: string): string | null {
  const ends = shifts.filter(({ weekday, from, to }) => weekday === weekdayOf(date) && from < to).map(({ to }) => to);
  return ends.sort().at(-1) ?? null;
}
