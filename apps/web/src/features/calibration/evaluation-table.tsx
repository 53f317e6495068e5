import type { EvaluationView } from '#libs/contract/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { ui } from '../../ui/styles.js';

/** Class and range that the readings give, with the figures of each step. */
export function EvaluationTable({ evaluation }: { evaluation: EvaluationView }) {
  const columns = [...new Set(evaluation.steps.flatMap((step) => Object.keys(step)))];
  return (
    <section className={ui.stack}>
      <h2>What the readings give</h2>
      {evaluation.ranges.map(({ direction, className, from, to, unit }) => (
        <p key={direction + String(from)} className={className ? ui.noteFit : ui.noteAct}>
          {direction}: <strong>{className ? `class ${className}` : 'no class'}</strong>{' '}
          {className && (
            <>
              from <span className={ui.fig}>{formatNumber(from)}</span> to{' '}
              <span className={ui.fig}>
                {formatNumber(to)} {unit}
              </span>
            </>
          )}
        </p>
      ))}
      {evaluation.notes.map((note) => (
        <p key={note} className={ui.small}>
          {note}
        </p>
      ))}
      <div className={ui.scrollX}>
        <table>
          <thead>
            <tr>
              {columns.map((column) => (
                <th key={column} className={ui.num}>
                  {heading(column)}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {evaluation.steps.map((step, index) => (
              <tr key={index}>
                {columns.map((column) => (
                  <td key={column} className={ui.num}>
                    {shown(step[column])}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

/** `repeatabilityPct` reads `repeatability, %`. */
function heading(key: string): string {
  return key
    .replace(/Pct$/, ', %')
    .replace(/Mm$/, ', mm')
    .replace(/N$/, ', N')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
}

function shown(value: unknown): string {
  if (typeof value === 'number') return formatNumber(value, 4);
  if (value === null || value === undefined) return '–';
  if (Array.isArray(value)) return value.map(shown).join(', ');
  if (isFinding(value)) return findingWords(value);
  return typeof value === 'string' || typeof value === 'boolean' ? String(value) : '';
}

/** One figure of a step against a limit of the class that it misses. */
interface Finding {
  criterion: string;
  found: number | null;
  limit: number;
  unit?: string;
}

function isFinding(value: unknown): value is Finding {
  return typeof value === 'object' && value !== null && 'criterion' in value;
}

/** `q −1.34 %, limit ±1`: by the letters of ISO 7500-1. */
function findingWords({ criterion, found, limit, unit = '%' }: Finding): string {
  if (criterion === 'lowest-force') return `${shown(found)} resolutions, at least ${shown(limit)}`;
  return `${criterion.replaceAll('-', ' ')} ${shown(found)} ${unit}, limit ${shown(limit)} ${unit}`;
}
