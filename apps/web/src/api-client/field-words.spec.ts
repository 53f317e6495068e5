import { fieldWords, inWords } from './field-words.js';

describe('a field of a body, in words', () => {
  it.each([
    ['title', 'title'],
    ['dueAt', 'due'],
    ['materialId', 'material'],
    ['conditions.humidityPct', 'humidity'],
    ['batches[1].ask.geometry.parallelLengthMm', 'batch 2, parallel length'],
    ['results[0].value', 'result 1, value'],
    ['details.overloadPct', 'overload'],
    ['notTestedWhy', 'not tested why'],
  ])('%p is %p', (path, words) => {
    expect(fieldWords(path)).toBe(words);
  });

  it('stands for its path at the head of the sentence, and nowhere else', () => {
    expect(inWords('dueAt', 'dueAt is missing; allowed is a day.')).toBe('Due is missing; allowed is a day.');
    expect(inWords('dueAt', 'Choose another dueAt.')).toBe('Choose another dueAt.');
    expect(inWords('', 'There is nothing.')).toBe('There is nothing.');
  });
});
