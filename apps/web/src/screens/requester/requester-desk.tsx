import { Route, Switch } from 'wouter';
import { NOT_FOUND } from '../../ui/not-found.js';
import { NewRequestScreen } from './new-request-screen.js';
import { RequestScreen } from './request-screen.js';
import { RequestsScreen } from './requests-screen.js';

/** The desk of those who ask for tests. */
export function RequesterDesk() {
  return (
    <Switch>
      <Route path="/requests" component={RequestsScreen} />
      <Route path="/requests/new">{() => <NewRequestScreen />}</Route>
      <Route path="/requests/:id/edit">{({ id }) => <NewRequestScreen id={id} />}</Route>
      <Route path="/requests/:id">{({ id }) => <RequestScreen id={id} />}</Route>
      {NOT_FOUND}
    </Switch>
  );
}
