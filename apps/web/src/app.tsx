import { MomentsProvider } from './ui/use-moments.js';
import { Suspense, lazy, useMemo } from 'react';
import type { ComponentType } from 'react';
import { Redirect, Route, Switch, useLocation } from 'wouter';
import { MS_PER_MINUTE } from '#libs/calendar/src/index.js';
import type { SessionView } from '#libs/contract/src/index.js';
import { SendingProvider } from './features/bench/sending.js';
import { SessionProvider } from './features/session/session.js';
import { homeOf } from './screens/entry/desks.js';
import { Shell } from './screens/entry/shell.js';
import { SignInScreen } from './screens/entry/sign-in-screen.js';
import { ErrorBoundary } from './ui/error-boundary.js';
import { FetchStates, Loading } from './ui/fetch-states.js';
import { momentsIn } from './ui/moments.js';
import { NOT_FOUND } from './ui/not-found.js';
import { api } from './api-client/api.js';
import { useApiQuery } from './api-client/queries.js';
import type { Query } from './api-client/queries.js';
import { ApiError } from './api-client/call.js';

/** The code of a desk is fetched when it is first opened. */
function desk(load: () => Promise<Record<string, ComponentType>>, name: string) {
  return lazy(async () => {
    const module = await load();
    return { default: module[name]! };
  });
}

const Requests = desk(() => import('./screens/requester/requester-desk.js'), 'RequesterDesk');
const Planning = desk(() => import('./screens/manager/manager-desk.js'), 'ManagerDesk');
const Bench = desk(() => import('./screens/bench/bench-desk.js'), 'BenchDesk');
const Register = desk(() => import('./screens/register/register-desk.js'), 'RegisterDesk');
const Access = desk(() => import('./screens/register/access-screen.js'), 'AccessScreen');
const Reports = desk(() => import('./screens/reports/reports-desk.js'), 'ReportsDesk');
const Notices = desk(() => import('./screens/notices/notices-screen.js'), 'NoticesScreen');
const Verify = desk(() => import('./screens/reports/verify-screen.js'), 'VerifyScreen');

/** Everything: the public verification page, the door, and the desks behind it. */
export function App() {
  return (
    <Switch>
      <Route path="/verify/*?">
        <Suspense fallback={<Loading what="the page" />}>
          <Verify />
        </Suspense>
      </Route>
      <Route>
        <Gate />
      </Route>
    </Switch>
  );
}

function Gate() {
  const session = useApiQuery('session', api('GET /session'));
  if (isNobody(session)) return <SignInScreen />;
  return (
    <FetchStates of={session} what="who you are">
      {(value) => <Desks session={value} cameAtMs={session.cameAtMs} />}
    </FetchStates>
  );
}

function isNobody(session: Query<SessionView>): boolean {
  return session.error instanceof ApiError && session.error.problem.status === 401;
}

/** How far the clock of the lab is ahead of this device's, in whole minutes: less than half of one is the way of the answer. */
const aheadMs = (now: string, cameAtMs: number) =>
  Math.round((Date.parse(now) - cameAtMs) / MS_PER_MINUTE) * MS_PER_MINUTE;

function Desks({ session, cameAtMs }: { session: SessionView; cameAtMs: number }) {
  const [path] = useLocation();
  const { timeZone, now } = session.lab;
  const ahead = aheadMs(now, cameAtMs);
  const moments = useMemo(() => momentsIn(timeZone, ahead), [timeZone, ahead]);
  return (
    <SessionProvider value={session}>
      <SendingProvider key={session.person.id} personId={session.person.id}>
        <MomentsProvider value={moments}>
          <Shell>
            <ErrorBoundary key={deskOf(path)} what="This screen" path={path}>
              <Suspense fallback={<Loading what="the desk" />}>
                <Switch>
                  <Route path="/">
                    <Redirect to={homeOf(session.person.roles)} replace />
                  </Route>
                  <Route path="/requests/*?" component={Requests} />
                  <Route path="/planning/*?" component={Planning} />
                  <Route path="/bench/*?" component={Bench} />
                  <Route path="/access" component={Access} />
                  <Route path="/register/*?" component={Register} />
                  <Route path="/reports/*?" component={Reports} />
                  <Route path="/notices" component={Notices} />
                  {NOT_FOUND}
                </Switch>
              </Suspense>
            </ErrorBoundary>
          </Shell>
        </MomentsProvider>
      </SendingProvider>
    </SessionProvider>
  );
}

function deskOf(path: string): string {
  return path.split('/')[1] ?? '';
}
