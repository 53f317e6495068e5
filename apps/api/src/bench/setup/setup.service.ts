import { problemOf, takenOffKey } from '#libs/bench/src/index.js';
import type { JobView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import type { Item } from '#libs/matching/src/index.js';
import { RigRepository } from '#libs/records/src/index.js';
import type { JobEntity, TrainLink } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../../platform/signed-in.js';
import type { BenchFacts } from '../job/bench-facts.js';
import { JobActs, refuseOthers, refuseUnless } from '../job/job-acts.js';
import type { AtWork, Done } from '../job/job-acts.js';
import { refuseAny } from '../job/refuse.js';
import { sheetOf } from './setup-view.js';
import { itemByTag, mayStandIn, replaced, wrongItemOf } from './wrong-item-of.js';

/** The setup sheet, worked off tag by tag: what is off, what stays, what is on. */
@Injectable()
export class SetupService {
  constructor(private readonly acts: JobActs) {}

  /**
   * Confirms the item with this tag on the sheet. The frame's own tag is harmless.
   *
   * @throws LabError `item/unknown`, `bench/wrong-item` with the rules that it breaks, or `bench/train-not-fit` for an item of the
   * train against which a rule speaks since it was planned
   */
  confirm(jobId: string, tag: string, by: SignedIn): Promise<JobView> {
    return this.acts.do(jobId, by, async (at) => {
      refuseOthers(at);
      const facts = await at.facts();
      const item = itemByTag(facts.lab, tag);
      if (item.id === facts.frameId) return null;
      refuseUnusable(facts, item);
      if (isConfirmed(facts, item)) return null;
      refuseUnless(at.job, ['taken'], 'tags are confirmed');
      const link = facts.train.find(({ itemId }) => itemId === item.id);
      if (link) {
        const train = confirmedIn(at, at.job.train, item.id);
        return this.keep(at, facts, train, at.job.checks, { confirmed: item.tag, role: link.role });
      }
      if (!comesOff(facts, item)) refuseAny([wrongItemOf(facts, item)]);
      const checks = { ...at.job.checks, [takenOffKey(item.id)]: { at: at.now().toISOString(), by: by.id } };
      return this.keep(at, facts, at.job.train, checks, { takenOff: item.tag });
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
      if (!place) throw notInTrain(itemId);
      if (!mayStandIn(facts, item, itemId)) refuseAny([wrongItemOf(facts, item)]);
      const train = confirmedIn(at, replaced(at.job.train, itemId, item.id), item.id);
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
    const lines = sheetOf(facts, { train, checks });
    if (lines.some(({ confirmed }) => !confirmed)) {
      await at.jobs.change(at.job, { train, checks });
      return { kind: 'job/step-confirmed', after, changesFacts: after['standsIn'] !== undefined };
    }
    await at.jobs.move(at.job, 'rig', { train, checks });
    const aside = lines.filter(
      ({ action, item }) => action === 'keep' && !train.some(({ itemId }) => itemId === item.id),
    );
    const links = [...train, ...aside.map(({ item, role }) => ({ itemId: item.id, role }))];
    await new RigRepository(at.manager).fit(facts.frameId!, links, at.now());
    return { kind: 'job/rigged', before: { state: 'taken' }, after: { state: 'rigged', ...after, train } };
  }
}

/** @throws LabError `bench/train-not-fit` with what speaks against the item, and the equal units that might stand in */
function refuseUnusable({ job, train, fit }: BenchFacts, item: Item): void {
  const sentence = problemOf(item.id, fit.problems);
  const isPart = train.some(({ itemId }) => itemId === item.id);
  if (!isPart || sentence === null || !SETTING_UP.includes(job.state)) return;
  throw new LabError(
    'bench/train-not-fit',
    `${item.tag} must not be used for ${job.reference} now. ${sentence} ${job.state === 'taken' ? 'Let an equal unit stand in, block' : 'Block'} the job, or give it back.`,
    { problems: fit.problems.filter(({ items }) => items.includes(item.id)), sentences: [sentence] },
  );
}

const SETTING_UP: readonly string[] = ['taken', 'rigged'];

function comesOff(facts: BenchFacts, { id }: Item): boolean {
  return sheetOf(facts).some((line) => line.action === 'take-off' && line.item.id === id);
}

function isConfirmed({ job }: BenchFacts, { id }: Item): boolean {
  return job.train.some(({ itemId, confirmedAt }) => itemId === id && confirmedAt) || takenOffKey(id) in job.checks;
}

function confirmedIn({ now, by }: Pick<AtWork, 'now' | 'by'>, train: TrainLink[], itemId: string): TrainLink[] {
  const confirmed = { confirmedAt: now().toISOString(), confirmedBy: by.id };
  return train.map((link) => (link.itemId === itemId ? { ...link, ...confirmed } : link));
}

function notInTrain(itemId: string): LabError {
  const sentence = 'The item that was to be replaced is not in this train. Reload the sheet.';
  return new LabError('bench/not-in-train', sentence, { itemId });
}
