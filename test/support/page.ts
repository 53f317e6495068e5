import { QueryClient, QueryClientProvider } from '@tanstack/react-query';
import { render } from '@testing-library/react';
import { createElement } from 'react';
import type { ReactElement } from 'react';
import { Router } from 'wouter';
import { memoryLocation } from 'wouter/memory-location';
import type { FieldError, Problem, Role, SessionView } from '#libs/contract/src/index.js';
import { SessionProvider } from '../../apps/web/src/features/session/session.js';
import { momentsIn } from '../../apps/web/src/ui/moments.js';
import { Toasts } from '../../apps/web/src/ui/toasts.js';
import { MomentsProvider } from '../../apps/web/src/ui/use-moments.js';

/** One call that a component made. */
export interface Sent {
  /** Verb and path without its query, e.g. `POST /teams`. */
  call: string;
  query: URLSearchParams;
  body: any;
}

/** What the server says to a call: a value, or what a function makes of the call. A {@link Refusal} is an error answer. */
export type Answers = Record<string, unknown>;

export class Refusal {
  constructor(readonly problem: Problem) {}
}

/** The answer to a body in which the fields named here are wrong. */
export function refusal(sentences: Record<string, string>, status = 422): Refusal {
  const errors = Object.entries(sentences).map(([field, sentence]): FieldError => ({
    field,
    found: '',
    allowed: '',
    sentence,
  }));
  const detail = errors.map(({ sentence }) => sentence).join(' ');
  return new Refusal({ type: '/problems/input/invalid', title: 'Invalid input', status, detail, errors });
}

/** When components are shown, so that what they say does not hang on the day on which it is checked. */
const TUESDAY = '2026-12-01T10:00:00.000Z';

/**
 * Renders a component as on the page of a lab in London where somebody is signed in; what it asks the server for is answered from a table.
 *
 * @param now what time it is in the lab
 * @returns the calls that change something, in order, and the address at which the page stands
 */
export function show(
  component: ReactElement,
  answers: Answers,
  { roles = ['manager'] as Role[], path = '/', now = TUESDAY } = {},
) {
  const sent: Sent[] = [];
  globalThis.fetch = ((url: string, init: RequestInit) => Promise.resolve(answer(answers, sent, url, init))) as never;
  const client = new QueryClient({ defaultOptions: { queries: { retry: false } } });
  const { hook, history } = memoryLocation({ path, record: true });
  const aheadMs = Date.parse(now) - Date.now();
  const providers: ((children: ReactElement) => ReactElement)[] = [
    (children) => createElement(QueryClientProvider, { client, children }),
    (children) => createElement(Toasts, { children }),
    (children) => createElement(SessionProvider, { value: sessionOf(roles), children }),
    (children) => createElement(MomentsProvider, { value: momentsIn('Europe/London', aheadMs), children }),
    (children) => createElement(Router, { hook, children }),
  ];
  render(providers.reduceRight((inside, provide) => provide(inside), component));
  return { sent, at: () => history.at(-1) };
}

function answer(answers: Answers, sent: Sent[], url: string, init: RequestInit) {
  const { pathname, searchParams } = new URL(url, 'http://lab.example');
  const call = `${init.method} ${pathname.replace('/api/v1', '')}`;
  const body: unknown = typeof init.body === 'string' ? JSON.parse(init.body) : init.body;
  const made = { call, query: searchParams, body };
  if (init.method !== 'GET') sent.push(made);
  if (!(call in answers)) throw new Error(`Nothing is said to ${call}.`);
  const said = answers[call];
  const value: unknown = typeof said === 'function' ? (said as (made: Sent) => unknown)(made) : said;
  const [status, told] = value instanceof Refusal ? [value.problem.status, value.problem] : [200, value];
  return { ok: status < 400, status, text: () => Promise.resolve(told === undefined ? '' : JSON.stringify(told)) };
}

function sessionOf(roles: Role[]): SessionView {
  return {
    person: { id: 'ruth', name: 'Ruth Calloway', email: 'ruth@northmoor.example', roles, teams: [] },
    permissions: [],
    lab: { name: 'Northmoor Cycles', timeZone: 'Europe/London', now: TUESDAY },
    demo: false,
  };
}
