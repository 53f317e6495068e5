import type { Utility } from './item.js';

const WORDS: Readonly<Partial<Record<string, string>>> = {
  'power-400v': '400 V power',
} satisfies Partial<Record<Utility, string>>;

/** What people call a choice of an item's field: `compressed-air` reads `compressed air`. */
export function choiceWords(value: string): string {
  return WORDS[value] ?? value.replaceAll('-', ' ');
}
