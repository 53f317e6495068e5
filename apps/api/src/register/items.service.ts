import { randomUUID } from 'node:crypto';
import type { ItemDetail, ItemView, Page, SaveItemBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import type { ItemState } from '#libs/matching/src/index.js';
import {
  CalibrationRepository,
  ImpactRepository,
  ItemRepository,
  readItemLines,
  LabRecords,
  labSettings,
  peopleNamed,
} from '#libs/records/src/index.js';
import type { Act, ItemEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import type { EntityManager } from 'typeorm';
import { CurrentLab } from '../platform/current-lab.js';
import type { SignedIn } from '../platform/signed-in.js';
import type { ItemStateDto, ListItemsDto } from './item.dto.js';
import { itemColumns, refuseBadItem } from './item-columns.js';
import type { CheckedColumns } from './item-columns.js';
import { calibrationView, faultView, itemView } from './item-view.js';

const PAGE = 100;

/** The register of items. */
@Injectable()
export class ItemsService {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
  ) {}

  /** By tag. Status follows from dates, so that a list by status reads all of its kind. */
  async list({ kind, status, q, cursor }: ListItemsDto, by: SignedIn): Promise<Page<ItemView>> {
    const { manager } = this.records;
    const rows = await readItemLines(manager, {
      kind,
      words: q,
      afterTag: cursor,
      limit: status ? undefined : PAGE + 1,
    });
    const { calibrationNoticeDays } = await this.current.settings(by);
    const telling = { nowMs: this.records.clock.nowMs(), noticeDays: calibrationNoticeDays };
    const views = rows.map(({ row, ...around }) => itemView(row, around, telling));
    const wanted = status ? views.filter(({ calibrationStatus }) => calibrationStatus === status) : views;
    const page = wanted.slice(0, PAGE);
    return { rows: page, next: wanted.length > PAGE ? page.at(-1)!.tag : null };
  }

  /** @throws LabError `item/unknown` */
  async view(id: string): Promise<ItemDetail> {
    const { manager } = this.records;
    const items = new ItemRepository(manager);
    const row = await items.get(id);
    const around = (await items.around([row])).get(id)!;
    const openFault = around.faults.some(({ closedAt }) => closedAt === null);
    const windows = await items.windowsOf(id);
    const checks = await new CalibrationRepository(manager).shiftChecksOf(id);
    const upcoming = await new ImpactRepository(manager).upcoming([id], this.records.clock.now());
    const { calibrationNoticeDays } = await labSettings(manager);
    const ids = [
      ...around.calibrations.map(({ enteredBy }) => enteredBy),
      ...around.faults.map(({ openedBy }) => openedBy),
      ...checks.map(({ technicianId }) => technicianId),
    ];
    const people = await peopleNamed(manager, ids);
    const named = (personId: string) => people.get(personId) ?? { id: personId, name: '' };
    return {
      ...itemView(
        row,
        { ...around, openFault },
        { nowMs: this.records.clock.nowMs(), noticeDays: calibrationNoticeDays },
      ),
      calibrations: around.calibrations.map((calibration) => calibrationView(calibration, named)),
      faults: around.faults.map((fault) => faultView(fault, named)),
      windows: windows.map(({ id: windowId, kind, startsAt, endsAt, why }) => ({
        ...{ id: windowId, kind, why },
        ...{ startsAt: startsAt.toISOString(), endsAt: endsAt.toISOString() },
      })),
      shiftChecks: checks.map(({ at, reference, reading, unit, errorPct, passed, technicianId }) => ({
        ...{ at: at.toISOString(), reference, reading, unit, errorPct, passed, technician: named(technicianId) },
      })),
      upcomingJobs: upcoming.map(({ jobId, reference, startsAt }) => ({
        ...{ jobId, reference, startsAt: startsAt.toISOString() },
      })),
    };
  }

  /** @returns the id of the new item */
  async register(body: SaveItemBody, by: SignedIn): Promise<string> {
    return this.records.act(by.id, async (act) => {
      const columns = itemColumns(body);
      refuseBadItem(columns, 'in-service');
      await refuseTakenTag(act.manager, body.tag);
      return addItem(act, columns, 'in-service');
    });
  }

  /** Replaces what the form holds. @throws LabError `item/changed-meanwhile`; InvalidInput by field */
  async change(id: string, version: number, body: SaveItemBody, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async (act) => {
      const row = await new ItemRepository(act.manager).get(id);
      if (body.kind !== row.kind) {
        const allowed = `${row.kind}, as it was registered`;
        throw new InvalidInput([fieldProblem({ field: 'kind', found: body.kind, allowed, unit: '' })]);
      }
      if (body.tag !== row.tag) await refuseTakenTag(act.manager, body.tag);
      const columns = itemColumns(body);
      refuseBadItem(columns, row.state);
      await changeItem(act, { ...row, version }, columns);
    });
  }

  /** Takes an item out of use, declares it faulty, or puts it back. */
  async setState(id: string, { state, why }: ItemStateDto, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record, nothing }) => {
      const items = new ItemRepository(manager);
      const row = await items.get(id);
      if (row.state === state) return nothing(undefined);
      await items.change(row, { state });
      await record({
        kind: `item/${state}`,
        subjectId: id,
        before: { state: row.state },
        after: { state },
        why,
      });
    });
  }
}

/** Puts a checked item into the register. @returns its id */
export async function addItem(
  { manager, record, now }: Act,
  columns: CheckedColumns,
  state: ItemState,
): Promise<string> {
  const id = randomUUID();
  await new ItemRepository(manager).add({ id, state, ...columns, registeredAt: now() });
  await record({
    kind: 'item/registered',
    subjectId: id,
    after: { ...columns, state },
  });
  return id;
}

/** Writes checked columns over a row, guarded by the version that the row bears. */
export async function changeItem({ manager, record }: Act, row: ItemEntity, set: Partial<ItemEntity>): Promise<void> {
  await new ItemRepository(manager).change(row, set);
  const before = Object.fromEntries(Object.keys(set).map((key) => [key, row[key as keyof ItemEntity]]));
  await record({
    kind: 'item/changed',
    subjectId: row.id,
    before,
    after: { ...set },
  });
}

async function refuseTakenTag(manager: EntityManager, tag: string): Promise<void> {
  if ((await new ItemRepository(manager).findByTags([tag])).length === 0) return;
  throw new InvalidInput([
    fieldProblem({ field: 'tag', found: tag, allowed: 'a tag that no other item has', unit: '' }),
  ]);
}
