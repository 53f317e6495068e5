import { useWatch } from 'react-hook-form';
import type { MaterialView, MethodView, RequestView, TeamRef } from '#libs/contract/src/index.js';
import { newIdempotencyKey } from '../../api-client/call.js';
import { BatchFields } from '../../features/matching/batch-fields.js';
import { readDraft } from '../../features/matching/batch-draft.js';
import type { BatchDraft } from '../../features/matching/batch-draft.js';
import { usePreview } from '../../features/matching/use-preview.js';
import { RequestFields } from './request-fields.js';
import { FormFrame, SubmitButton } from '../../ui/form/form-frame.js';
import { ui } from '../../ui/styles.js';
import { TitleBlock } from '../../ui/title-block.js';
import { useToast } from '../../ui/toasts.js';
import { AnswerBeside } from './answer-beside.js';
import { BatchTabs } from './batch-tabs.js';
import { answerable, changeMethod, fieldsOfBatch, missingWords, resultsOf } from './request-draft.js';
import { SAVE, SUBMIT, useRequestForm } from './use-request-form.js';
import styles from '../../features/requests/requests.module.css';

interface Props {
  methods: MethodView[];
  materials: MaterialView[];
  teams: readonly TeamRef[];
  /** The draft that is changed; without it the request is new. */
  request?: RequestView | undefined;
}

/** A request as it is typed, and beside it what the lab can do about it. */
export function RequestForm({ methods, materials, teams, request }: Props) {
  const { form, batches, at, setAt, change, tried, refusedOf } = useRequestForm(methods, request);
  const conforms = useWatch({ control: form.control, name: 'conforms' });
  const batch = batches[at]!;
  const method = methods.find(({ id }) => id === batch.methodId);
  const read = method ? readDraft(method, batch) : null;
  const preview = usePreviewOf(batch, method, read);
  const setBatch = (next: BatchDraft) => change(batches.map((each) => (each.key === next.key ? next : each)));
  const wrong = {
    ...preview.wrong,
    ...(tried ? missingWords(read?.missing ?? []) : {}),
    ...fieldsOfBatch(refusedOf(at), at),
    ...read?.wrong,
  };
  return (
    <>
      <RequestTitle form={form} request={request} />
      <div className={styles.newRequest}>
        <FormFrame form={form} className={ui.stackWide} label="Request" sentByEnter={false}>
          <RequestFields form={form} conforms={conforms} teams={teams} results={resultsOf(methods, batches)} />
          <section className={ui.stack}>
            <BatchTabs
              batches={batches}
              at={at}
              onChoose={setAt}
              onAnother={() => {
                change([...batches, { ...batch, key: newIdempotencyKey(), label: '' }]);
                setAt(batches.length);
              }}
            />
            <BatchFields
              draft={batch}
              onChange={setBatch}
              methods={methods}
              materials={materials}
              wrong={wrong}
              onMethod={(to) => setBatch(changeMethod(batch, to, method, materials))}
            />
            {batches.length > 1 && <TakeOut batches={batches} at={at} onChange={change} />}
          </section>
        </FormFrame>
        <aside className={styles.beside} aria-label="What the lab can do">
          <AnswerBeside
            preview={preview}
            chosen={!!method}
            missing={read?.missing ?? []}
            unreadable={Object.keys(read?.wrong ?? {}).length > 0}
            confirmed={batch.confirmed}
            onConfirm={(name) => setBatch({ ...batch, confirmed: [...batch.confirmed, name] })}
            batches={preview.answer ? answerable(methods, batches) : null}
          />
        </aside>
      </div>
    </>
  );
}

/** What the lab answers, as soon as everything that the method needs can be read. */
function usePreviewOf(batch: BatchDraft, method: MethodView | undefined, read: ReturnType<typeof readDraft> | null) {
  const isReadable = read && read.missing.length === 0 && Object.keys(read.wrong).length === 0;
  return usePreview(
    method && isReadable ? { methodId: method.id, materialId: batch.materialId || null, ask: read.ask } : null,
  );
}

function RequestTitle({
  form,
  request,
}: {
  form: ReturnType<typeof useRequestForm>['form'];
  request: RequestView | undefined;
}) {
  const back = request
    ? { to: `/requests/${request.id}`, label: request.reference }
    : { to: '/requests', label: 'All requests' };
  return (
    <TitleBlock title={request ? `Change ${request.reference}` : 'New request'} back={back}>
      <SubmitButton form={form} value={SAVE} className={ui.button}>
        Save as draft
      </SubmitButton>
      <SubmitButton form={form} value={SUBMIT}>
        Submit to the lab
      </SubmitButton>
    </TitleBlock>
  );
}

function TakeOut({
  batches,
  at,
  onChange,
}: {
  batches: BatchDraft[];
  at: number;
  onChange: (batches: BatchDraft[]) => void;
}) {
  const toast = useToast();
  return (
    <div>
      <button
        type="button"
        className={ui.buttonBare}
        onClick={() => {
          onChange(batches.filter((_, index) => index !== at));
          toast('The batch is taken out.', () => onChange(batches));
        }}
      >
        Take this batch out
      </button>
    </div>
  );
}
