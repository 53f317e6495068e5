import { rollCall } from './roll-call.js';
import type { AnyProcessor } from './task-processor.js';

const takes = (handles: AnyProcessor['handles']): AnyProcessor => ({ handles, run: async () => {} });

describe('rollCall', () => {
  it('gives every task its processor', () => {
    const [replan, impact] = [takes('replan'), takes('impact')];
    expect(rollCall([impact, replan], ['replan', 'impact'])).toEqual(
      new Map([
        ['replan', replan],
        ['impact', impact],
      ]),
    );
  });

  it('refuses a task that nobody or more than one takes', () => {
    const call = () => rollCall([takes('replan'), takes('replan')], ['replan', 'impact']);
    expect(call).toThrow('Every task needs exactly one processor, but replan has 2, impact has 0.');
  });
});
