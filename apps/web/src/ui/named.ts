/** The server names a field by its path; people know it by its label. */
export function named(sentence: string | undefined, path: string, label: string): string | undefined {
  const [first = ''] = sentence?.split(' ') ?? [];
  return first.includes(path) ? label + sentence!.slice(first.length) : sentence;
}
