/** What people type is looked for as it stands: their `%` and `_` are no wildcards. */
export function likeOf(words: string): string {
  return `%${words.replace(/[\\%_]/g, '\\$&')}%`;
}
