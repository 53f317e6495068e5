import { randomUUID } from 'node:crypto';
import type { Page, RequestLine, RequestMove, RequestView, SaveRequestBody } from '#libs/contract/src/index.js';
import { REQUEST_MOVES } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { drawNumber, LabRecords, readRequestLines, RequestRepository, readRequest } from '#libs/records/src/index.js';
import type { Act, RequestEntity } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { cursorOf, readCursor } from '../exchange/cursor.js';
import { CurrentLab } from '../platform/current-lab.js';
import type { SignedIn } from '../platform/signed-in.js';
import { batchColumns, refuseBadDraft, requestColumns } from './request-draft.js';
import type { ListRequestsDto } from './request.dto.js';
import { requestLine, requestView } from './request-view.js';
import { refuseOtherTeam, teamsSeen } from './team-access.js';

const PAGE = 50;

/** A draft to be made; by a file with what the file calls it, and perhaps of somebody else. */
interface NewDraft {
  body: SaveRequestBody;
  importedAs?: string | null;
  requesterId?: string | undefined;
}

/** Requests as people write and read them; the moves of their lifecycle are another service's. */
@Injectable()
export class RequestsService {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
  ) {}

  async list(asked: ListRequestsDto, by: SignedIn): Promise<Page<RequestLine>> {
    const { manager } = this.records;
    const after = asked.cursor ? readCursor(asked.cursor) : undefined;
    const rows = await readRequestLines(manager, {
      teamIds: teamsSeen(by),
      states: asked.state,
      requesterId: asked.mine ? by.id : undefined,
      words: asked.q,
      after,
      limit: PAGE + 1,
    });
    const page = rows.slice(0, PAGE);
    const { timeZone } = await this.current.settings(by);
    const telling = { nowMs: this.records.clock.nowMs(), timeZone };
    return {
      rows: page.map((line) => requestLine(line, telling)),
      next: rows.length > PAGE ? cursorOf(page.at(-1)!.request) : null,
    };
  }

  /** @throws LabError `request/unknown`, also for what the person may not see */
  async view(id: string, by: SignedIn): Promise<RequestView> {
    const whole = await readRequest(this.records.manager, id, teamsSeen(by));
    return requestView(whole, (move) => mayMove(move, whole.request, by), this.records.clock.nowMs());
  }

  /** Keeps a draft; it may be half filled in. @returns its id */
  async draft(body: SaveRequestBody, by: SignedIn): Promise<string> {
    return (await this.draftAll([{ body }], by))[0]!;
  }

  /** Keeps drafts, all or none. @returns their ids */
  draftAll(drafts: readonly NewDraft[], by: SignedIn): Promise<string[]> {
    drafts.forEach(({ body }) => refuseOtherTeam(by, body.teamId));
    return this.records.act(by.id, async (act) => {
      const ids: string[] = [];
      for (const draft of drafts) ids.push(await this.addDraft(act, draft, by));
      return ids.length > 0 ? ids : act.nothing(ids);
    });
  }

  /** Changes a draft or a returned request. @throws LabError `request/not-editable`, `request/changed-meanwhile` */
  async save(id: string, version: number, body: SaveRequestBody, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record }) => {
      const requests = new RequestRepository(manager);
      const request = await requests.get(id, teamsSeen(by));
      refuseOtherTeam(by, request.teamId);
      refuseOtherTeam(by, body.teamId);
      refuseFixed(request);
      await refuseBadDraft(manager, body);
      await requests.change({ ...request, version }, requestColumns(body));
      await requests.replaceBatches(id, batchColumns(id, body.batches));
      await record({
        kind: 'request/edited',
        subjectId: id,
        before: { title: request.title, dueAt: request.dueAt, weight: request.weight },
        after: { ...body },
      });
    });
  }

  /** A new draft that asks for the same. @returns its id */
  async copy(id: string, by: SignedIn): Promise<string> {
    const requests = new RequestRepository(this.records.manager);
    const request = await requests.get(id, teamsSeen(by));
    const batches = await requests.batchesOf([id]);
    return this.draft(
      {
        ...{ title: request.title, purpose: request.purpose, teamId: request.teamId, dueAt: null },
        ...{ weight: request.weight, disposal: request.disposal },
        conformity: request.conformity,
        batches: batches.map(({ label, methodId, materialId, specimenCount, ask, asTyped }) => ({
          ...{ label, methodId, materialId, specimenCount, ask, asTyped },
        })),
      },
      by,
    );
  }

  async say(id: string, body: string, by: SignedIn): Promise<void> {
    await this.records.act(by.id, async ({ manager, record, now }) => {
      const requests = new RequestRepository(manager);
      await requests.get(id, teamsSeen(by));
      await requests.addMessage({ id: randomUUID(), requestId: id, authorId: by.id, body, at: now() });
      await record({
        kind: 'request/message',
        subjectId: id,
        after: { body },
      });
    });
  }

  private async addDraft(
    { manager, record, now }: Act,
    { body, importedAs = null, ...whose }: NewDraft,
    by: SignedIn,
  ): Promise<string> {
    const id = randomUUID();
    const requesterId = whose.requesterId ?? by.id;
    await refuseBadDraft(manager, body);
    const reference = `R-${String(await drawNumber(manager, 'request')).padStart(4, '0')}`;
    const made = { id, reference, state: 'draft' as const, requesterId, importedAs, createdAt: now() };
    await new RequestRepository(manager).add({ ...made, ...requestColumns(body) }, batchColumns(id, body.batches));
    await record({
      kind: 'request/drafted',
      subjectId: id,
      after: { reference, ...(importedAs ? { importedAs, requesterId } : {}), ...body },
    });
    return id;
  }
}

/** Whether a person may make a move that the state allows: whose it is, and whether the request is of their team. */
export function mayMove(move: RequestMove, request: Pick<RequestEntity, 'teamId'>, by: SignedIn): boolean {
  const own = by.teams.some(({ id }) => id === request.teamId);
  const manages = by.roles.includes('manager');
  return REQUEST_MOVES[move].by === 'requester' ? manages || (own && by.roles.includes('requester')) : manages;
}

function refuseFixed({ state, reference }: RequestEntity): void {
  if (state === 'draft' || state === 'returned') return;
  const sentence = `${reference} is ${state}; only a draft or a returned request can be edited. Write a message instead.`;
  throw new LabError('request/not-editable', sentence, { state });
}
