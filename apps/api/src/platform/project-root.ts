import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** The project's folder. Compiled files and sources lie at different depths below it. */
export function projectRoot(from = import.meta.dirname): string {
  return existsSync(join(from, 'package.json')) ? from : projectRoot(dirname(from));
}
