import { HISTORY } from './history.js';
import type { DemoRun, DemoSeries } from './history.js';
import { REQUESTS } from './requests.js';
import type { Day, DemoRequest } from './demo-request.js';

/** The lab had as many requests before its oldest one here. */
const BEFORE = 1961;

/** How many of the last series runs are reported but not closed yet. */
const NOT_CLOSED_YET = 3;

export interface NumberedRequest extends DemoRequest {
  reference: string;
  /** What the load cell read too high on that day, as a fraction. */
  drift: number;
  invalid: { piece: number; why: string } | null;
}

/** Every request of the demo lab in the order in which they were made, with its reference. */
export const ALL_REQUESTS: readonly NumberedRequest[] = [
  ...pastRequests(),
  ...REQUESTS.map((request) => ({ ...request, drift: 0.0088, invalid: null })),
]
  .sort(
    (a, b) => a.created[0] - b.created[0] || a.created[1].localeCompare(b.created[1]) || a.title.localeCompare(b.title),
  )
  .map((request, index) => ({ ...request, reference: `R-${BEFORE + index}` }));

/** The number that the next request gets. */
export const NEXT_REQUEST = BEFORE + ALL_REQUESTS.length;

/** Whether the lab took a request on: it has jobs from then on. */
export function wasAccepted({ state }: Pick<DemoRequest, 'state'>): boolean {
  return ['accepted', 'in-work', 'in-review', 'reported', 'closed'].includes(state);
}

type Unnumbered = Omit<NumberedRequest, 'reference'>;

function pastRequests(): Unnumbered[] {
  const runs = HISTORY.flatMap((series) => series.runs.map((run, index) => ({ series, run, index })));
  const newest = runs.map(({ run }) => run.ago).sort((a, b) => a - b)[NOT_CLOSED_YET - 1]!;
  return runs.map(({ series, run, index }) => pastRequest(series, run, index, run.ago > newest));
}

function pastRequest(series: DemoSeries, run: DemoRun, index: number, closed: boolean): Unnumbered {
  const { method, material, count, ask, product, title, lot, conformity, purpose, requester, team } = series;
  const began: Day = [-run.ago, run.time];
  const job = { state: 'done' as const, train: run.train, technician: run.technician, began, product };
  return {
    ...{ purpose, requester, team },
    title: title.replace('{lot}', String(lot[0] + index * lot[1])),
    state: closed ? 'closed' : 'reported',
    created: [
      -run.ago - 7,
      `${String(8 + (index % 8)).padStart(2, '0')}:${String((index * 17 + run.ago) % 60).padStart(2, '0')}`,
    ],
    due: [-run.ago + 3, '17:00'],
    specimens: [-run.ago - 4, '10:00'],
    ...(conformity ? { conformity } : {}),
    batches: [
      {
        ...{ method, count, ask },
        ...(material ? { material } : {}),
        job: { ...job, ...(run.outlier ? { outlier: run.outlier } : {}) },
      },
    ],
    drift: run.drift ?? 0,
    invalid: run.invalid ?? null,
  };
}
