// Brings what is made from the API's code up to date: its description in dist/, and in the tree the types by which the page calls it.
import { buildSources } from './build-sources.mjs';
import { describeApi, keepTypes } from './describe-api.mjs';

await buildSources(['apps', 'libs', 'seed']);
await describeApi();
await keepTypes();
