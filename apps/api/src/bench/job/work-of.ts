import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Ask, MatchSettings, Material, Method, Needs } from '#libs/matching/src/index.js';
import { askOf, materialOf, methodOf } from '#libs/records/src/index.js';
import type { BatchEntity, MaterialEntity, MethodEntity } from '#libs/records/src/index.js';

/** What a job is to do, as the matching core knows it. */
export interface Work {
  ask: Ask;
  method: Method;
  material: Material | null;
  needs: Needs;
}

interface Rows {
  batch: Pick<BatchEntity, 'id' | 'ask' | 'specimenCount'>;
  method: MethodEntity;
  material: MaterialEntity | null;
}

/** @throws LabError `bench/ask-incomplete` for a batch that was accepted before a rule that it breaks now */
export function workOf(rows: Rows, settings: MatchSettings): Work {
  const work = findWork(rows, settings);
  if (typeof work !== 'string') return work;
  throw new LabError('bench/ask-incomplete', `${work} Ask the manager.`, { batchId: rows.batch.id });
}

/** The same; a sentence where the ask does not say what the train must carry. */
export function findWork({ batch, method, material }: Rows, settings: MatchSettings): Work | string {
  const ask = askOf(batch, method, material);
  const known = { ask, method: methodOf(method), material: material && materialOf(material) };
  const needs = needsOf(ask, known.method, known.material, settings);
  if (isNeeds(needs)) return { ...known, needs };
  return `What is asked does not say what the train must carry: ${needs.map(({ sentence }) => sentence).join(' ')}`;
}

/** From now on until the specimens that are left are tested, UTC ms. */
export function periodOf(
  { needs }: Work,
  nowMs: number,
  specimensLeft: number,
  setupMin = needs.setupMin,
): { startMs: number; endMs: number } {
  const minutes = setupMin + Math.max(1, specimensLeft) * needs.minPerSpecimen;
  return { startMs: nowMs, endMs: nowMs + Math.ceil(minutes) * MS_PER_MINUTE };
}
