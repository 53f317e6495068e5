import { askFields } from '#libs/matching/src/index.js';
import { askOf } from '#libs/records/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { batchProblems } from './check-batch.js';

const NO_SUCH = 'nothing; there is no such field';

/** An ask that fills every field that the form of a method has, with something of its kind. */
function filled(fields: ReturnType<typeof askFields>): Record<string, unknown> {
  const ask: Record<string, Record<string, unknown>> = { geometry: {}, options: {} };
  for (const { field, type, choices = [] } of fields) {
    const [first, second] = field.split('.') as [string, string?];
    const value = { number: 1, band: { low: 1, high: 2 }, choice: choices[0]?.value, choices: [], flag: true }[type];
    if (second) ask[first]![second] = value;
    else if (first !== 'materialId') ask[first] = value as never;
  }
  return ask;
}

describe('the check of an ask', () => {
  it.each(METHODS.map((method) => [method.id, method] as const))(
    'knows every field that the form of %s has',
    (_id, method) => {
      const asked = filled(askFields(method));
      const ask = askOf({ ask: asked, specimenCount: 5 }, { code: method.id, version: 1 }, null);
      expect(batchProblems(method, ask, asked).filter(({ allowed }) => allowed === NO_SUCH)).toEqual([]);
    },
  );

  it('refuses a field that no ask has, below the path of its batch', () => {
    const asked = { geometry: {}, weather: 'fine' };
    const ask = askOf({ ask: asked, specimenCount: 5 }, { code: 'm', version: 1 }, null);
    const [problem] = batchProblems(METHODS[0]!, ask, asked, 'batches[2].ask.');
    expect(problem).toMatchObject({ field: 'batches[2].ask.weather', allowed: NO_SUCH });
    expect(problem!.sentence).toMatch(/^batches\[2\]\.ask\.weather is /);
  });
});
