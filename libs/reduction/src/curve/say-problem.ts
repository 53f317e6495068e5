import type { FormatDoubt } from './curve-format.js';
import type { LineProblem, ProblemReason } from './curve-reading.js';

const REASONS: Readonly<Record<ProblemReason, string>> = {
  'empty-file': 'the file is empty',
  'not-text': 'the file is not text; export it as delimited text',
  'no-rows': 'fewer than two rows of numbers were found',
  'headings-not-found': 'the headings confirmed for this source are not in the file; confirm its format again',
  'headings-repeated': 'the headings stand here again; export one test per file',
  'format-in-doubt': 'the format must be confirmed by a person',
  'too-few-columns': 'the line has fewer columns than the first row',
  'too-many-columns': 'the line has more columns than allowed here',
  'empty-cell': 'the cell is empty',
  'not-a-number': 'the cell is not a number',
  'number-out-of-range': 'the number is too large to be kept',
  'line-too-long': 'the line is too long',
  'file-too-large': 'the file is too large',
  'too-many-rows': 'the file has too many rows',
};

/** One problem in words, e.g. `Line 7, column 2: the cell is not a number ("12x").` */
export function sayProblem({ line, column, reason, found }: LineProblem): string {
  const place = [line === null ? '' : `Line ${line}`, column === null ? '' : `column ${column}`]
    .filter(Boolean)
    .join(', ');
  const sentence = `${REASONS[reason]}${found ? ` ("${found}")` : ''}.`;
  return place ? `${place}: ${sentence}` : sentence.charAt(0).toUpperCase() + sentence.slice(1);
}

const DOUBTS: Readonly<Record<FormatDoubt['code'], string>> = {
  'no-headings': 'No line of headings was found; name the columns and their units.',
  'heading-count-differs':
    'The line above the rows has another number of columns than the rows; check delimiter and decimal mark.',
  'no-load-column': 'No column of force, stress or torque was recognised; choose one.',
  'no-second-column': 'Only one column was recognised; choose a second one.',
  'unit-unknown': 'The unit is not written; choose it.',
  'unit-does-not-fit': 'The unit does not fit what the column seems to hold; choose one.',
  'column-not-recognised': 'The column was not recognised and is not read.',
  'channel-twice': 'Another column holds the same; the first is read.',
  'strain-taken-as-fraction': 'Strain has no unit; a fraction (mm/mm) is proposed. Confirm it, or choose percent.',
  'decimal-mark-not-seen': 'The numbers shown have no decimal mark; check it against a row that has one.',
  'last-line-not-ended':
    'The last line has no end; the file may have been cut off. Check that the test is in it whole.',
};

/** One doubt in words, with the column that it is about. */
export function sayDoubt({ code, column, found }: FormatDoubt): string {
  const place = column === null ? '' : `Column ${column}${found ? ` ("${found}")` : ''}: `;
  return `${place}${DOUBTS[code]}`;
}
