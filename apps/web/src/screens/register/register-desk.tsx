import { Route, Switch } from 'wouter';
import { NOT_FOUND } from '../../ui/not-found.js';
import { CalibrateScreen } from './calibrate-screen.js';
import { DueScreen } from './due-screen.js';
import { ExchangeScreen } from './exchange-screen.js';
import { ImpactScreen } from './impact-screen.js';
import { ItemFormScreen } from './item-form-screen.js';
import { ItemScreen } from './item-screen.js';
import { ItemsScreen } from './items-screen.js';
import { MaterialsScreen } from './materials-screen.js';
import { MethodScreen, MethodsScreen } from './methods-screen.js';
import { NonconformitiesScreen } from './nonconformities-screen.js';
import { PeopleScreen } from './people-screen.js';
import { RecordScreen } from './record-screen.js';
import { RigsScreen } from './rigs-screen.js';
import { SettingsScreen } from './settings-screen.js';
import { StatusScreen } from './status-screen.js';

/** Everything that the lab keeps books on. */
export function RegisterDesk() {
  return (
    <Switch>
      <Route path="/register/items" component={ItemsScreen} />
      <Route path="/register/items/new">{() => <ItemFormScreen />}</Route>
      <Route path="/register/items/:id">{({ id }) => <ItemScreen id={id} />}</Route>
      <Route path="/register/items/:id/edit">{({ id }) => <ItemFormScreen id={id} />}</Route>
      <Route path="/register/items/:id/calibrate">{({ id }) => <CalibrateScreen id={id} />}</Route>
      <Route path="/register/items/:id/impact">{({ id }) => <ImpactScreen id={id} />}</Route>
      <Route path="/register/due" component={DueScreen} />
      <Route path="/register/nonconformities" component={NonconformitiesScreen} />
      <Route path="/register/rigs" component={RigsScreen} />
      <Route path="/register/methods" component={MethodsScreen} />
      <Route path="/register/methods/:id">{({ id }) => <MethodScreen id={id} />}</Route>
      <Route path="/register/materials" component={MaterialsScreen} />
      <Route path="/register/exchange" component={ExchangeScreen} />
      <Route path="/register/people" component={PeopleScreen} />
      <Route path="/register/settings" component={SettingsScreen} />
      <Route path="/register/record" component={RecordScreen} />
      <Route path="/register/status" component={StatusScreen} />
      {NOT_FOUND}
    </Switch>
  );
}
