import { InvalidInput, LabError, fieldProblem, numberProblem, refuseIfAny } from './index.js';

describe('LabError', () => {
  it('carries its code, sentence, facts and cause', () => {
    const cause = new Error('socket closed');
    const error = new LabError('plan/stale', 'The plan is older than the facts.', { ageMin: 7 }, { cause });
    expect(error).toBeInstanceOf(Error);
    expect(error).toMatchObject({ name: 'LabError', code: 'plan/stale', facts: { ageMin: 7 }, cause });
    expect(error.message).toBe('The plan is older than the facts.');
  });
});

describe('fieldProblem', () => {
  it('says what was found, what is allowed and what to do', () => {
    const problem = fieldProblem(
      { field: 'spanMm', found: 0, allowed: 'more than 0', unit: 'mm' },
      'Measure the span.',
    );
    expect(problem.sentence).toBe('spanMm is 0 mm; allowed is more than 0 mm. Measure the span.');
  });

  it.each([undefined, null, ''])('calls %p missing', (found) => {
    expect(fieldProblem({ field: 'tag', found, allowed: 'a tag', unit: '' }).sentence).toBe(
      'tag is missing; allowed is a tag.',
    );
  });

  it('cuts a long value short in the sentence', () => {
    const problem = fieldProblem({ field: 'tag', found: 'x'.repeat(5000), allowed: 'a tag', unit: '' });
    expect(problem.sentence.length).toBeLessThan(110);
  });
});

describe('numberProblem', () => {
  const bounds = { unit: 'mm', above: 0, max: 300 };

  it('takes the largest allowed value and refuses the next one', () => {
    expect(numberProblem('widthMm', 300, bounds)).toBeNull();
    expect(numberProblem('widthMm', 300.001, bounds)?.allowed).toBe('a number, more than 0 and at most 300');
  });

  it('refuses an excluded bound and takes the smallest number above it', () => {
    expect(numberProblem('widthMm', 0, bounds)).not.toBeNull();
    expect(numberProblem('widthMm', Number.MIN_VALUE, bounds)).toBeNull();
  });

  it('takes the smallest allowed value, refuses an excluded upper bound, and asks for whole numbers', () => {
    const count = { unit: '', min: 2, below: 9, whole: true };
    expect(numberProblem('runs', 2, count)).toBeNull();
    expect(numberProblem('runs', 9, count)?.allowed).toBe('a whole number, at least 2 and less than 9');
    expect(numberProblem('runs', 2.5, count)).not.toBeNull();
  });

  it.each([NaN, Infinity, -Infinity, '12', null, undefined, {}, []])('refuses %p, which is no number', (value) => {
    expect(numberProblem('widthMm', value, { unit: 'mm' })).toMatchObject({ field: 'widthMm', unit: 'mm' });
  });
});

describe('refuseIfAny', () => {
  it('lists every problem at once', () => {
    const width = numberProblem('widthMm', -1, { unit: 'mm', min: 0 });
    const depth = numberProblem('depthMm', NaN, { unit: 'mm', min: 0 });
    const refuse = () => refuseIfAny([width, null, depth]);
    expect(refuse).toThrow(InvalidInput);
    expect(refuse).toThrow('widthMm is -1 mm; allowed is a number, at least 0 mm. depthMm is "NaN" mm;');
  });

  it('lets a clean input pass', () => {
    expect(() => refuseIfAny([null, null])).not.toThrow();
  });

  it('cannot be made without a problem', () => {
    expect(() => new InvalidInput([])).toThrow(RangeError);
  });
});
