import { MS_PER_DAY } from '#libs/calendar/src/index.js';
import type { LabSettings, PreviewBody, PreviewView } from '#libs/contract/src/index.js';
import { InvalidInput, LabError } from '#libs/errors/src/index.js';
import { isNeeds, matchRequest, matchTrains, needsOf, trainDrawing } from '#libs/matching/src/index.js';
import type { Ask, Item, ItemKind, Lab, MatchAnswer, Needs, TimeWindow } from '#libs/matching/src/index.js';
import { askOf, LabRecords, materialOf, methodOf, MethodRepository } from '#libs/records/src/index.js';
import type { MaterialEntity, MethodEntity, RequestAround } from '#libs/records/src/index.js';
import { Injectable } from '@nestjs/common';
import { batchProblems } from './check-batch.js';
import { CurrentLab } from '../platform/current-lab.js';
import type { Asked } from '../platform/current-lab.js';
import { idsIn } from './ids-in.js';

/** Candidates that are drawn; the others follow by name and figures. */
const DRAWN = 8;

/** What an accepted batch could run on, at the moment of accepting: kept in the record. */
export interface Capability {
  batch: number;
  frames: string[];
}

/** Asks the matching core about the lab as it is now. */
@Injectable()
export class LabMatchingService {
  constructor(
    private readonly records: LabRecords,
    private readonly current: CurrentLab,
  ) {}

  /** Which trains could run a batch, before anything is kept. @throws InvalidInput by field of the ask */
  async preview({ methodId, materialId, ask: asked }: PreviewBody, since: Asked): Promise<PreviewView> {
    const started = performance.now();
    const { manager } = this.records;
    const methods = new MethodRepository(manager);
    const method = await methods.get(methodId);
    const material = materialId ? await methods.getMaterial(materialId) : null;
    const specimens = asked['specimens'];
    const specimenCount = typeof specimens === 'number' ? specimens : methodOf(method).minSpecimens;
    const ask = askOf({ ask: asked, specimenCount }, method, material);
    const problems = batchProblems(methodOf(method), ask, asked);
    if (problems.length > 0) throw new InvalidInput(problems);
    const { lab, settings } = await this.current.asRead(since);
    const asking = { ask, method: methodOf(method), material: material && materialOf(material) };
    const answer = matchRequest(lab, asking, periodFrom(this.records.clock.nowMs(), settings), settings.matching);
    if (!('needs' in answer)) throw new InvalidInput(answer);
    return { ...answer, ask, ...named(lab, answer), computedInMs: Math.round(performance.now() - started) };
  }

  /**
   * Shows the capability that accepting promises: each batch has a load train that can run it now.
   *
   * @throws LabError `request/no-candidate` naming the batches that have none, and what stands in the way
   */
  async capabilityOf(batches: RequestAround['batches'], settings: LabSettings): Promise<Capability[]> {
    const lab = await this.current.get();
    const tags = new Map(lab.items.map(({ id, tag }) => [id, tag]));
    return batches.map(({ batch, method, material }) => {
      const needs = neededFor(askOf(batch, method, material), method, material, settings);
      const { candidates, refusals } = matchTrains(
        lab,
        needs,
        periodFrom(this.records.clock.nowMs(), settings),
        settings.matching,
      );
      if (candidates.length === 0) throw noCandidate(batch.position, refusals, tags);
      return {
        batch: batch.position,
        frames: [...new Set(candidates.map(({ frameId }) => tags.get(frameId) ?? frameId))],
      };
    });
  }
}

function neededFor(ask: Ask, method: MethodEntity, material: MaterialEntity | null, settings: LabSettings): Needs {
  const needs = needsOf(ask, methodOf(method), material && materialOf(material), settings.matching);
  if (isNeeds(needs)) return needs;
  throw new InvalidInput(needs);
}

function periodFrom(nowMs: number, { horizonDays }: LabSettings): TimeWindow {
  return { startMs: nowMs, endMs: nowMs + horizonDays * MS_PER_DAY };
}

function noCandidate(position: number, refusals: MatchAnswer['refusals'], tags: ReadonlyMap<string, string>): LabError {
  const reasons = refusals.map(({ frameId, failing }) => ({
    frame: tags.get(frameId) ?? frameId,
    reasons: failing.map(({ sentence }) => sentence),
  }));
  const nearest = [...reasons].sort((a, b) => a.reasons.length - b.reasons.length)[0];
  const because = nearest ? ` Nearest is ${nearest.frame}: ${nearest.reasons[0] ?? 'no train fits'}` : '';
  const sentence = `No load train can run batch ${position} as it is asked.${because}`;
  return new LabError('request/no-candidate', sentence, { batch: position, refusals: reasons });
}

/** A name for every item that occurs in an answer, and pictures of its first candidates. */
function named(lab: Lab, answer: MatchAnswer): Pick<PreviewView, 'items' | 'drawings'> {
  const byId = new Map<string, Item>(lab.items.map((item) => [item.id, item]));
  const items: Record<string, { tag: string; name: string; kind: ItemKind }> = {};
  for (const id of idsIn(answer)) {
    const item = byId.get(id);
    if (item) items[id] = { tag: item.tag, name: item.name, kind: item.kind };
  }
  const drawings = answer.candidates.slice(0, DRAWN).map((train) => ({
    frameId: train.frameId,
    segments: trainDrawing(train, answer.needs, (id) => byId.get(id)),
  }));
  return { items, drawings };
}
