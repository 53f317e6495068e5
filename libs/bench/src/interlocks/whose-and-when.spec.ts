import { ownJob, requestOpen, rightMoment } from './whose-and-when.js';

const job = { reference: 'J-7-1', state: 'taken', technicianId: 'tess' };

describe('a job', () => {
  it('is worked on by who took it', () => {
    expect(ownJob({ job, byId: 'tess' })).toBeNull();
    expect(ownJob({ job, byId: 'tom' })?.sentence).toContain('Somebody else has taken it');
    expect(ownJob({ job: { ...job, technicianId: null }, byId: 'tom' })?.sentence).toContain('Nobody has taken it');
  });

  it('takes some acts in some states only', () => {
    expect(rightMoment(job, ['taken', 'rigged'], 'tags are confirmed')).toBeNull();
    expect(rightMoment(job, ['running', 'paused'], 'curves are taken')).toMatchObject({
      code: 'bench/wrong-moment',
      sentence: 'J-7-1 is taken; curves are taken while it is running or paused.',
      facts: { state: 'taken', allowed: ['running', 'paused'] },
    });
  });
});

it('results change until their request is closed', () => {
  expect(requestOpen({ reference: 'R-7', state: 'reported' })).toBeNull();
  expect(requestOpen({ reference: 'R-7', state: 'closed' })?.code).toBe('bench/request-closed');
});
