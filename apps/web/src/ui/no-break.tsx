import { ui } from './styles.js';
/** Text that breaks only at its spaces: the tags and designations in it stay whole. */
export function NoBreak({ children }: { children: string }) {
  return children.split(' ').flatMap((word, at) => [
    at > 0 ? ' ' : '',
    <span key={at} className={ui.oneLine}>
      {word}
    </span>,
  ]);
}
