import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { ItemRepository, recordAct, TroubleRepository } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import type { WindowDto } from './item.dto.js';

/** Faults of items, and spans in which they cannot be used. Each change reaches the planner. */
@Injectable()
export class TroubleService {
  constructor(private readonly records: DataSource) {}

  /** From now on nobody can use the item, until the fault is closed. */
  async openFault(itemId: string, what: string, by: SignedIn): Promise<void> {
    await this.records.transaction(async (manager) => {
      await new ItemRepository(manager).get(itemId);
      const faultId = await new TroubleRepository(manager).openFault(itemId, what, by.id);
      await recordAct(manager, {
        ...{ actorId: by.id, kind: 'item/fault-opened', subjectKind: 'item', subjectId: itemId },
        ...{ after: { faultId, what }, live: 'items', planning: true },
      });
    });
  }

  /** @returns the id of the item that was repaired */
  async closeFault(faultId: string, remedy: string, by: SignedIn): Promise<string> {
    return this.records.transaction(async (manager) => {
      const trouble = new TroubleRepository(manager);
      const { itemId, what } = await trouble.getFault(faultId);
      await trouble.closeFault(faultId, remedy, by.id);
      await recordAct(manager, {
        ...{ actorId: by.id, kind: 'item/fault-closed', subjectKind: 'item', subjectId: itemId },
        ...{ before: { faultId, what }, after: { remedy }, live: 'items', planning: true },
      });
      return itemId;
    });
  }

  async addWindow(itemId: string, body: WindowDto, by: SignedIn): Promise<void> {
    const span = { startsAt: new Date(body.startsAt), endsAt: new Date(body.endsAt) };
    if (span.endsAt <= span.startsAt) {
      const allowed = `later than ${span.startsAt.toISOString()}`;
      throw new InvalidInput([fieldProblem({ field: 'endsAt', found: body.endsAt, allowed, unit: '' })]);
    }
    await this.records.transaction(async (manager) => {
      await new ItemRepository(manager).get(itemId);
      const windowId = await new TroubleRepository(manager).addWindow({
        itemId,
        kind: body.kind,
        why: body.why,
        ...span,
      });
      await recordAct(manager, {
        ...{ actorId: by.id, kind: 'item/window-added', subjectKind: 'item', subjectId: itemId, why: body.why },
        ...{ after: { windowId, kind: body.kind, ...span }, live: 'items', planning: true },
      });
    });
  }

  async removeWindow(windowId: string, by: SignedIn): Promise<void> {
    await this.records.transaction(async (manager) => {
      const { itemId, kind, startsAt, endsAt } = await new TroubleRepository(manager).removeWindow(windowId);
      await recordAct(manager, {
        ...{ actorId: by.id, kind: 'item/window-removed', subjectKind: 'item', subjectId: itemId },
        ...{ before: { windowId, kind, startsAt, endsAt }, live: 'items', planning: true },
      });
    });
  }
}
