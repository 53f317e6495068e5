import type { ImportView } from '#libs/contract/src/index.js';
import { LabError } from '#libs/errors/src/index.js';

const TOLD = 3;

/**
 * Refuses an import, all of it, while one line of its file is bad; a try (`dryRun`) tells the same as an answer.
 *
 * @throws {LabError} `import/invalid` with every problem
 */
export function refuseBadImport({
  dryRun,
  lines,
  problems,
}: Omit<ImportView, 'created' | 'updated' | 'unchanged'>): void {
  if (dryRun || problems.length === 0) return;
  const first = problems
    .slice(0, TOLD)
    .map(({ line, field, sentence }) => `Line ${line}${field && `, ${field}`}: ${sentence}`);
  const more = problems.length > TOLD ? [`${problems.length - TOLD} more.`] : [];
  throw new LabError('import/invalid', ['Nothing was saved.', ...first, ...more].join(' '), { lines, problems });
}
