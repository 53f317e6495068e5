import type { MissingLine, ReportBatch, ReportDocument } from '#libs/contract/src/index.js';

interface Line {
  clause: string;
  what: string;
  how: string;
  missing: (report: ReportDocument) => boolean;
}

const blank = (text: string | null | undefined) => (text ?? '').trim() === '';
const anyBatch = (is: (batch: ReportBatch) => boolean) => (report: ReportDocument) => report.batches.some(is);

/**
 * What a report must hold, line by line, by ISO/IEC 17025:2017 7.8.2.1 a to p, 7.8.3.1 and 7.8.6. Number, issue date and
 * authoriser (d, j, o) are given by issuing itself; that results relate to the items (l) stands in every report.
 */
const LINES: readonly Line[] = [
  { clause: '7.8.2.1 a', what: 'Title', how: 'Give the report a title.', missing: ({ title }) => blank(title) },
  {
    clause: '7.8.2.1 b',
    what: 'Name and address of the laboratory',
    how: 'Enter them in the settings of the lab.',
    missing: ({ laboratory }) => blank(laboratory.name) || blank(laboratory.address),
  },
  {
    clause: '7.8.2.1 c',
    what: 'Place of testing',
    how: 'Enter the address in the settings of the lab.',
    missing: ({ laboratory }) => blank(laboratory.place),
  },
  {
    clause: '7.8.2.1 e',
    what: 'Customer and contact',
    how: 'The request names no team or nobody to contact.',
    missing: ({ customer }) => blank(customer.team) || blank(customer.requester) || blank(customer.contact),
  },
  {
    clause: '7.8.2.1 f',
    what: 'Method',
    how: 'Every batch needs a method.',
    missing: anyBatch(({ method }) => blank(method.designation)),
  },
  {
    clause: '7.8.2.1 g',
    what: 'Description and identification of the items',
    how: 'Every specimen needs a label and a description; give material and geometry in the request.',
    missing: anyBatch(
      ({ specimens }) =>
        specimens.length === 0 || specimens.some(({ label, description }) => blank(label) || blank(description)),
    ),
  },
  {
    clause: '7.8.2.1 h',
    what: 'Date of receipt',
    how: 'Note the arrival of the specimens.',
    missing: ({ dates }) => dates.received === null,
  },
  {
    clause: '7.8.2.1 i',
    what: 'Dates of testing',
    how: 'Finish every job, or abort it with a reason.',
    missing: ({ dates, batches }) => batches.length === 0 || dates.testedFrom === null || dates.testedTo === null,
  },
  {
    clause: '7.8.2.1 l',
    what: 'That results relate only to the items tested',
    how: 'This statement is part of every report.',
    missing: ({ relatesOnlyToItems }) => blank(relatesOnlyToItems),
  },
  {
    clause: '7.8.2.1 m',
    what: 'Results',
    how: 'Every specimen needs each result that was asked for, or a reason why it has none, is invalid or was not tested.',
    missing: anyBatch(({ results }) => results.columns.length === 0 || results.rows.some(hasNothing)),
  },
  {
    clause: '7.8.3.1 a',
    what: 'Test conditions: temperature',
    how: 'Enter the temperature at which the job was run (at the end of the job).',
    missing: anyBatch(({ conditions }) => conditions.temperatureC === null),
  },
  {
    clause: '7.5.1',
    what: 'Who tested',
    how: 'The job names no technician.',
    missing: anyBatch(({ technician }) => blank(technician)),
  },
  {
    clause: '7.5.1',
    what: 'Equipment used',
    how: 'The job names no items.',
    missing: anyBatch(({ items }) => items.length === 0),
  },
  {
    clause: '6.4.4',
    what: 'A load cell whose calibration was in force',
    how: 'The load cell had no calibration in force when the job ran. Open a nonconformity, and test again or amend the register.',
    missing: anyBatch(({ items }) => items.some(({ role, calibration }) => role === 'load-cell' && blank(calibration))),
  },
  {
    clause: '7.8.6',
    what: 'Statement of conformity',
    how: 'Conformity was asked for, and the result that it rests on is missing.',
    missing: anyBatch(
      ({ results }) => results.conformity?.statement === 'cannot be stated' && results.statistics.length === 0,
    ),
  },
];

function hasNothing({ fate, values, missing }: ReportBatch['results']['rows'][number]): boolean {
  const given = Object.values(values).some((value) => value !== null);
  if (missing?.some(({ why }) => why === null)) return true;
  return fate === 'tested' ? !given : fate === 'expected' || fate === 'arrived';
}

/** What is missing, in the order of the standard; nothing when the report may be issued. */
export function missingLines(report: ReportDocument): MissingLine[] {
  return LINES.filter(({ missing }) => missing(report)).map(({ clause, what, how }) => ({ clause, what, how }));
}
