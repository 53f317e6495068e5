import { fieldWords } from '../../api-client/field-words.js';

/** A sentence of the server begins with the words of a field's path; people know the field by its label. */
export function named(sentence: string | undefined, path: string, label: string): string | undefined {
  const head = sentence?.split(' is ', 1)[0] ?? '';
  return head.toLowerCase().endsWith(fieldWords(path)) ? label + sentence!.slice(head.length) : sentence;
}
