import type { Ask, Geometry } from '#libs/matching/src/index.js';

/** What an ask says when nobody said anything: nothing declared, nothing agreed. */
const SILENT = {
  strength: null,
  peak: null,
  modulusMPa: null,
  geometry: {},
  temperatureC: null,
  results: [],
  speedMmPerMin: null,
  travelMm: null,
  options: { contactExtensometer: false, crossheadStrain: false, lowerForceClass: false },
  hazards: [],
  confirmed: [],
};

interface AskedBatch {
  ask: Record<string, unknown>;
  specimenCount: number;
}

/**
 * What a batch asks of matching, method and material by their codes.
 * Shape, end shape and figures that are missing stay missing, for `checkAsk` to name.
 */
export function askOf(
  batch: AskedBatch,
  method: { code: string; version: number },
  material: { code: string } | null,
): Ask {
  const said: Partial<Ask> = withoutNulls(batch.ask);
  return {
    ...SILENT,
    ...said,
    geometry: withoutNulls(said.geometry ?? {}) as Geometry,
    options: { ...SILENT.options, ...said.options },
    methodId: method.code,
    methodVersion: method.version,
    materialId: material?.code ?? null,
    specimens: batch.specimenCount,
  } as Ask;
}

/** A form sends null for what was left empty; the core knows it as absent. */
function withoutNulls(fields: object): object {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== null));
}
