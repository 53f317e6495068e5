import { Suspense, lazy } from 'react';
import type { ComponentType } from 'react';
import { Redirect, Route, Switch } from 'wouter';
import type { SessionView } from '#libs/contract/src/index.js';
import { SessionProvider } from './features/session/session.js';
import { homeOf } from './screens/entry/desks.js';
import { Shell } from './screens/entry/shell.js';
import { SignInScreen } from './screens/entry/sign-in-screen.js';
import { Fetched, Waiting } from './ui/faces.js';
import { setZone } from './ui/moments.js';
import { NO_SUCH_SHEET } from './ui/no-such-sheet.js';
import { api } from './wire/api.js';
import { useAsk } from './wire/asking.js';
import type { Asked } from './wire/asking.js';
import { Refused } from './wire/call.js';

/** A desk comes over the wire when it is first opened. */
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
        <Suspense fallback={<Waiting what="the page" />}>
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
  const session = useAsk('session', api('GET /session'));
  if (isNobody(session)) return <SignInScreen />;
  return (
    <Fetched of={session} what="who you are">
      {(value) => <Desks session={value} />}
    </Fetched>
  );
}

function isNobody(session: Asked<SessionView>): boolean {
  return session.error instanceof Refused && session.error.problem.status === 401;
}

function Desks({ session }: { session: SessionView }) {
  setZone(session.lab.timeZone);
  return (
    <SessionProvider value={session}>
      <Shell>
        <Suspense fallback={<Waiting what="the desk" />}>
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
            {NO_SUCH_SHEET}
          </Switch>
        </Suspense>
      </Shell>
    </SessionProvider>
  );
}
