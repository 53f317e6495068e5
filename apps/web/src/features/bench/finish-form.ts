import type { FinishBody, JobView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { figureIn } from '../../ui/form/form-number.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useJobAct } from './sending.js';

/** What is said at the end of a job. */
export interface Finishing {
  temperature: string;
  humidity: string;
  remarks: string;
  deviations: string;
  notTestedWhy: string;
  /** Why a result has no figure, by its key. */
  missing: Record<string, string>;
}

/** A result that was asked for, with the specimens that have no figure of it and no reason yet. */
export interface Unexplained {
  key: string;
  label: string;
  /** What kept it from being found, where something is known. */
  hint: string | null;
  specimens: { id: string; label: string }[];
}

export function unexplainedOf(job: JobView): Unexplained[] {
  const found = new Map<string, Unexplained>();
  for (const { id, label: specimen, missing } of job.specimens)
    for (const { key, label, hint } of missing.filter(({ why }) => why === null)) {
      const { specimens } = found.get(key) ?? { specimens: [] };
      found.set(key, { key, label, hint, specimens: [...specimens, { id, label: specimen }] });
    }
  return [...found.values()];
}

/** Specimens that are still to be tested. */
export function openOf(job: JobView): number {
  return job.specimens.filter(({ fate }) => !['tested', 'invalid', 'not-tested'].includes(fate)).length;
}

/** Ends a job: the room, remarks, and a reason for all that is missing. */
export function useFinishForm(job: JobView): LabForm<Finishing> {
  const act = useJobAct(job.id);
  const missing = Object.fromEntries(unexplainedOf(job).map(({ key }) => [key, '']));
  return useLabForm<Finishing>({
    initial: { temperature: '', humidity: '', remarks: '', deviations: '', notTestedWhy: '', missing },
    send: (said) => act(api('POST /jobs/{id}/finish', { id: job.id, body: bodyOf(job, said) })),
    fieldOf: (path) => FIELDS[path] ?? path,
    keepAs: `job.${job.id}.finish`,
  });
}

const FIELDS: Readonly<Record<string, string>> = {
  'conditions.temperatureC': 'temperature',
  'conditions.humidityPct': 'humidity',
  'conditions.remarks': 'remarks',
  'conditions.deviations': 'deviations',
};

function bodyOf(job: JobView, said: Finishing): FinishBody {
  const { remarks, deviations, notTestedWhy } = said;
  const missing = unexplainedOf(job).flatMap(({ key, specimens }) =>
    specimens.map(({ id }) => ({ key, why: said.missing[key] ?? '', specimenId: id })),
  );
  return {
    ...(openOf(job) > 0 ? { notTestedWhy } : {}),
    ...(missing.length > 0 ? { missing } : {}),
    conditions: {
      temperatureC: figureIn(said.temperature),
      humidityPct: figureIn(said.humidity),
      ...(remarks ? { remarks } : {}),
      ...(deviations ? { deviations } : {}),
    },
  };
}
