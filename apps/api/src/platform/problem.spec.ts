import { QueryFailedError, QueryRunnerAlreadyReleasedError, QueryRunnerProviderAlreadyReleasedError } from 'typeorm';
import { problemOf } from './problem.js';

const statusOf = (error: unknown) => problemOf(error, 'request-1').status;

describe('what is answered when the connection to the database breaks', () => {
  it.each([
    ['before a statement', new QueryRunnerProviderAlreadyReleasedError()],
    ['between two statements', new QueryRunnerAlreadyReleasedError()],
    ['during a statement', new QueryFailedError('', [], new Error('Connection terminated unexpectedly'))],
    ['after the driver closed it', new Error('Client was closed and is not queryable')],
    ['while it is opened', Object.assign(new Error('connect'), { code: 'ECONNREFUSED' })],
  ])('is "try again" %s', (_, error) => {
    expect(problemOf(error, 'request-1')).toMatchObject({ status: 503, type: '/problems/database/unavailable' });
  });

  it('is a fault of ours for anything else', () => {
    expect(statusOf(new Error('The connection between two rigs is unknown'))).toBe(500);
    expect(statusOf('Connection terminated')).toBe(500);
  });
});
