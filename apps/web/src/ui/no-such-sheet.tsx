import { Route } from 'wouter';
import { Empty } from './faces.js';
import { TitleBlock } from './title-block.js';

/** What a desk shows where an address leads nowhere: the last of its routes. */
export const NO_SUCH_SHEET = (
  <Route>
    <TitleBlock title="No such sheet" />
    <Empty>Nothing is kept at this address. Choose a sheet at the left.</Empty>
  </Route>
);
