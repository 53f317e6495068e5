import type { JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { RigRepository } from '#libs/records/src/index.js';
import type { JobEntity, TrainLink } from '#libs/records/src/index.js';
import { equalUnits } from '#libs/matching/src/index.js';
import type { Item } from '#libs/matching/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import type { BenchFacts } from './bench-facts.js';
import { JobActs, refuseOthers, refuseUnless } from './job-acts.js';
import type { AtWork, Done } from './job-acts.js';
import { itemByTag, wrongItem } from './wrong-item.js';
import { setupSheet, takenOffKey } from './setup-sheet.js';
import { periodOf } from './needed.js';
import { trainFit } from './train-fit.js';

/** The setup sheet, worked off tag by tag: what is off, what stays, what is on. */
@Injectable()
export class SetupService {
  constructor(private readonly acts: JobActs) {}

  /**
   * Confirms the item with this tag on the sheet. The frame's own tag is harmless.
   *
   * @throws LabError `item/unknown`, or `bench/wrong-item` with the rules that it breaks
   */
  confirm(jobId: string, tag: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      const facts = await at.facts();
      const item = itemByTag(facts.lab, tag);
      if (item.id === facts.frameId || isConfirmed(facts, item)) return null;
      refuseUnless(at.job, ['taken'], 'tags are confirmed');
      const link = facts.train.find(({ itemId }) => itemId === item.id);
      const comesOff = setupSheet(facts).find((step) => step.action === 'take-off' && step.item.itemId === item.id);
      if (link)
        return this.keep(at, facts, withConfirmed(at, link), at.job.checks, { confirmed: item.tag, role: link.role });
      if (!comesOff) throw wrongItem(facts, item);
      const off = { at: at.now().toISOString(), by: by.id };
      return this.keep(
        at,
        facts,
        at.job.train,
        { ...at.job.checks, [takenOffKey(item.id)]: off },
        { takenOff: item.tag },
      );
    });
  }

  /**
   * Puts an equal unit in the place of one of the train, and confirms it; the rules run again with it.
   *
   * @throws LabError `bench/wrong-item` when it is not an equal unit, is in use, or breaks a rule
   */
  standIn(jobId: string, itemId: string, tag: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      await at.jobs.waitToTake(); // two jobs could reach for the same unit
      const facts = await at.facts();
      const item = itemByTag(facts.lab, tag);
      if (isConfirmed(facts, item)) return null;
      refuseUnless(at.job, ['taken'], 'a unit can stand in');
      const place = at.job.train.find((link) => link.itemId === itemId);
      if (!place)
        throw new LabError(
          'bench/not-in-train',
          'The item that was to be replaced is not in this train. Reload the sheet.',
          { itemId },
        );
      const replaced = at.job.train.map((link) => (link === place ? { role: link.role, itemId: item.id } : link));
      refuseUnfit(facts, item, itemId, replaced);
      const changed = { ...at, job: { ...at.job, train: replaced } };
      const train = withConfirmed(
        changed,
        replaced.find((link) => link.itemId === item.id)!,
      );
      const was = facts.lab.items.find(({ id }) => id === itemId)?.tag;
      return this.keep(at, facts, train, at.job.checks, { standsIn: item.tag, for: was, role: place.role });
    });
  }

  /** Keeps a step; with the last one the train is what hangs on the frame. */
  private async keep(
    at: AtWork,
    facts: BenchFacts,
    train: TrainLink[],
    checks: JobEntity['checks'],
    after: Record<string, unknown>,
  ): Promise<Done> {
    const steps = setupSheet({ ...facts, train, job: { checks } });
    if (steps.some(({ confirmed }) => !confirmed)) {
      await at.jobs.change(at.job, { train, checks });
      return { kind: 'job/step-confirmed', after, changesFacts: after['standsIn'] !== undefined };
    }
    await at.jobs.move(at.job, 'rig', { train, checks });
    const aside = steps.filter(
      ({ action, item }) => action === 'keep' && !train.some(({ itemId }) => itemId === item.itemId),
    );
    const links = [...train, ...aside.map(({ item }) => ({ itemId: item.itemId, role: item.role }))];
    await new RigRepository(at.manager).fit(facts.frameId!, links, at.now());
    return {
      kind: 'job/rigged',
      before: { state: 'taken' },
      after: { state: 'rigged', ...after, train },
    };
  }
}

function isConfirmed({ job }: BenchFacts, { id }: Item): boolean {
  return job.train.some(({ itemId, confirmedAt }) => itemId === id && confirmedAt) || takenOffKey(id) in job.checks;
}

function withConfirmed({ job, by, now }: Pick<AtWork, 'job' | 'by' | 'now'>, { itemId }: TrainLink): TrainLink[] {
  const confirmed = { confirmedAt: now().toISOString(), confirmedBy: by.id };
  return job.train.map((link) => (link.itemId === itemId ? { ...link, ...confirmed } : link));
}

function refuseUnfit(facts: BenchFacts, item: Item, plannedId: string, replaced: readonly TrainLink[]): void {
  const { lab, work, settings, busy, frameId, nowMs, specimensLeft } = facts;
  if (busy.has(item.id)) throw wrongItem(facts, item);
  const period = periodOf(work, nowMs, specimensLeft);
  const { problems } = trainFit(lab, { frameId: frameId!, links: replaced }, work.needs, period, settings.matching);
  if (problems.length > 0 || !equalUnits(lab, plannedId).some(({ id }) => id === item.id)) throw wrongItem(facts, item);
}
