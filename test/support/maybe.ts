import { existsSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';

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

/**
 * A file or folder of the check data that may not be carried along: below CHECK_DATA, or the folder `shared` beside the project.
 *
 * @returns its path, or null where it is absent
 */
export function checkData(path: string): string | null {
  const folder = process.env['CHECK_DATA'] ?? join(dirname(projectRoot()), 'shared');
  const file = resolve(folder, path);
  return existsSync(file) ? file : null;
}

/** The sentence for `maybe` when `checkData` found nothing. */
export function withoutData(path: string, found: string | null): string | null {
  return found ? null : `${path} is not in the folder that CHECK_DATA names`;
}

/** The folder with package.json: sources and compiled files lie at different depths below it. */
export function projectRoot(from = import.meta.dirname): string {
  return existsSync(join(from, 'package.json')) ? from : projectRoot(dirname(from));
}
