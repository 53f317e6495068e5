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
  batch: BatchEntity;
  method: MethodEntity;
  material: MaterialEntity | null;
}

/** @throws LabError `bench/ask-incomplete` for a batch that was accepted before a rule that it breaks now */
export function workOf({ batch, method, material }: Rows, settings: MatchSettings): Work {
  const ask = askOf(batch, method, material);
  const known = { ask, method: methodOf(method), material: material && materialOf(material) };
  const needs = needsOf(ask, known.method, known.material, settings);
  if (isNeeds(needs)) return { ...known, needs };
  const sentence = `What is asked does not say what the train must carry: ${needs.map((each) => each.sentence).join(' ')} Ask the manager.`;
  throw new LabError('bench/ask-incomplete', sentence, { problems: needs });
}

const MS_PER_MINUTE = 60_000;

/** From now on until the specimens that are left are tested, UTC ms. */
export function periodOf({ needs }: Work, nowMs: number, specimensLeft: number, setupMin = needs.setupMin): { startMs: number; endMs: number } {
  const minutes = setupMin + Math.max(1, specimensLeft) * needs.minPerSpecimen;
  return { startMs: nowMs, endMs: nowMs + Math.ceil(minutes) * MS_PER_MINUTE };
}
