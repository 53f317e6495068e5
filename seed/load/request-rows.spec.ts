import type { Method } from '#libs/matching/src/index.js';
import { METHODS } from '../library/methods.js';
import { ALL_REQUESTS } from '../northmoor/all-requests.js';
import { calibrationsAt } from '../northmoor/calibrations.js';
import { HOUSE_METHODS } from '../northmoor/house-methods.js';
import { itemId, ITEMS } from '../northmoor/items.js';
import { LabTime } from '../northmoor/lab-time.js';
import type { RequestRows } from './demo-rows.js';
import { requestRows } from './request-rows.js';

const methods = new Map<string, Method>([...METHODS, ...HOUSE_METHODS].map((method) => [method.id, method]));

/** First starts at awkward times: before the first shift, in the night, on a weekend, around both clock changes and the new year. */
const STARTS = [
  '2026-11-25T10:30:00Z',
  '2026-11-23T05:10:00Z',
  '2026-11-28T23:59:00Z',
  '2026-03-29T01:30:00Z',
  '2026-10-25T01:00:00Z',
  '2027-01-01T00:00:00Z',
];

describe.each(STARTS)('the demo lab first started at %s', (start) => {
  const time = new LabTime(Date.parse(start));
  const rows: RequestRows[] = ALL_REQUESTS.map((request) => requestRows(request, methods, time));

  it('tells nothing of the future as if it had happened', () => {
    const late = rows.flatMap(({ request, events }) =>
      events.filter(({ at }) => at.getTime() > time.nowMs).map(({ kind }) => `${request.reference} ${kind}`),
    );
    expect(late).toEqual([]);
  });

  it('lets a request be made, accepted, tested and finished in that order', () => {
    const disorder = rows.flatMap(({ request, jobs }) => {
      const { createdAt, submittedAt, acceptedAt } = request;
      const roads = jobs.map(({ takenAt, startedAt, finishedAt }) => [
        createdAt,
        submittedAt,
        acceptedAt,
        takenAt,
        startedAt,
        finishedAt,
      ]);
      const order = (roads.length > 0 ? roads : [[createdAt, submittedAt, acceptedAt]]).map(steps);
      return order.some((each) => each.some((at, index) => index > 0 && at < each[index - 1]!))
        ? [request.reference]
        : [];
    });
    expect(disorder).toEqual([]);
  });

  it('ran every job with items whose calibration was in force', () => {
    const calibrations = calibrationsAt(time.nowMs);
    const needing = new Map(
      ITEMS.filter(({ needsCalibration }) => needsCalibration).map(({ tag }) => [itemId(tag), tag]),
    );
    const lapsed = rows.flatMap(({ jobs }) =>
      jobs.flatMap(({ reference, startedAt, train, frameId }) =>
        startedAt
          ? [frameId!, ...train!.map((link) => link.itemId)]
              .flatMap((id) => needing.get(id) ?? [])
              .filter(
                (tag) =>
                  !calibrations.some(
                    (each) => each.tag === tag && each.performedAt <= startedAt && startedAt < each.dueAt,
                  ),
              )
              .map((tag) => `${reference} with ${tag}`)
          : [],
      ),
    );
    expect(lapsed).toEqual([]);
  });
});

function steps(dates: readonly (Date | null | undefined)[]): number[] {
  return dates.flatMap((date) => (date ? [date.getTime()] : []));
}
