import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The folder with package.json: compiled files and sources lie at different depths below it. */
export function projectRoot(from = import.meta.dirname): string {
  return existsSync(join(from, 'package.json')) ? from : projectRoot(dirname(from));
}
