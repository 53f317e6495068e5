import { useQueries } from '@tanstack/react-query';
import type { CurveView } from '#libs/contract/src/index.js';
import { api } from '../../api-client/api.js';
import { call } from '../../api-client/call.js';

/** The curves that have come so far, in the order of their ids. */
export function useCurves(ids: readonly string[]): CurveView[] {
  const queries = useQueries({
    queries: ids.map((id) => ({
      queryKey: ['results', `/curves/${id}`],
      queryFn: () => call(api('GET /curves/{id}', { id })),
    })),
  });
  return queries.flatMap(({ data }) => (data ? [data] : []));
}
