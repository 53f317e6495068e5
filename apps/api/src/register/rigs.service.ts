import type { RigView } from '#libs/contract/src/index.js';
import { fieldProblem, LabError, refuseIfAny } from '#libs/errors/src/index.js';
import { ItemRepository, recordAct, RigRepository } from '#libs/records/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import type { RigDto, RigLinkDto } from './item.dto.js';

/** What is fitted on the frames right now. */
@Injectable()
export class RigsService {
  constructor(private readonly records: DataSource) {}

  /** Every frame, with what hangs on it. */
  async list(): Promise<RigView[]> {
    const { manager } = this.records;
    const items = new ItemRepository(manager);
    const [frames, links] = await Promise.all([items.find({ kind: 'frame' }), new RigRepository(manager).all()]);
    const fitted = new Map((await items.findByIds(links.map(({ itemId }) => itemId))).map((item) => [item.id, item]));
    return frames.map(({ id, tag, name }) => ({
      frame: { id, tag, name },
      links: links
        .filter(({ frameId }) => frameId === id)
        .flatMap(({ role, itemId }) => {
          const item = fitted.get(itemId);
          return item ? [{ role, itemId, tag: item.tag, name: item.name, kind: item.kind }] : [];
        }),
    }));
  }

  /** Says what is on a frame, as somebody found it. @throws LabError `frame/unknown`; InvalidInput by link */
  async set(frameId: string, { links }: RigDto, by: SignedIn): Promise<void> {
    await this.records.transaction(async (manager) => {
      const items = new ItemRepository(manager);
      const frame = await items.get(frameId);
      if (frame.kind !== 'frame') throw new LabError('frame/unknown', `${frame.tag} is a ${frame.kind} and no frame.`);
      const rows = await items.findByIds(links.map(({ itemId }) => itemId));
      refuseIfAny(links.map((link, index) => linkProblem(link, index, links, rows)));
      const rigs = new RigRepository(manager);
      const before = await rigs.of(frameId);
      await rigs.fit(
        frameId,
        links.map(({ role, itemId }) => ({ role, itemId })),
      );
      await recordAct(manager, {
        ...{
          actorId: by.id,
          kind: 'rig/changed',
          subjectKind: 'item',
          subjectId: frameId,
          live: 'items',
          planning: true,
        },
        before: { links: before.map(({ role, itemId }) => ({ role, itemId })) },
        after: { links },
      });
    });
  }
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
