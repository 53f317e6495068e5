import { chances } from './chances.js';
import { judge } from './judge.js';
import type { Judged } from './judge.js';
import { RAMPED } from './known-methods.js';
import type { KnownMethod } from './known-methods.js';
import { TRACED } from './known-traces.js';
import type { Law } from './laws.js';
import { statedUncertainty } from './stated-uncertainty.js';
import { TROUBLES } from './troubles.js';

const HEAD = `# Every method of the library on records with known answers

Written by \`npm run check:methods -- --write\`; \`methods-page.spec.ts\` holds it to what the product finds. Each record goes the way of a lab: file,
reader, the library's own recipe, results with their remarks. Specimens follow closed forms (\`laws.ts\`, \`known-traces.ts\`), and troubles spoil their
records (\`troubles.ts\`). True and found are of the record without trouble, in MPa, N, N/mm, mm, J and fractions; U is the expanded uncertainty (k = 2)
that the lab states for one specimen on the least train that the method allows, where it states one.

Under a trouble stands ✓ where the true value lies within U of the figure (or within a few percent of it, where no U is stated), ✓· where it does and
the figure carries a remark, ! and the figure where it does not and a remark says so, and – where the figure is withheld with its reason. A wrong
figure without a remark would be in capitals; there is none.
`;

const MARKS = { right: '✓', flagged: '!', missing: '–', silent: 'SILENT' } as const;
/** The rows of a record when it is spoiled; clean ones are recorded as finely as the test is. */
const ROWS = 900;

/** The page: for each specimen a table of troubles and results. */
export function methodsPage(): string {
  const sections = [...RAMPED, ...TRACED].flatMap((known) => known.laws.map((law) => sectionOf(known, law)));
  return `${[HEAD, ...sections].join('\n')}\n`;
}

function sectionOf(known: KnownMethod, law: Law): string {
  const clean = judge(known, law, known.record(law, known.rows));
  const row = (name: string, of: (one: Judged) => string) => line([name, ...clean.map(of)]);
  const rows = [
    row('', ({ key }) => key),
    row('---', () => '---:'),
    row('true', ({ truth }) => shown(truth)),
    row('found', ({ found }) => (found === null ? '–' : shown(found))),
    row('U', (one) => uncertaintyOf(one, known)),
    ...(isTrace(known) ? [] : casesOf(known, law)).map(({ name, judged }) =>
      row(name, (one) => cellOf(judged.find(({ key }) => key === one.key), one)),
    ),
  ];
  return [`## ${known.method.designation}: ${law.name}\n`, ...rows, ''].join('\n');
}

const isTrace = (known: KnownMethod): boolean => TRACED.includes(known);

/** The troubles that this record can have; the same chances as in the printed table. */
function casesOf(known: KnownMethod, law: Law): { name: string; judged: Judged[] }[] {
  return TROUBLES.flatMap((trouble, at) => {
    const spoiled = at === 0 ? null : trouble.spoil(known.record(law, ROWS), chances(at + 1));
    return spoiled ? [{ name: trouble.name, judged: judge(known, law, spoiled) }] : [];
  });
}

function uncertaintyOf({ key, found, basis }: Judged, known: KnownMethod): string {
  const stated = found === null ? null : statedUncertainty(key, found, basis, known);
  return stated === null ? '' : `±\u00a0${String(Number(stated.toPrecision(2)))}`;
}

function cellOf(judged: Judged | undefined, clean: Judged): string {
  if (!judged) return '';
  const { fate, found, remarks } = judged;
  if (fate === 'right') return remarks.length > clean.remarks.length ? '✓·' : '✓';
  return found === null ? MARKS[fate] : `${MARKS[fate]} ${shown(found)}`;
}

const line = (cells: readonly string[]): string => `| ${cells.join(' | ')} |`;

function shown(value: number): string {
  return String(Number(value.toPrecision(4)));
}
