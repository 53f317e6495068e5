import { keepPreviousData, skipToken, useQuery } from '@tanstack/react-query';
import { useEffect, useState } from 'react';
import type { PreviewBody, PreviewView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import type { BodyOf } from '../../api-client/api.js';
import { ApiError, call } from '../../api-client/call.js';

const SETTLE_MS = 160;

/** The value once it has stood still for a moment. */
export function useSettled<Value>(value: Value, ms = SETTLE_MS): Value {
  const [settled, setSettled] = useState(value);
  const text = JSON.stringify(value);
  useEffect(() => {
    const timer = setTimeout(() => setSettled(JSON.parse(text) as Value), ms);
    return () => clearTimeout(timer);
  }, [text, ms]);
  return settled;
}

export interface Preview {
  answer: PreviewView | undefined;
  /** What the server refuses, by field of the batch. */
  wrong: Record<string, string>;
  error: Error | null;
  busy: boolean;
}

/** Which trains could run the batch as it is typed now. The last answer stays until the next one is there. */
export function usePreview(body: PreviewBody | null): Preview {
  const settled = useSettled(body);
  const query = useQuery({
    queryKey: ['items', 'preview', settled],
    queryFn: settled ? ({ signal }) => call(api('POST /matching/preview', { body: settled }), { signal }) : skipToken,
    placeholderData: keepPreviousData,
    retry: false,
  });
  const wrong = query.error instanceof ApiError ? inBatch(query.error.fields) : {};
  return { answer: settled === null ? undefined : query.data, wrong, error: query.error, busy: query.isFetching };
}

/** Paths of the answer as the form knows them: without what stands before the ask. */
function inBatch(fields: Record<string, string>): Record<string, string> {
  return Object.fromEntries(
    Object.entries(fields).map(([path, sentence]) => [path.replace(/^(batches\[\d+\]\.)?(ask\.)?/, ''), sentence]),
  );
}

/** Where the whole request would land if it came now. */
export function useLanding(batches: BodyOf<'POST /matching/landing'>['batches'] | null) {
  const settled = useSettled(batches, 600);
  return useQuery({
    queryKey: ['plan', 'landing', settled],
    queryFn: settled
      ? ({ signal }) => call(api('POST /matching/landing', { body: { batches: settled } }), { signal })
      : skipToken,
    placeholderData: keepPreviousData,
    retry: false,
  });
}
