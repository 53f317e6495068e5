import { Route, Switch } from 'wouter';
import { NOT_FOUND } from '../../ui/not-found.js';
import { ArrivalsScreen } from './arrivals-screen.js';
import { HelpScreen } from './help-screen.js';
import { IntakeScreen } from './intake-screen.js';
import { LanesScreen } from './lanes-screen.js';
import { LateScreen } from './late-screen.js';
import { PoolsScreen } from './pools-screen.js';
import { ReviewScreen } from './review-screen.js';
import { RosterScreen } from './roster-screen.js';
import { TrialScreen } from './trial-screen.js';
import { TrialsScreen } from './trials-screen.js';

/** The desk of the lab's manager. */
export function ManagerDesk() {
  return (
    <Switch>
      <Route path="/planning/intake" component={IntakeScreen} />
      <Route path="/planning/intake/:id">{({ id }) => <ReviewScreen id={id} />}</Route>
      <Route path="/planning/arrivals" component={ArrivalsScreen} />
      <Route path="/planning/lanes" component={LanesScreen} />
      <Route path="/planning/late" component={LateScreen} />
      <Route path="/planning/trials" component={TrialsScreen} />
      <Route path="/planning/trials/:id">{({ id }) => <TrialScreen id={id} />}</Route>
      <Route path="/planning/help" component={HelpScreen} />
      <Route path="/planning/pools" component={PoolsScreen} />
      <Route path="/planning/roster" component={RosterScreen} />
      {NOT_FOUND}
    </Switch>
  );
}
