import { Route, Switch } from 'wouter';
import { NOT_FOUND } from '../../ui/not-found.js';
import { HistoryScreen } from './history-screen.js';
import { LabelsScreen } from './labels-screen.js';
import { ReportScreen } from './report-screen.js';
import { ReportsScreen } from './reports-screen.js';

/** Reports: find, look, issue, amend; and the history of results. */
export function ReportsDesk() {
  return (
    <Switch>
      <Route path="/reports" component={ReportsScreen} />
      <Route path="/reports/history" component={HistoryScreen} />
      <Route path="/reports/labels/:id" component={LabelsScreen} />
      <Route path="/reports/:id">{({ id }) => <ReportScreen id={id} />}</Route>
      {NOT_FOUND}
    </Switch>
  );
}
