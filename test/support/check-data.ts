import { dirname, join } from 'node:path';
import { projectRoot } from './maybe.js';

/** A folder of the larger published sets, which are not in the tree: below `CHECK_DATA`, or below `shared` beside the project. */
export function checkData(...path: string[]): string {
  return join(process.env['CHECK_DATA'] ?? join(dirname(projectRoot()), 'shared'), ...path);
}
