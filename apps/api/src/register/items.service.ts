import { randomUUID } from 'node:crypto';
import type { ItemDetail, ItemView, Page, SaveItemBody } from '#libs/contract/src/index.js';
import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import type { ItemState } from '#libs/matching/src/index.js';
import {
  CalibrationRepository,
  factsChanged,
  ImpactRepository,
  ItemRepository,
  itemsInList,
  labSettings,
  peopleNamed,
  recordAct,
} from '#libs/records/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { DataSource } from 'typeorm';
import type { EntityManager } from 'typeorm';
import { CurrentLab } from '../platform/current-lab.js';
import type { SignedIn } from '../platform/signed-in.js';
import type { ItemStateDto, ListItemsDto } from './item.dto.js';
import { itemColumns, refuseBadItem } from './item-columns.js';
import type { ItemColumns } from './item-columns.js';
import { calibrationView, faultView, itemView } from './item-view.js';
import type { RegisterTelling } from './item-view.js';

const PAGE = 100;

/** The register of items. */
@Injectable()
export class ItemsService {
  constructor(
    private readonly records: DataSource,
    private readonly current: CurrentLab,
  ) {}

  /** By tag. Status follows from dates, so that a list by status reads all of its kind. */
  async list({ kind, status, q, cursor }: ListItemsDto, by: SignedIn): Promise<Page<ItemView>> {
    const { manager } = this.records;
    const rows = await itemsInList(manager, { kind, words: q, afterTag: cursor, limit: status ? undefined : PAGE + 1 });
    const { calibrationNoticeDays } = await this.current.settings(by);
    const telling = { nowMs: Date.now(), noticeDays: calibrationNoticeDays };
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
    const upcoming = await new ImpactRepository(manager).upcoming([id], new Date());
    const ids = [
      ...around.calibrations.map(({ enteredBy }) => enteredBy),
      ...around.faults.map(({ openedBy }) => openedBy),
      ...checks.map(({ technicianId }) => technicianId),
    ];
    const people = await peopleNamed(manager, ids);
    const named = (personId: string) => people.get(personId) ?? { id: personId, name: '' };
    return {
      ...itemView(row, { ...around, openFault }, await tellingOf(manager)),
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
    return this.records.transaction(async (manager) => {
      const columns = itemColumns(body);
      refuseBadItem(columns, 'in-service');
      await refuseTakenTag(manager, body.tag);
      const id = await addItem(manager, columns, 'in-service', by);
      await factsChanged(manager, 'item/registered', by.id);
      return id;
    });
  }

  /** Replaces what the form holds. @throws LabError `item/changed-meanwhile`; InvalidInput by field */
  async change(id: string, version: number, body: SaveItemBody, by: SignedIn): Promise<void> {
    await this.records.transaction(async (manager) => {
      const row = await new ItemRepository(manager).get(id);
      if (body.kind !== row.kind) {
        const allowed = `${row.kind}, as it was registered`;
        throw new InvalidInput([fieldProblem({ field: 'kind', found: body.kind, allowed, unit: '' })]);
      }
      if (body.tag !== row.tag) await refuseTakenTag(manager, body.tag);
      const columns = itemColumns(body);
      refuseBadItem(columns, row.state);
      await changeItem(manager, { ...row, version }, columns, by);
      await factsChanged(manager, 'item/changed', by.id);
    });
  }

  /** Takes an item out of use, declares it faulty, or puts it back. */
  async setState(id: string, { state, why }: ItemStateDto, by: SignedIn): Promise<void> {
    await this.records.transaction(async (manager) => {
      const items = new ItemRepository(manager);
      const row = await items.get(id);
      if (row.state === state) return;
      await items.change(row, { state });
      await recordAct(manager, {
        ...{ actorId: by.id, kind: `item/${state}`, subjectKind: 'item', subjectId: id, live: 'items', planning: true },
        ...{ before: { state: row.state }, after: { state }, why },
      });
    });
  }
}

export async function tellingOf(manager: EntityManager): Promise<RegisterTelling> {
  return { nowMs: Date.now(), noticeDays: (await labSettings(manager)).calibrationNoticeDays };
}

/** Puts a checked item into the register; the caller tells the planner. @returns its id */
export async function addItem(
  manager: EntityManager,
  columns: ItemColumns,
  state: ItemState,
  by: SignedIn,
): Promise<string> {
  const id = randomUUID();
  await new ItemRepository(manager).add({ id, state, ...columns });
  await recordAct(manager, {
    ...{ actorId: by.id, kind: 'item/registered', subjectKind: 'item', subjectId: id, live: 'items' },
    after: { ...columns, state },
  });
  return id;
}

/** Writes checked columns over a row, guarded by the version that the row bears; the caller tells the planner. */
export async function changeItem(
  manager: EntityManager,
  row: ItemEntity,
  set: Partial<ItemEntity>,
  by: SignedIn,
): Promise<void> {
  await new ItemRepository(manager).change(row, set);
  const before = Object.fromEntries(Object.keys(set).map((key) => [key, row[key as keyof ItemEntity]]));
  await recordAct(manager, {
    ...{ actorId: by.id, kind: 'item/changed', subjectKind: 'item', subjectId: row.id, live: 'items' },
    ...{ before, after: { ...set } },
  });
}

async function refuseTakenTag(manager: EntityManager, tag: string): Promise<void> {
  if ((await new ItemRepository(manager).findByTags([tag])).length === 0) return;
  throw new InvalidInput([
    fieldProblem({ field: 'tag', found: tag, allowed: 'a tag that no other item has', unit: '' }),
  ]);
}
