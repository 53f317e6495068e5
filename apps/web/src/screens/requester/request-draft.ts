import { resultWords } from '#libs/contract/src/index.js';
import type { MaterialView, MethodView, RequestView } from '#libs/contract/src/index.js';
import {
  bodyOf,
  draftOf,
  emptyBatch,
  questionsOf,
  readDraft,
  withMethod,
} from '../../features/matching/batch-draft.js';
import type { BatchDraft } from '../../features/matching/batch-draft.js';
import { emptyHead, headOf } from '../../features/requests/request-head.js';
import type { LimitedResult, RequestHead } from '../../features/requests/request-head.js';
import type { Moments } from '../../ui/moments.js';

/** A request as it stands in the form. */
export interface RequestDraft extends RequestHead {
  batches: BatchDraft[];
}

/** What the form starts from: nothing, or the draft that the lab has. */
export function startOf(
  methods: readonly MethodView[],
  request: RequestView | undefined,
  teamId: string,
  moments: Moments,
): RequestDraft {
  if (!request) return { ...emptyHead(teamId), batches: [emptyBatch('first')] };
  const batches = request.batches.flatMap((batch) => {
    const method = methods.find(({ id }) => id === batch.method.id);
    return method ? [draftOf(batch, method)] : [];
  });
  return { ...headOf(request, moments), batches: batches.length > 0 ? batches : [emptyBatch('first')] };
}

/** The batch with another method, without a material that this one is not for. */
export function changeMethod(
  batch: BatchDraft,
  to: MethodView,
  from: MethodView | undefined,
  materials: readonly MaterialView[],
): BatchDraft {
  const next = withMethod(batch, to, from);
  const material = materials.find(({ id }) => id === next.materialId);
  const fits = !material || to.data.materialGroups.some((group) => group === material.group);
  return fits ? next : { ...next, materialId: '' };
}

/** The results that the batches could give, each with the unit in which its limits are held. */
export function resultsOf(methods: readonly MethodView[], batches: readonly BatchDraft[]): LimitedResult[] {
  const chosen = batches.flatMap(({ methodId }) => methods.find(({ id }) => id === methodId) ?? []);
  const keys = [...new Set(chosen.flatMap(({ data }) => data.results))];
  return keys.map((key) => {
    const { data } = chosen.find(({ data: { results } }) => results.includes(key))!;
    const { label, unit } = resultWords(key, data.testType);
    return { key, label, unit };
  });
}

/** The batches as the server keeps them; one without a method says nothing yet. */
export function bodiesOf(methods: readonly MethodView[], batches: readonly BatchDraft[]) {
  return batches.flatMap((batch) => {
    const method = methods.find(({ id }) => id === batch.methodId);
    return method ? [bodyOf(method, batch)] : [];
  });
}

/** The batches that say enough for the lab to answer when they would be done. */
export function answerable(methods: readonly MethodView[], batches: readonly BatchDraft[]) {
  return batches.flatMap((batch) => {
    const method = methods.find(({ id }) => id === batch.methodId);
    if (!method || readDraft(method, batch).missing.length > 0) return [];
    const { methodId, materialId, specimenCount, ask } = bodyOf(method, batch);
    return [{ methodId, materialId, specimenCount, ask }];
  });
}

const MATERIAL_NEEDED = 'Choose the material, or give a strength band or a load below.';

/** What is said at figures that are needed and empty, by field. */
export function missingWords(missing: readonly string[]): Record<string, string> {
  const words = (path: string) => (path === 'materialId' ? MATERIAL_NEEDED : 'This figure is needed.');
  return Object.fromEntries(missing.map((path) => [path, words(path)]));
}

/** What was refused of one batch, by the field of its form. */
export function fieldsOfBatch(fields: Record<string, string>, index: number): Record<string, string> {
  const head = new RegExp(`^batches(?:\\[${index}\\]|\\.${index})\\.(?:ask\\.)?`);
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([path]) => head.test(path))
      .map(([path, sentence]) => [fieldOfBody(path.replace(head, '')), sentence]),
  );
}

/** The form asks for the number of specimens as the method does. */
function fieldOfBody(path: string): string {
  return path === 'specimenCount' ? 'specimens' : path;
}

/** Whether the form shows, beside its field, what is refused of a path: one of the batch that is on the sheet. */
export function isFieldOfBatch(
  methods: readonly MethodView[],
  batches: readonly BatchDraft[],
  chosen: number,
  path: string,
): boolean {
  const index = batches[chosen] ? chosen : 0;
  const batch = batches[index]!;
  const method = methods.find(({ id }) => id === batch.methodId);
  const [field] = Object.keys(fieldsOfBatch({ [path]: '' }, index));
  if (!method || field === undefined) return false;
  const asked = questionsOf(method, batch)
    .filter(({ type }) => type !== 'flag')
    .flatMap(({ field: name, type }) => (type === 'band' ? [name, `${name}.low`, `${name}.high`] : [name]));
  return ['methodId', ...(method.data.testType === 'component' ? [] : ['materialId']), ...asked].includes(field);
}
