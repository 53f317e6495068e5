import {
  keepPreviousData,
  skipToken,
  useInfiniteQuery,
  useMutation,
  useQuery,
  useQueryClient,
} from '@tanstack/react-query';
import { useRef } from 'react';
import type { LiveEvent, Page } from '#libs/contract/src/index.js';
import type { Call } from './api.js';
import { call, newIdempotencyKey, ApiError, wasDoneAlready } from './call.js';

export type Topic = LiveEvent['topic'] | 'methods' | 'session' | 'record' | 'status' | 'settings';

/** The state of a fetch. Whether a value counts as empty is for the screen to decide. */
export interface Query<Value> {
  state: 'loading' | 'failed' | 'ready';
  value: Value | undefined;
  error: Error | null;
  /** When the value came, by the clock of this device, UTC ms. */
  cameAtMs: number;
  retry: () => void;
  /** True while an older answer is shown and a newer one is on its way. */
  refreshing: boolean;
}

/**
 * Fetches something and keeps it fresh: it is fetched again when a live event of its topic arrives.
 *
 * @param request null fetches nothing yet
 * @param everyMs how soon to fetch again even without an event, judged by the last answer
 * @param keepLast shows the answer to the last request, as `refreshing`, until the one to the next is there
 */
export function useApiQuery<Value>(
  topic: Topic,
  request: Call<Value, 'GET'> | null,
  everyMs?: (value: Value | undefined) => number | false,
  keepLast = false,
): Query<Value> {
  const query = useQuery({
    queryKey: [topic, request?.path ?? null],
    queryFn: request ? ({ signal }) => call(request, { signal }) : skipToken,
    ...(keepLast ? { placeholderData: keepPreviousData } : {}),
    ...(everyMs
      ? { refetchInterval: (query: { state: { data: Value | undefined } }) => everyMs(query.state.data) }
      : {}),
  });
  return {
    state: query.data !== undefined ? 'ready' : query.isError ? 'failed' : 'loading',
    value: query.data,
    cameAtMs: query.dataUpdatedAt,
    error: query.error,
    retry: () => void query.refetch(),
    refreshing: query.isFetching && query.data !== undefined,
  };
}

export interface PagedQuery<Row> extends Query<Row[]> {
  /** Fetches the page after the last one; null at the end. */
  more: (() => void) | null;
  total: number | undefined;
}

/** Like {@link useApiQuery}, for a list that comes in pages. */
export function useApiPages<Row>(topic: Topic, request: Call<Page<Row> | Row[], 'GET'>): PagedQuery<Row> {
  const query = useInfiniteQuery({
    queryKey: [topic, 'pages', request.path],
    queryFn: ({ pageParam, signal }) => call({ ...request, path: withCursor(request.path, pageParam) }, { signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => (Array.isArray(last) ? null : last.next),
  });
  const pages = query.data?.pages;
  const first = pages?.[0];
  return {
    state: pages ? 'ready' : query.isError ? 'failed' : 'loading',
    value: pages?.flatMap((page) => (Array.isArray(page) ? page : page.rows)),
    error: query.error,
    cameAtMs: query.dataUpdatedAt,
    retry: () => void query.refetch(),
    refreshing: query.isFetching && !!pages,
    more: query.hasNextPage ? () => void query.fetchNextPage() : null,
    total: first && !Array.isArray(first) ? first.total : undefined,
  };
}

function withCursor(path: string, cursor: string | null): string {
  if (!cursor) return path;
  return `${path}${path.includes('?') ? '&' : '?'}cursor=${encodeURIComponent(cursor)}`;
}

/**
 * Sends one change. A second try of the same change (after a lost answer) carries the same key, so the server makes it once.
 *
 * @param topics what to fetch again afterwards
 */
export function useApiMutation<Answer = unknown>(topics: readonly Topic[], onDone?: (answer: Answer) => void) {
  const client = useQueryClient();
  const unanswered = useRef<{ change: string; key: string } | null>(null);
  const refetch = () => Promise.all(topics.map((topic) => client.invalidateQueries({ queryKey: [topic] })));
  return useMutation<Answer, Error, Call<Answer>>({
    mutationFn: async (request) => {
      const { verb, path, body } = request;
      const change = JSON.stringify([verb, path, body]);
      const key = unanswered.current?.change === change ? unanswered.current.key : newIdempotencyKey();
      unanswered.current = { change, key };
      try {
        return await call(request, { key: verb === 'POST' ? key : undefined });
      } catch (error) {
        if (error instanceof ApiError) unanswered.current = null;
        if (wasDoneAlready(error)) await refetch();
        throw error;
      }
    },
    onSuccess: async (answer) => {
      unanswered.current = null;
      await refetch();
      onDone?.(answer);
    },
  });
}
