import { Route, Switch } from 'wouter';
import { NO_SUCH_SHEET } from '../../ui/no-such-sheet.js';
import { BenchScreen } from './bench-screen.js';
import { JobScreen } from './job-screen.js';

/** The desk at the frames. */
export function BenchDesk() {
  return (
    <Switch>
      <Route path="/bench" component={BenchScreen} />
      <Route path="/bench/:id">{({ id }) => <JobScreen id={id} />}</Route>
      {NO_SUCH_SHEET}
    </Switch>
  );
}
