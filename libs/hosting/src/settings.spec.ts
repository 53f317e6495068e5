import { address, instant, neededAddress, oneOf, readSettings, text, wholeNumber } from './index.js';

describe('readSettings', () => {
  const settings = {
    databaseUrl: neededAddress('DATABASE_URL', ['postgres:', 'postgresql:']),
    redisUrl: address('REDIS_URL', ['redis:', 'rediss:']),
    port: wholeNumber('PORT', { min: 1, max: 65_535 }, 3000),
    log: oneOf('LOG', ['quiet', 'normal'], 'normal'),
    host: text('HOST', '127.0.0.1'),
  };
  const least = { DATABASE_URL: 'postgres://lab@db/lab' };

  it('fills in what is not set or empty', () => {
    expect(readSettings({ ...least, PORT: '' }, settings)).toEqual({
      databaseUrl: 'postgres://lab@db/lab',
      redisUrl: undefined,
      port: 3000,
      log: 'normal',
      host: '127.0.0.1',
    });
  });

  it('names everything that is wrong, what it was and what it may be', () => {
    const wrong = () => readSettings({ PORT: '65536', REDIS_URL: 'http://redis', LOG: 'loud' }, settings);
    expect(wrong).toThrow('DATABASE_URL is missing; allowed is an address that begins with postgres://.');
    expect(wrong).toThrow('PORT is 65536; allowed is a whole number, at least 1 and at most 65535.');
    expect(wrong).toThrow('LOG is "loud"; allowed is one of quiet, normal.');
    expect(wrong).toThrow('REDIS_URL is "http://…"; allowed is an address that begins with redis:// or rediss://.');
  });

  it('takes a bound and refuses the step beyond it and half numbers', () => {
    expect(readSettings({ ...least, PORT: '65535' }, settings).port).toBe(65_535);
    expect(() => readSettings({ ...least, PORT: '0' }, settings)).toThrow('PORT');
    expect(() => readSettings({ ...least, PORT: '80.5' }, settings)).toThrow('PORT');
    expect(() => readSettings({ ...least, PORT: 'http' }, settings)).toThrow('PORT');
  });

  it('takes an instant only with its offset from UTC', () => {
    const read = (text: string) => readSettings({ CLOCK: text }, { clock: instant('CLOCK') }).clock;
    expect(read('2027-02-28T03:00:00Z')).toBe(Date.UTC(2027, 1, 28, 3));
    expect(read('2027-03-28T03:00+02:00')).toBe(Date.UTC(2027, 2, 28, 1));
    expect(read('')).toBeUndefined();
    for (const text of ['2027-02-28T03:00:00', '2027-02-28', '2027-02-31T99:00Z', 'noon'])
      expect(() => read(text)).toThrow('CLOCK is');
  });

  it('does not repeat an address, which may hold a password', () => {
    expect(() => readSettings({ DATABASE_URL: 'mysql://lab:secret@db' }, settings)).toThrow(/^(?!.*secret)/);
  });
});
