import type { ReportDocument } from '#libs/contract/src/index.js';
import { stringify } from 'csv-stringify/sync';

/** Every figure of a report, one a line (RFC 4180). Cells that a spreadsheet would take for a formula are quoted as text. */
export function reportCsv({ number, revision, batches }: ReportDocument): string {
  const rows = batches.flatMap(({ results, method }) =>
    results.rows.flatMap(({ label, fate, invalidWhy, values }) =>
      results.columns.flatMap(({ key, label: name, unit }) => {
        const value = values[key];
        return value
          ? [
              [
                number,
                revision,
                results.label,
                method.designation,
                label,
                fate,
                invalidWhy ?? '',
                name,
                value.value,
                unit,
                value.flags.join(' '),
              ],
            ]
          : [];
      }),
    ),
  );
  const head = [
    'report',
    'revision',
    'batch',
    'method',
    'specimen',
    'fate',
    'invalid because',
    'result',
    'value',
    'unit',
    'flags',
  ];
  return stringify([head, ...rows], { record_delimiter: '\r\n', escape_formulas: true });
}
