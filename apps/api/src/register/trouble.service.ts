import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import { ItemRepository, LabRecords, TroubleRepository } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { SignedIn } from '../platform/signed-in.js';
import type { WindowDto } from './item.dto.js';

/** Faults of items, and spans in which they cannot be used. Each change reaches the planner. */
@Injectable()
export class TroubleService {
  constructor(private readonly records: LabRecords) {}

  /** From now on nobody can use the item, until the fault is closed. */
  async openFault(itemId: string, what: string, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record, now }) => {
      await new ItemRepository(manager).get(itemId);
      const faultId = await new TroubleRepository(manager).openFault(itemId, what, by.id, now());
      await record({
        kind: 'item/fault-opened',
        subjectId: itemId,
        after: { faultId, what },
      });
    });
  }

  /** @returns the id of the item that was repaired */
  async closeFault(faultId: string, remedy: string, by: SignedIn): Promise<string> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const trouble = new TroubleRepository(manager);
      const { itemId, what } = await trouble.getFault(faultId);
      await trouble.closeFault(faultId, remedy, by.id, now());
      await record({
        kind: 'item/fault-closed',
        subjectId: itemId,
        before: { faultId, what },
        after: { remedy },
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
    await this.records.act(by.id, async ({ manager, record }) => {
      await new ItemRepository(manager).get(itemId);
      const windowId = await new TroubleRepository(manager).addWindow({
        itemId,
        kind: body.kind,
        why: body.why,
        ...span,
      });
      await record({
        kind: 'item/window-added',
        subjectId: itemId,
        why: body.why,
        after: { windowId, kind: body.kind, ...span },
      });
    });
  }

  async removeWindow(windowId: string, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record }) => {
      const { itemId, kind, startsAt, endsAt } = await new TroubleRepository(manager).removeWindow(windowId);
      await record({
        kind: 'item/window-removed',
        subjectId: itemId,
        before: { windowId, kind, startsAt, endsAt },
      });
    });
  }
}
