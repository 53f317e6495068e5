import { controlChart, testGrubbs } from '#libs/reduction/src/index.js';
import { METHODS } from '../library/methods.js';
import { ALL_REQUESTS } from '../northmoor/all-requests.js';
import { HOUSE_METHODS } from '../northmoor/house-methods.js';
import { LabTime } from '../northmoor/lab-time.js';
import { TRAINS } from '../northmoor/trains.js';
import { DRIFTING_CELL } from '../northmoor/trouble.js';
import { requestRows } from './request-rows.js';

const time = new LabTime(Date.parse('2026-11-25T10:30:00Z'));
const methods = new Map([...METHODS, ...HOUSE_METHODS].map((method) => [method.id, method]));

const RUNS = ALL_REQUESTS.flatMap((request) => {
  const job = request.batches[0]?.job;
  if (!job || job.state === 'blocked') return [];
  const rows = requestRows(request, methods, time);
  const cell = TRAINS[job.train].links.find(({ role }) => role === 'load-cell')!.tag;
  return [{ request, job, cell, rows }];
});

/** What was found in a run for one result, piece by piece. */
function found({ rows }: (typeof RUNS)[number], key: string): number[] {
  return rows.results.filter((result) => result.key === key).map(({ value }) => value!);
}

describe('the history of the demo lab', () => {
  const bracketRuns = RUNS.filter(({ request }) => request.title.startsWith('Pannier bracket'));
  const meansOn = (wanted: (cell: string) => boolean) =>
    bracketRuns
      .filter(({ cell }) => wanted(cell))
      .map((run) => found(run, 'peak-stress'))
      .filter(({ length }) => length > 0)
      .map((values) => values.reduce((sum, value) => sum + value, 0) / values.length);

  it('shows the drift of one load cell in its control chart, and none in that of the other', () => {
    expect(controlChart(meansOn((cell) => cell === DRIFTING_CELL)).signals).not.toEqual([]);
    expect(controlChart(meansOn((cell) => cell !== DRIFTING_CELL)).signals).toEqual([]);
  });

  it('has shift checks that all passed, though those of the drifting cell crept up', () => {
    const errors = bracketRuns
      .filter(({ cell }) => cell === DRIFTING_CELL)
      .flatMap(({ rows }) => rows.checks.map(({ passed, errorPct }) => ({ passed, errorPct: errorPct! })));
    expect(errors.every(({ passed }) => passed)).toBe(true);
    expect(Math.abs(errors[0]!.errorPct)).toBeLessThan(0.2);
    expect(errors.at(-1)!.errorPct).toBeGreaterThan(0.5);
  });

  it.each(RUNS.filter(({ job }) => job.outlier).map((run) => [run.request.title, run] as const))(
    "has an outlier that Grubbs' test flags: %s",
    (_title, run) => {
      const values = found(run, run.rows.results[0]!.key!);
      const { suspectIndex, isPossibleOutlier } = testGrubbs(values)!;
      expect([isPossibleOutlier, suspectIndex]).toEqual([true, run.job.outlier!.piece - 1]);
    },
  );
});
