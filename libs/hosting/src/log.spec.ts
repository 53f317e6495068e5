import { LabError } from '#libs/errors/src/index.js';
import { Log } from './log.js';

function logged(error: Error): Record<string, unknown> {
  const lines: string[] = [];
  new Log('quiet', 'worker', (line) => lines.push(line)).error('task failed', { taskId: 't-1' }, error);
  return JSON.parse(lines[0]!) as Record<string, unknown>;
}

describe('a log', () => {
  it('keeps the code of a refusal, and nothing of what people are told', () => {
    const line = logged(new LabError('curve/refused', 'Line 7 of secret.csv holds 12.5x.'));
    expect(line).toMatchObject({ taskId: 't-1', code: 'curve/refused', part: 'worker' });
    expect(JSON.stringify(line)).not.toContain('secret.csv');
  });

  it('keeps message and stack of anything else', () => {
    expect(logged(new TypeError('no such thing'))).toMatchObject({ error: 'no such thing', level: 'error' });
  });
});
