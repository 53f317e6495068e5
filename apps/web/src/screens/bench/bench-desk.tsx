import { Route, Switch } from 'wouter';
import { NOT_FOUND } from '../../ui/not-found.js';
import { BenchScreen } from './bench-screen.js';
import { JobScreen } from './job-screen.js';

/** The desk at the frames. */
export function BenchDesk() {
  return (
    <Switch>
      <Route path="/bench" component={BenchScreen} />
      <Route path="/bench/:id">{({ id }) => <JobScreen id={id} />}</Route>
      {NOT_FOUND}
    </Switch>
  );
}
