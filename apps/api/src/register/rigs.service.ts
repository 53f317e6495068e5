import type { RigView } from '#libs/contract/src/index.js';
import { fieldProblem, LabError, refuseIfAny } from '#libs/errors/src/index.js';
import { ItemRepository, LabRecords, RigRepository } from '#libs/records/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import type { RigDto, RigLinkDto } from './item.dto.js';
import { rigVersion } from './rig-version.js';

/** What is fitted on the frames right now. */
@Injectable()
export class RigsService {
  constructor(private readonly records: LabRecords) {}

  /** Every frame, with what hangs on it. */
  async list(): Promise<RigView[]> {
    const { manager } = this.records;
    const items = new ItemRepository(manager);
    const frames = await items.list('frame');
    const links = await new RigRepository(manager).all();
    const fitted = new Map((await items.findByIds(links.map(({ itemId }) => itemId))).map((item) => [item.id, item]));
    return frames.map(({ id, tag, name }) => {
      const own = links.filter(({ frameId }) => frameId === id);
      return {
        frame: { id, tag, name },
        links: own.map(({ role, itemId }) => {
          const { tag: itemTag, name: itemName, kind } = fitted.get(itemId)!;
          return { role, itemId, tag: itemTag, name: itemName, kind };
        }),
        version: rigVersion(own),
      };
    });
  }

  /**
   * Says what is on a frame, as somebody found it.
   *
   * @param version of what they saw on it before
   * @throws LabError `frame/unknown`, `rig/changed-meanwhile`; InvalidInput by link
   */
  async set(frameId: string, version: number, { links }: RigDto, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record, now }) => {
      const items = new ItemRepository(manager);
      const frame = await items.get(frameId);
      if (frame.kind !== 'frame') throw new LabError('frame/unknown', `${frame.tag} is a ${frame.kind} and no frame.`);
      const rows = await items.findByIds(links.map(({ itemId }) => itemId));
      refuseIfAny(links.map((link, index) => linkProblem(link, index, links, rows)));
      const rigs = new RigRepository(manager);
      const before = await rigs.lock(frameId);
      refuseChanged(frame, rigVersion(before), version);
      await rigs.fit(
        frameId,
        links.map(({ role, itemId }) => ({ role, itemId })),
        now(),
      );
      await record({
        kind: 'rig/changed',
        subjectId: frameId,
        before: { links: before.map(({ role, itemId }) => ({ role, itemId })) },
        after: { links },
      });
    });
  }
}

function refuseChanged({ tag }: ItemEntity, version: number, seen: number): void {
  if (version === seen) return;
  const sentence = `What is on ${tag} was changed by someone else. Reload it and try again.`;
  throw new LabError('rig/changed-meanwhile', sentence, { version });
}

function linkProblem({ itemId }: RigLinkDto, index: number, links: readonly RigLinkDto[], rows: readonly ItemEntity[]) {
  const field = `links[${index}].itemId`;
  const row = rows.find(({ id }) => id === itemId);
  if (!row || row.kind === 'frame') {
    return fieldProblem({
      field,
      found: row?.tag ?? itemId,
      allowed: 'an item of the register that is no frame',
      unit: '',
    });
  }
  const twice = links.findIndex((link) => link.itemId === itemId) < index;
  return twice ? fieldProblem({ field, found: row.tag, allowed: 'each item once', unit: '' }) : null;
}
