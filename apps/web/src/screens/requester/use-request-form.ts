import { useEffect, useEffectEvent, useState } from 'react';
import { useWatch } from 'react-hook-form';
import { useLocation } from 'wouter';
import { useHistoryState } from 'wouter/use-browser-location';
import type { MethodView, Problem, RequestView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { ApiError } from '../../api-client/call.js';
import { useApiMutation } from '../../api-client/queries.js';
import type { BatchDraft } from '../../features/matching/batch-draft.js';
import { headProblems, requestBody } from '../../features/requests/request-head.js';
import { useSession } from '../../features/session/session.js';
import { useLabForm } from '../../ui/form/use-lab-form.js';
import type { LabForm } from '../../ui/form/use-lab-form.js';
import { useToast } from '../../ui/toasts.js';
import { useMoments } from '../../ui/use-moments.js';
import { bodiesOf, isFieldOfBatch, resultsOf, startOf } from './request-draft.js';
import type { RequestDraft } from './request-draft.js';

/** What a button of the form asks for. */
export const SAVE = 'save';
export const SUBMIT = 'submit';

/** What kept a new request from being submitted; it goes along to the form of the draft that the request became. */
interface HandedOver {
  refused?: Problem;
}

/** The request form: what is typed, what the server refused of its batches, and where it goes once it is kept. */
export function useRequestForm(methods: MethodView[], request: RequestView | undefined) {
  const { person } = useSession();
  const moments = useMoments();
  const [chosen, setAt] = useState(0);
  const [tried, setTried] = useState(false);
  const [refused, setRefused] = useState<{ fields: Record<string, string>; batches: BatchDraft[] } | null>(null);
  const send = useSendRequest(methods, request);
  const form: LabForm<RequestDraft> = useLabForm<RequestDraft>({
    initial: startOf(methods, request, person.teams[0]?.id ?? '', moments),
    check: (draft, button) => {
      setTried(true);
      return headProblems(draft, moments, moments.nowMs(), button === SAVE);
    },
    send: (draft, button) =>
      send(draft, button).catch((error: unknown) => {
        if (error instanceof ApiError) setRefused({ fields: error.fields, batches: draft.batches });
        throw error;
      }),
    fieldOf: (path) => (path === 'dueAt' ? 'due' : path),
    isShown: (path) => isFieldOfBatch(methods, form.hook.getValues('batches'), chosen, path),
    keepAs: `request.${request ? `${request.id}.${request.version}` : 'new'}`,
  });
  const batches = useWatch({ control: form.control, name: 'batches' });
  const at = batches[chosen] ? chosen : 0;
  useHandedOver((error) => {
    setRefused({ fields: error.fields, batches });
    form.refuse(error);
  });
  const change = (next: BatchDraft[]) => form.hook.setValue('batches', next, { shouldDirty: true });
  /** What the server refused of a batch stands until that batch is changed. */
  const refusedOf = (at: number) => (refused && refused.batches[at] === batches[at] ? refused.fields : {});
  return { form, batches, at, setAt, change, tried, refusedOf };
}

function useSendRequest(methods: MethodView[], request: RequestView | undefined) {
  const moments = useMoments();
  const toast = useToast();
  const [, go] = useLocation();
  const save = useApiMutation<RequestView>(['requests']);
  const submit = useApiMutation<RequestView>(['requests', 'plan']);
  return async (draft: RequestDraft, button: string) => {
    const results = resultsOf(methods, draft.batches);
    const body = requestBody(draft, bodiesOf(methods, draft.batches), results, moments);
    const kept = await save.mutateAsync(
      request
        ? api('PATCH /requests/{id}', { id: request.id, body, version: request.version })
        : api('POST /requests', { body }),
    );
    if (button === SAVE) {
      toast(`${kept.reference} is saved as a draft.`);
      return go(`/requests/${kept.id}`);
    }
    try {
      await submit.mutateAsync(api('POST /requests/{id}/submit', { id: kept.id }));
      toast(`${kept.reference} is submitted. The lab reviews it next.`);
      go(`/requests/${kept.id}`);
    } catch (error) {
      if (request || !(error instanceof ApiError)) throw error;
      go(`/requests/${kept.id}/edit`, { state: { refused: error.problem } satisfies HandedOver });
    }
  };
}

/** Shows once what came along with the address. */
function useHandedOver(show: (error: ApiError) => void): void {
  const state = useHistoryState<HandedOver | null>();
  const onShow = useEffectEvent(show);
  const [problem] = useState(state?.refused);
  useEffect(() => {
    if (!problem) return;
    history.replaceState(null, '');
    onShow(new ApiError(problem));
  }, [problem]);
}
