import { useState } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import type { ImportView } from '#libs/contract/src/index.js';
import type { ItemKind } from '#libs/matching/src/index.js';
import { ITEM_KINDS } from '#libs/matching/src/index.js';
import { ExportList } from '../../features/exchange/export-list.js';
import { WebhookList } from '../../features/exchange/webhook-list.js';
import { KIND_WORDS } from '../../features/register/item-words.js';
import { useHasRole } from '../../features/session/session.js';
import { SelectField } from '../../ui/fields/select-field.js';
import { FormFile } from '../../ui/form/form-file.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
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
          <p>One line for each item, in the columns that an import reads.</p>
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

interface ImportTyped {
  file: File | null;
}

/** A file is tried as soon as it is chosen; what was found stays shown once it is kept. */
function Import() {
  const client = useQueryClient();
  const [answer, setAnswer] = useState<ImportView | null>(null);
  const send = (file: File, dryRun: boolean) =>
    call(api('POST /items/import', { dryRun, body: file }), { type: 'text/csv', key: newIdempotencyKey() });
  const form = useLabForm<ImportTyped>({
    initial: { file: null },
    fieldOf: () => 'file',
    send: async ({ file }) => {
      setAnswer(await send(file!, false));
      await client.invalidateQueries({ queryKey: ['items'] });
    },
    after: 'clear',
  });
  async function tryOut(file: File | null) {
    const isStillChosen = () => form.hook.getValues('file') === file;
    setAnswer(null);
    form.forgive();
    try {
      const found = file && (await send(file, true));
      if (isStillChosen()) setAnswer(found);
    } catch (refused) {
      if (isStillChosen()) form.refuse(refused);
    }
  }
  const isGood = answer !== null && answer.dryRun && answer.problems.length === 0;
  return (
    <section className={ui.stack}>
      <h2>Import</h2>
      <p>
        The file is read first without saving anything; every bad line is named. Then it is saved whole or not at all.
      </p>
      <FormFrame form={form} label="Import">
        <FormFile
          form={form}
          name="file"
          label="CSV file with items"
          accept=".csv,text/csv"
          needed="Choose a file."
          onEdit={(file) => void tryOut(file)}
        />
        {answer && <ImportAnswer answer={answer} />}
        {isGood && (
          <div>
            <SubmitButton form={form}>Save all {answer.lines} lines</SubmitButton>
          </div>
        )}
      </FormFrame>
    </section>
  );
}

function ImportAnswer({ answer }: { answer: ImportView }) {
  return (
    <div className={answer.problems.length > 0 ? ui.noteAct : ui.noteFit}>
      <strong>
        {answer.dryRun ? 'Tried: ' : 'Saved: '}
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
