// A component on its page: the answers of the API are stated by the spec, from the examples that the API's description carries.
import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { render } from '@testing-library/react';
import { userEvent } from '@testing-library/user-event';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { createElement } from 'react';
import type { ReactElement } from 'react';
import { projectRoot } from './maybe.js';

/** The example that the API's description has for a body or an answer; `test/exchange` holds each to its schema. */
export function example<View>(name: string): View {
  const file = join(projectRoot(), 'apps', 'api', 'src', 'description', 'examples', `${name}.json`);
  return JSON.parse(readFileSync(file, 'utf8')) as View;
}

export interface Asked {
  /** `POST /jobs/1/finish` */
  what: string;
  body: unknown;
}

/** What the API answers: a body, or problem details with a status of their own. */
export type Answers = (asked: Asked) => unknown;

/** Problem details as the API sends them. */
export function problem(status: number, detail: string, errors: { field: string; sentence: string }[] = []) {
  return { type: 'about:blank', title: 'Refused', status, detail, errors };
}

/** Shows a component with an API that answers as stated. @returns what was asked, in order, and a hand to work the page */
export function renderPage(element: ReactElement, answers: Answers) {
  const asked: Asked[] = [];
  globalThis.fetch = (async (address: string, { method = 'GET', body }: { method?: string; body?: unknown }) => {
    const ask = {
      what: `${method} ${address.replace('/api/v1', '')}`,
      body: typeof body === 'string' ? JSON.parse(body) : body,
    };
    asked.push(ask);
    const answer = answers(ask);
    const status = (answer as { status?: unknown } | undefined)?.status;
    const text = JSON.stringify(answer) ?? '';
    const refused = typeof status === 'number';
    return { ok: !refused, status: refused ? status : 200, text: async () => text };
  }) as unknown as typeof fetch;
  const client = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  const page = render(createElement(QueryClientProvider, { client }, element));
  return { asked, hand: userEvent.setup({ delay: null }), ...page };
}
