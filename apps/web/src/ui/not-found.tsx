import { Route } from 'wouter';
import { Empty } from './fetch-states.js';
import { TitleBlock } from './title-block.js';

/** What a desk shows where an address leads nowhere: the last of its routes. */
export const NOT_FOUND = (
  <Route>
    <TitleBlock title="No such sheet" />
    <Empty>Nothing is kept at this address. Choose a sheet at the left.</Empty>
  </Route>
);
