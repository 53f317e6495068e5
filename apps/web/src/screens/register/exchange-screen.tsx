import { useState } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import type { ImportView } from '#libs/contract/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { ITEM_KINDS } from '#libs/matching/src/index.js';
import { ExportList } from '../../features/exchange/export-list.js';
import { WebhookList } from '../../features/exchange/webhook-list.js';
import { KIND_WORDS } from '../../features/register/item-words.js';
import { useHasRole } from '../../features/session/session.js';
import { ErrorMessage } from '../../ui/fetch-states.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { urlOf, call, newIdempotencyKey } from '../../api-client/call.js';
import { ui } from '../../ui/styles.js';

/** Items out and in as CSV, everything out, and other programs told. An import is tried first; nothing is kept while one line is bad. */
export function ExchangeScreen() {
  const mayImport = useHasRole('manager');
  const mayExportAll = useHasRole('manager', 'auditor');
  const [kind, setKind] = useState<ItemKind>('load-cell');
  return (
    <>
      <TitleBlock title="Import and export" />
      <div className={ui.split}>
        <section className={ui.stack}>
          <h2>Export</h2>
          <p>One line an item, in the same columns that an import reads.</p>
          <div className={ui.rowEnd}>
            <SelectField
              label="Kind"
              value={kind}
              onChange={setKind}
              choices={ITEM_KINDS.map((value) => ({ value, label: KIND_WORDS[value] }))}
            />
            <a className={ui.button} href={urlOf(api('GET /items/export.csv', { kind }))} download>
              Save as CSV
            </a>
          </div>
        </section>
        {mayImport && <Import />}
        {mayExportAll && <ExportList />}
        {mayImport && <WebhookList />}
      </div>
    </>
  );
}

function Import() {
  const client = useQueryClient();
  const [file, setFile] = useState<File | null>(null);
  const [answer, setAnswer] = useState<ImportView | null>(null);
  const [error, setError] = useState<Error | null>(null);
  const [busy, setBusy] = useState(false);
  async function send(chosen: File, dryRun: boolean) {
    setBusy(true);
    setError(null);
    try {
      setAnswer(
        await call(api('POST /items/import', { dryRun, body: chosen }), { type: 'text/csv', key: newIdempotencyKey() }),
      );
      if (!dryRun) await client.invalidateQueries({ queryKey: ['items'] });
    } catch (refused) {
      setError(refused as Error);
    }
    setBusy(false);
  }
  return (
    <section className={ui.stack}>
      <h2>Import</h2>
      <p>
        The file is read first without keeping anything; every bad line is named. Then it is kept whole or not at all.
      </p>
      <input
        type="file"
        aria-label="CSV file with items"
        accept=".csv,text/csv"
        onChange={(event) => {
          const chosen = event.target.files?.[0] ?? null;
          setFile(chosen);
          setAnswer(null);
          if (chosen) void send(chosen, true);
        }}
      />
      <ErrorMessage error={error} />
      {answer && <ImportAnswer answer={answer} />}
      {file && answer?.dryRun && answer.problems.length === 0 && (
        <button type="button" className={ui.buttonMain} disabled={busy} onClick={() => void send(file, false)}>
          Keep all {answer.lines} lines
        </button>
      )}
    </section>
  );
}

function ImportAnswer({ answer }: { answer: ImportView }) {
  return (
    <div className={answer.problems.length > 0 ? ui.noteAct : ui.noteFit}>
      <strong>
        {answer.dryRun ? 'Tried: ' : 'Kept: '}
        {answer.lines} lines, {answer.created} new, {answer.updated} changed, {answer.unchanged} as they are,{' '}
        {answer.problems.length} bad. Read as {answer.encoding}.
      </strong>
      <ul>
        {answer.problems.map(({ line, field, sentence }) => (
          <li key={`${line}-${field}`}>
            Line {line}: {sentence}
          </li>
        ))}
      </ul>
    </div>
  );
}
