import { extensionClassesOf } from '#libs/accuracy/src/index.js';
import type { ExtensionStandard } from '#libs/accuracy/src/index.js';
import type { VerifiedRange } from '../outcome.js';

interface ClassedStep {
  referenceMm: number;
  className: string | null;
}

/** One range for each class that holds where the better ones do not; a range has two steps at least. */
export function extensionRanges(steps: readonly ClassedStep[], standard: ExtensionStandard): VerifiedRange[] {
  const classes = extensionClassesOf(standard).map(({ className }) => className);
  const ranges: VerifiedRange[] = [];
  for (const [rank, className] of classes.entries()) {
    const held = longestRow(steps, (step) => step.className !== null && classes.indexOf(step.className) <= rank);
    const [first, last] = [held.at(0), held.at(-1)];
    if (!first || !last || held.length < 2) continue;
    const range = { from: first.referenceMm, to: last.referenceMm };
    if (!ranges.some(({ from, to }) => from <= range.from && range.to <= to)) {
      ranges.push({ direction: 'extension', className, unit: 'mm', ...range });
    }
  }
  return ranges;
}

/** The longest unbroken row by extension covered; of two equal ones, the lower. */
function longestRow(steps: readonly ClassedStep[], fits: (step: ClassedStep) => boolean) {
  const rows: ClassedStep[][] = [[]];
  for (const step of steps) {
    if (fits(step)) rows.at(-1)!.push(step);
    else rows.push([]);
  }
  return rows.reduce((longest, row) => (reachOf(row) > reachOf(longest) ? row : longest));
}

function reachOf(row: readonly ClassedStep[]): number {
  return (row.at(-1)?.referenceMm ?? 0) - (row.at(0)?.referenceMm ?? 0);
}
