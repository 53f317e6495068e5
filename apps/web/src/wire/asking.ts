import { skipToken, useInfiniteQuery, useMutation, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef } from 'react';
import type { LiveEvent, Page } from '#libs/contract/src/index.js';
import type { Call } from './api.js';
import { call, newKey, Refused, wasDoneAlready } from './call.js';

export type Topic = LiveEvent['topic'] | 'methods' | 'session' | 'record' | 'status' | 'settings';

/** A fetch as screens see it: it has four faces, and the fourth (empty) is the screen's to decide. */
export interface Asked<Value> {
  state: 'waiting' | 'failed' | 'ready';
  value: Value | undefined;
  error: Error | null;
  retry: () => void;
  /** True while an older answer is shown and a newer one is on its way. */
  refreshing: boolean;
}

/**
 * Asks for something and keeps it fresh: it is asked for again when a live event of its topic arrives.
 *
 * @param asked null asks nothing yet
 * @param everyMs how soon to ask again even without an event, by the last answer
 */
export function useAsk<Value>(
  topic: Topic,
  asked: Call<Value, 'GET'> | null,
  everyMs?: (value: Value | undefined) => number | false,
): Asked<Value> {
  const query = useQuery({
    queryKey: [topic, asked?.path ?? null],
    queryFn: asked ? ({ signal }) => call(asked, { signal }) : skipToken,
    ...(everyMs
      ? { refetchInterval: (query: { state: { data: Value | undefined } }) => everyMs(query.state.data) }
      : {}),
  });
  return {
    state: query.data !== undefined ? 'ready' : query.isError ? 'failed' : 'waiting',
    value: query.data,
    error: query.error,
    retry: () => void query.refetch(),
    refreshing: query.isFetching && query.data !== undefined,
  };
}

export interface AskedPages<Row> extends Asked<Row[]> {
  /** Fetches the page after the last one; null at the end. */
  more: (() => void) | null;
  total: number | undefined;
}

/** Like {@link useAsk}, for a list that comes in pages. */
export function useAskPages<Row>(topic: Topic, asked: Call<Page<Row> | Row[], 'GET'>): AskedPages<Row> {
  const query = useInfiniteQuery({
    queryKey: [topic, 'pages', asked.path],
    queryFn: ({ pageParam, signal }) => call({ ...asked, path: withCursor(asked.path, pageParam) }, { signal }),
    initialPageParam: null as string | null,
    getNextPageParam: (last) => (Array.isArray(last) ? null : last.next),
  });
  const pages = query.data?.pages;
  const first = pages?.[0];
  return {
    state: pages ? 'ready' : query.isError ? 'failed' : 'waiting',
    value: pages?.flatMap((page) => (Array.isArray(page) ? page : page.rows)),
    error: query.error,
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
 * Sends one act of a person. A second try of the same act (after a lost answer) carries the same key, so it happens once.
 *
 * @param topics what to ask for again afterwards
 */
export function useSend<Answer = unknown>(topics: readonly Topic[], onDone?: (answer: Answer) => void) {
  const client = useQueryClient();
  const unanswered = useRef<{ act: string; key: string } | null>(null);
  const askAgain = () => Promise.all(topics.map((topic) => client.invalidateQueries({ queryKey: [topic] })));
  return useMutation<Answer, Error, Call<Answer>>({
    mutationFn: async (asked) => {
      const { verb, path, body } = asked;
      const act = JSON.stringify([verb, path, body]);
      const key = unanswered.current?.act === act ? unanswered.current.key : newKey();
      unanswered.current = { act, key };
      try {
        return await call(asked, { key: verb === 'POST' ? key : undefined });
      } catch (error) {
        if (error instanceof Refused) unanswered.current = null;
        if (wasDoneAlready(error)) await askAgain();
        throw error;
      }
    },
    onSuccess: async (answer) => {
      unanswered.current = null;
      await askAgain();
      onDone?.(answer);
    },
  });
}
