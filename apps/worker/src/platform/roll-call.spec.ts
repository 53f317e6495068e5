import { rollCall } from './roll-call.js';
import type { AnyProcessor } from './task-processor.js';

const takes = (handles: AnyProcessor['handles']): AnyProcessor => ({ handles, run: async () => {} });

describe('rollCall', () => {
  it('gives every task its processor', () => {
    const [replan, tidy] = [takes('replan'), takes('tidy')];
    expect(rollCall([tidy, replan], ['replan', 'tidy'])).toEqual(
      new Map([
        ['replan', replan],
        ['tidy', tidy],
      ]),
    );
  });

  it('refuses a task that nobody or more than one takes', () => {
    const call = () => rollCall([takes('replan'), takes('replan')], ['replan', 'tidy']);
    expect(call).toThrow('Every task needs exactly one processor, but replan has 2, tidy has 0.');
  });
});
