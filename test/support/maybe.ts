import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/**
 * `it` when what a spec needs is there; otherwise it is reported as skipped, with the reason in its name and on the screen.
 *
 * @param missing what is not there, in words; null when everything is
 */
export function maybe(missing: string | null): jest.It {
  if (missing === null) return it;
  console.info(`Skipped: ${missing}`);
  return ((name: string, ...rest: []) => it.skip(`${name} (skipped: ${missing})`, ...rest)) as unknown as jest.It;
}

/** The folder with package.json: sources and compiled files lie at different depths below it. */
export function projectRoot(from = import.meta.dirname): string {
  return existsSync(join(from, 'package.json')) ? from : projectRoot(dirname(from));
}
