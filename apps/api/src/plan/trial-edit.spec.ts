import type { InvalidInput } from '#libs/errors/src/index.js';
import { trialEditOf } from './trial-edit.js';

const job = '11111111-1111-4111-8111-111111111111';
const frame = '22222222-2222-4222-8222-222222222222';
const person = '33333333-3333-4333-8333-333333333333';
const startsAt = '2026-11-25T08:00:00Z';

function fieldsRefused(body: object): string[] {
  try {
    trialEditOf(body as never);
    return [];
  } catch (error) {
    return (error as InvalidInput).problems.map(({ field }) => field);
  }
}

describe('an edit of a trial plan', () => {
  it('keeps exactly the fields of its kind', () => {
    expect(trialEditOf({ kind: 'move', jobId: job, frameId: frame, startsAt })).toEqual({
      kind: 'move',
      jobId: job,
      frameId: frame,
      startsAt,
    });
  });

  it('names each field that is missing and each that does not belong', () => {
    expect(fieldsRefused({ kind: 'move', jobId: job, weight: 2 })).toEqual(['frameId', 'startsAt', 'weight']);
  });

  it('lets an extra shift last 16 h and not a minute more', () => {
    const shift = { kind: 'extra-shift', frameId: frame, personId: person, startsAt };
    expect(fieldsRefused({ ...shift, endsAt: '2026-11-26T00:00:00Z' })).toEqual([]);
    expect(fieldsRefused({ ...shift, endsAt: '2026-11-26T00:01:00Z' })).toEqual(['endsAt']);
  });

  it('refuses a span that ends where it begins', () => {
    expect(fieldsRefused({ kind: 'technician-off', personId: person, startsAt, endsAt: startsAt })).toEqual(['endsAt']);
  });
});
