import { labWith, verdictOn } from '#test/support/matching/sample-lab.js';

const having = (...channels: { kind: string; count: number }[]) =>
  verdictOn('channels', { lab: labWith('F', {}, { channels }) });

describe('channels', () => {
  it('needs one for the cell and one for the extensometer', () => {
    expect(having({ kind: 'force', count: 1 }, { kind: 'strain', count: 1 }).outcome).toBe('pass');
    expect(having({ kind: 'force', count: 1 }, { kind: 'strain', count: 0 }).reason).toBe('channel-strain');
    expect(having({ kind: 'force', count: 0 }, { kind: 'strain', count: 1 }).reason).toBe('channel-force');
  });

  it('does not let cell and extensometer share one', () => {
    const lab = (count: number) =>
      labWith('X', {}, { channel: 'force' }, labWith('F', {}, { channels: [{ kind: 'force', count }] }));
    expect([1, 2].map((count) => verdictOn('channels', { lab: lab(count) }).outcome)).toEqual(['fail', 'pass']);
  });
});
