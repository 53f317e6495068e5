import { useMoments } from '../../ui/use-moments.js';
import type { Moments } from '../../ui/moments.js';
import { clsx } from 'clsx';
import { useState } from 'react';
import { useLocation } from 'wouter';
import { resultWords } from '#libs/contract/src/index.js';
import type { MaterialView, MethodView, RequestView } from '#libs/contract/src/index.js';
import { BatchFields } from '../../features/matching/batch-fields.js';
import { bodyOf, draftOf, emptyBatch, readDraft, withMethod } from '../../features/matching/batch-draft.js';
import type { BatchDraft } from '../../features/matching/batch-draft.js';
import { usePreview } from '../../features/matching/use-preview.js';
import { RequestFields, emptyHead, headOf, headProblems, requestBody } from '../../features/requests/request-fields.js';
import type { LimitedResult, RequestHead } from '../../features/requests/request-fields.js';
import { useSession } from '../../features/session/session.js';
import { FetchStates, ErrorMessage } from '../../ui/fetch-states.js';
import { useLocalStorage } from '../../ui/local-storage.js';
import { useToast } from '../../ui/toasts.js';
import { TitleBlock } from '../../ui/title-block.js';
import { api } from '../../api-client/api.js';
import { useApiQuery, useApiMutation } from '../../api-client/queries.js';
import { ApiError, newIdempotencyKey } from '../../api-client/call.js';
import { AnswerBeside } from './answer-beside.js';
import { ui } from '../../ui/styles.js';
import styles from '../../features/requests/requests.module.css';

/** The request form, new or of a draft, with what the lab can do about it beside. */
export function NewRequestScreen({ id }: { id?: string }) {
  const methods = useApiQuery('methods', api('GET /methods'));
  const materials = useApiQuery('methods', api('GET /materials'));
  const request = useApiQuery('requests', id ? api('GET /requests/{id}', { id }) : null);
  return (
    <FetchStates of={methods} what="the methods">
      {(offered) => (
        <FetchStates of={materials} what="the materials">
          {(known) => {
            const lists = { methods: offered, materials: known };
            if (!id) return <RequestForm {...lists} />;
            return (
              <FetchStates of={request} what="the request">
                {(value) => <RequestForm key={value.id} {...lists} request={value} />}
              </FetchStates>
            );
          }}
        </FetchStates>
      )}
    </FetchStates>
  );
}

interface Draft {
  head: RequestHead;
  batches: BatchDraft[];
}

/** What kept a new request from being submitted, until the form of the draft that it became shows it. */
const handedOver = new Map<string, Error>();

function RequestForm({
  methods,
  materials,
  request,
}: {
  methods: MethodView[];
  materials: MaterialView[];
  request?: RequestView;
}) {
  const { person } = useSession();
  const all = useApiQuery('people', person.teams.length === 0 ? api('GET /teams') : null);
  const teams = person.teams.length > 0 ? person.teams : (all.value?.rows ?? []);
  const [, go] = useLocation();
  const toast = useToast();
  const moments = useMoments();
  const [draft, setDraft, forget] = useLocalStorage<Draft>(
    `request.${request ? `${request.id}.${request.version}` : 'new'}`,
    startOf(methods, request, person.teams[0]?.id ?? '', moments),
  );
  const [at, setAt] = useState(0);
  const [tried, setTried] = useState(false);
  const batch = draft.batches[at] ?? draft.batches[0]!;
  const method = methods.find((each) => each.id === batch.methodId);
  const read = method ? readDraft(method, batch) : null;
  const preview = usePreview(
    method && read && read.missing.length === 0 && Object.keys(read.wrong).length === 0
      ? { methodId: method.id, materialId: batch.materialId || null, ask: read.ask }
      : null,
  );
  const save = useApiMutation<RequestView>(['requests']);
  const submit = useApiMutation<RequestView>(['requests', 'plan']);
  const [handed, setHanded] = useState(() => (request && handedOver.get(request.id)) ?? null);
  const [sent, setSent] = useState<Draft>(draft);
  const refused = save.error ?? submit.error ?? handed;
  const fields = refused instanceof ApiError ? stillWrong(refused.fields, sent, draft) : {};
  const wrongHead = { ...fields, ...(tried ? headProblems(draft.head, Date.now(), moments) : {}) };
  const wrong = {
    ...preview.wrong,
    ...missingWords(tried, read?.missing),
    ...fieldsOfBatch(fields, at),
    ...read?.wrong,
  };

  const setBatch = (next: BatchDraft) =>
    setDraft({ ...draft, batches: draft.batches.map((each) => (each.key === batch.key ? next : each)) });

  async function keep(andSubmit: boolean) {
    setTried(true);
    setSent(draft);
    // Told once: what is sent now is judged anew.
    if (request) handedOver.delete(request.id);
    setHanded(null);
    const problems = Object.keys(headProblems(draft.head, Date.now(), moments));
    if (problems.some((path) => andSubmit || path !== 'dueAt')) return;
    const body = requestBody(
      draft.head,
      draft.batches
        .filter((each) => each.methodId)
        .map((each) =>
          bodyOf(
            methods.find(({ id }) => id === each.methodId)!,
            each,
          ),
        ),
      resultsOf(methods, draft),
      moments,
    );
    const kept = request
      ? await save.mutateAsync(api('PATCH /requests/{id}', { id: request.id, body, version: request.version }))
      : await save.mutateAsync(api('POST /requests', { body }));
    forget();
    if (!andSubmit) {
      toast(`${kept.reference} is kept as a draft.`);
      go(`/requests/${kept.id}`);
      return;
    }
    try {
      await submit.mutateAsync(api('POST /requests/{id}/submit', { id: kept.id }));
      toast(`${kept.reference} is submitted. The lab reviews it next.`);
      go(`/requests/${kept.id}`);
    } catch (error) {
      handedOver.set(kept.id, error as Error);
      go(`/requests/${kept.id}/edit`);
    }
  }

  return (
    <>
      <TitleBlock
        title={request ? `Change ${request.reference}` : 'New request'}
        back={{
          to: request ? `/requests/${request.id}` : '/requests',
          label: request ? request.reference : 'All requests',
        }}
      >
        <button
          type="button"
          className={ui.button}
          disabled={save.isPending}
          onClick={() => void keep(false).catch(() => undefined)}
        >
          Keep as draft
        </button>
        <button
          type="button"
          className={ui.buttonMain}
          disabled={save.isPending || submit.isPending}
          onClick={() => void keep(true).catch(() => undefined)}
        >
          Submit to the lab
        </button>
      </TitleBlock>
      <div className={styles.newRequest}>
        <div className={ui.stackWide}>
          <ErrorMessage error={refused} />
          <RequestFields
            head={draft.head}
            onChange={(head) => setDraft({ ...draft, head })}
            teams={teams}
            wrong={wrongHead}
            results={resultsOf(methods, draft)}
          />
          <section className={ui.stack}>
            <div className={ui.row}>
              <div className={clsx(ui.tabs, ui.grow)} role="tablist" aria-label="Batches">
                {draft.batches.map((each, index) => (
                  <button
                    key={each.key}
                    type="button"
                    role="tab"
                    aria-selected={index === at}
                    onClick={() => setAt(index)}
                  >
                    {each.label || `Batch ${index + 1}`}
                  </button>
                ))}
              </div>
              <button
                type="button"
                className={clsx(ui.button, ui.buttonSmall)}
                onClick={() => {
                  setDraft({
                    ...draft,
                    batches: [...draft.batches, { ...batch, key: newIdempotencyKey(), label: '' }],
                  });
                  setAt(draft.batches.length);
                }}
              >
                + another like this
              </button>
            </div>
            <BatchFields
              draft={batch}
              onChange={setBatch}
              methods={methods}
              materials={materials}
              wrong={wrong}
              onMethod={(chosen) => setBatch(suited(withMethod(batch, chosen, method), chosen, materials))}
            />
            {draft.batches.length > 1 && (
              <div>
                <button
                  type="button"
                  className={ui.buttonBare}
                  onClick={() => {
                    const before = draft;
                    setDraft({ ...draft, batches: draft.batches.filter((each) => each.key !== batch.key) });
                    setAt(0);
                    toast('The batch is taken out.', () => setDraft(before));
                  }}
                >
                  Take this batch out
                </button>
              </div>
            )}
          </section>
        </div>
        <aside className={styles.beside} aria-label="What the lab can do">
          <AnswerBeside
            preview={preview}
            chosen={!!method}
            missing={read?.missing ?? []}
            unreadable={Object.keys(read?.wrong ?? {}).length > 0}
            confirmed={batch.confirmed}
            onConfirm={(name) => setBatch({ ...batch, confirmed: [...batch.confirmed, name] })}
            batches={preview.answer ? draft.batches.flatMap((each) => bodyFor(methods, each)) : null}
          />
        </aside>
      </div>
    </>
  );
}

/** The draft without a material that the method is not for. */
function suited(draft: BatchDraft, { data }: MethodView, materials: readonly MaterialView[]): BatchDraft {
  const material = materials.find(({ id }) => id === draft.materialId);
  return material && !data.materialGroups.some((group) => group === material.group)
    ? { ...draft, materialId: '' }
    : draft;
}

/** The results that a batch could give, each with the unit in which its limits are held. */
function resultsOf(methods: readonly MethodView[], { batches }: Draft): LimitedResult[] {
  const chosen = batches.flatMap(({ methodId }) => methods.find(({ id }) => id === methodId) ?? []);
  const keys = [...new Set(chosen.flatMap(({ data }) => data.results))];
  return keys.map((key) => {
    const { data } = chosen.find(({ data: { results } }) => results.includes(key))!;
    const { label, unit } = resultWords(key, data.testType);
    return { key, label, unit };
  });
}

/** What was refused and has not been typed anew since. */
function stillWrong(fields: Record<string, string>, sent: Draft, now: Draft): Record<string, string> {
  const headField = (path: string) => (path === 'dueAt' ? 'due' : path.split('.')[0]!) as keyof RequestHead;
  return Object.fromEntries(
    Object.entries(fields).filter(([path]) => {
      const field = headField(path);
      return !(field in now.head) || JSON.stringify(sent.head[field]) === JSON.stringify(now.head[field]);
    }),
  );
}

function bodyFor(methods: readonly MethodView[], draft: BatchDraft) {
  const method = methods.find(({ id }) => id === draft.methodId);
  if (!method || readDraft(method, draft).missing.length > 0) return [];
  const { methodId, materialId, specimenCount, ask } = bodyOf(method, draft);
  return [{ methodId, materialId, specimenCount, ask }];
}

function startOf(
  methods: readonly MethodView[],
  request: RequestView | undefined,
  teamId: string,
  moments: Moments,
): Draft {
  if (!request) return { head: emptyHead(teamId), batches: [emptyBatch('first')] };
  const batches = request.batches.flatMap((batch) => {
    const method = methods.find(({ id }) => id === batch.method.id);
    return method ? [draftOf(batch, method)] : [];
  });
  return { head: headOf(request, moments), batches: batches.length > 0 ? batches : [emptyBatch('first')] };
}

const MATERIAL_NEEDED = 'Choose the material, or give a strength band or a load below.';

function missingWords(tried: boolean, missing: readonly string[] = []): Record<string, string> {
  const words = (path: string) => (path === 'materialId' ? MATERIAL_NEEDED : 'This figure is needed.');
  return tried ? Object.fromEntries(missing.map((path) => [path, words(path)])) : {};
}

function fieldsOfBatch(fields: Record<string, string>, index: number): Record<string, string> {
  const head = new RegExp(`^batches(?:\\[${index}\\]|\\.${index})\\.(?:ask\\.)?`);
  return Object.fromEntries(
    Object.entries(fields)
      .filter(([path]) => head.test(path))
      .map(([path, sentence]) => [path.replace(head, ''), sentence]),
  );
}
