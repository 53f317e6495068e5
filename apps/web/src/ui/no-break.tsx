/** Text that breaks only at its spaces: the tags and designations in it stay whole. */
export function NoBreak({ children }: { children: string }) {
  return children.split(' ').flatMap((word, at) => [
    at > 0 ? ' ' : '',
    <span key={at} className="one-line">
      {word}
    </span>,
  ]);
}
