import { randomUUID } from 'node:crypto';
import type { NonconformityView } from '#libs/contract/src/index.js';
import {
  drawNumber,
  ItemRepository,
  LabRecords,
  NonconformityRepository,
  peopleNamed,
} from '#libs/records/src/index.js';
import type { NonconformityEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import type { SignedIn } from '../platform/signed-in.js';
import type { DecideNonconformityDto, OpenNonconformityDto } from './calibration.dto.js';
import { impactOf } from './impact.service.js';

/** Work or items found not to conform, and what was decided about them. */
@Injectable()
export class NonconformitiesService {
  constructor(private readonly records: LabRecords) {}

  /** Newest first. */
  list(): Promise<NonconformityView[]> {
    const { manager } = this.records;
    return new NonconformityRepository(manager).all().then((rows) => viewsOf(manager, rows));
  }

  /** Opens one on an item, and keeps with it what the item has touched as far as is known now. */
  open(itemId: string, { what, since }: OpenNonconformityDto, by: SignedIn): Promise<NonconformityView> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const impact = await impactOf(manager, itemId, now(), since);
      const id = randomUUID();
      const reference = `NC-${String(await drawNumber(manager, 'nonconformity')).padStart(4, '0')}`;
      const { jobs, reports, people, until } = impact;
      const touched = { jobs, reports, people, until };
      const repository = new NonconformityRepository(manager);
      const opened = { openedBy: by.id, openedAt: now() };
      await repository.add({ id, reference, itemId, what, since: new Date(impact.since), touched, ...opened });
      await record({
        kind: 'nonconformity/opened',
        subjectId: id,
        after: { reference, itemId, what, since: impact.since, touched },
      });
      return (await viewsOf(manager, [await repository.get(id)]))[0]!;
    });
  }

  /** @throws LabError `nonconformity/changed-meanwhile` */
  decide(
    id: string,
    version: number,
    { state, decision }: DecideNonconformityDto,
    by: SignedIn,
  ): Promise<NonconformityView> {
    return this.records.act(by.id, async ({ manager, record, now }) => {
      const repository = new NonconformityRepository(manager);
      const row = await repository.get(id);
      const closedAt = state === 'closed' ? (row.closedAt ?? now()) : null;
      await repository.change({ ...row, version }, { state, decision, closedAt });
      await record({
        kind: `nonconformity/${state}`,
        subjectId: id,
        before: { state: row.state, decision: row.decision },
        after: { state, decision },
      });
      return (await viewsOf(manager, [await repository.get(id)]))[0]!;
    });
  }
}

async function viewsOf(manager: EntityManager, rows: readonly NonconformityEntity[]): Promise<NonconformityView[]> {
  const items = await new ItemRepository(manager).findByIds(
    rows.map(({ itemId }) => itemId).filter((id) => id !== null),
  );
  const people = await peopleNamed(
    manager,
    rows.map(({ openedBy }) => openedBy),
  );
  return rows.map((row) => {
    const item = items.find(({ id }) => id === row.itemId);
    return {
      ...{ id: row.id, reference: row.reference, what: row.what, touched: { ...row.touched }, state: row.state },
      item: item ? { id: item.id, tag: item.tag } : null,
      since: row.since.toISOString(),
      decision: row.decision,
      openedBy: people.get(row.openedBy) ?? { id: row.openedBy, name: '' },
      openedAt: row.openedAt.toISOString(),
      closedAt: row.closedAt?.toISOString() ?? null,
      version: row.version,
    };
  });
}
