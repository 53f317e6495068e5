import { useRef } from 'react';
import type { JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { readKept } from '../../ui/local-storage.js';
import { useJobAct } from './sending.js';
import { dimensionsOf, readingKey, resultsOf, startOf, unreadable } from './typed-figures.js';
import type { Specimen, TypedFigures } from './typed-figures.js';

const keptAs = (job: JobView, { id }: Specimen) => `job.${job.id}.${id}`;

/** Whether this device holds something for the specimen that was typed and not sent. */
export function isTyped(job: JobView, specimen: Specimen): boolean {
  return readKept(keptAs(job, specimen)) !== null;
}

/**
 * What is measured and found on one specimen. What is typed stays on this device until the server has it.
 *
 * @param onDone results are kept, and the next specimen is due
 */
export function useSpecimenForm(job: JobView, specimen: Specimen, onDone: () => void): LabForm<TypedFigures> {
  const act = useJobAct(job.id);
  const ids = { id: job.id, sid: specimen.id };
  const sent = useRef<readonly string[]>([]);
  async function send(typed: TypedFigures) {
    const [dimensions, results] = [dimensionsOf(job, typed), resultsOf(job, typed)];
    if (Object.keys(dimensions).length > 0)
      await act(api('PUT /jobs/{id}/specimens/{sid}/dimensions', { ...ids, body: { dimensions } }));
    if (results.length === 0) return;
    sent.current = results.map(({ key }) => key);
    const why = isCorrected(specimen) ? { why: typed.why } : {};
    await act(api('POST /jobs/{id}/specimens/{sid}/results', { ...ids, body: { results, ...why } }));
    onDone();
  }
  return useLabForm<TypedFigures>({
    initial: startOf(job, specimen),
    send,
    check: (typed) => wrongIn(job, specimen, typed),
    fieldOf: (path) => fieldOf(path, sent.current),
    keepAs: keptAs(job, specimen),
    after: 'clear',
  });
}

/** Whether results were typed for the specimen before: others in their place need a reason. */
export function isCorrected({ results }: Specimen): boolean {
  return results.some(({ origin }) => origin === 'typed');
}

function wrongIn(job: JobView, specimen: Specimen, typed: TypedFigures): Record<string, string> {
  const unread = unreadable(job, typed);
  if (Object.keys(unread).length > 0) return unread;
  const results = resultsOf(job, typed);
  if (results.length === 0 && Object.keys(dimensionsOf(job, typed)).length === 0)
    return { '': 'Nothing is typed yet. Type the dimensions, then the results or the curve.' };
  if (results.length > 0 && isCorrected(specimen) && !typed.why.trim())
    return { why: 'Say why the result is corrected.' };
  return {};
}

/** The field of a path that the server names: results by their place among those that were sent. */
function fieldOf(path: string, sent: readonly string[]): string {
  const [, at] = /^results\[(\d+)\]/.exec(path) ?? [];
  if (at !== undefined) return `results.${sent[Number(at)] ?? ''}`;
  const [, key = '', reading = '0'] = /^dimensions\.(\w+)(?:\[(\d+)\])?/.exec(path) ?? [];
  return key ? `readings.${readingKey(key, Number(reading))}` : path;
}
