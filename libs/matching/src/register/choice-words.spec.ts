import { choiceWords } from './choice-words.js';

describe('the words of a choice', () => {
  it('are its own, without hyphens', () => {
    expect(choiceWords('compressed-air')).toBe('compressed air');
  });

  it('write a voltage as a figure with its unit', () => {
    expect(choiceWords('power-400v')).toBe('400 V power');
  });
});
