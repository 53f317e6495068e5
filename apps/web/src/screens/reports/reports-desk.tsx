import { Route, Switch } from 'wouter';
import { NO_SUCH_SHEET } from '../../ui/no-such-sheet.js';
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
      {NO_SUCH_SHEET}
    </Switch>
  );
}
