import { METHODS } from '../library/methods.js';
import { ALL_REQUESTS } from '../northmoor/all-requests.js';
import { recordedPiece } from './curve-rows.js';
import { measured } from './measured.js';

const RECORDED = ALL_REQUESTS.flatMap(({ title, batches }) =>
  batches.flatMap((batch) => (batch.job?.recorded ? [[title, batch, batch.job] as const] : [])),
);

describe('a recorded curve of the demo lab', () => {
  it.each(RECORDED)('gives back what was measured: %s', (title, batch, job) => {
    const method = METHODS.find(({ id }) => id === batch.method)!;
    const found = measured(job.product, title, 1, 0, undefined);
    const piece = { label: 'R-1-1-01', specimenId: '1', jobId: '2', byId: '3', at: new Date(0), found };
    const { results } = recordedPiece(batch, method, piece);
    expect(results.map(({ key }) => key)).toEqual(batch.ask.results);
    for (const { key, value } of results) {
      const wanted = found.results.find((result) => result.key === key)!.value;
      expect([key, Math.abs(value / wanted - 1) < 0.05]).toEqual([key, true]);
    }
  });
});
