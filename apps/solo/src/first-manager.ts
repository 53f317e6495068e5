import 'reflect-metadata';
import { SystemClock } from '#libs/calendar/src/index.js';
import { LabError } from '#libs/errors/src/index.js';
import { DEMO_PASSWORD, hasPeople, LabRecords, migrate } from '#libs/records/src/index.js';
import { fillOnFirstStart } from './first-start.js';
import { withRecords } from './with-records.js';

const isDemo = process.argv.includes('--demo');

/**
 * Makes the first person of a lab on any database that holds nobody yet: a manager with a password that is told this once, and the
 * library of methods and materials; or with --demo all of the demo lab.
 */
await withRecords(async ({ records }) => {
  await migrate(records);
  if (await hasPeople(records.manager))
    throw new LabError(
      'lab/has-people',
      'This lab has people already. A manager of it adds others on the page “People”.',
    );
  const first = await fillOnFirstStart(new LabRecords(records, new SystemClock()), !isDemo);
  console.log(
    first
      ? `Sign in as ${first.email} with the password ${first.password}\nIt is shown this once; change it after signing in.`
      : `The demo lab is loaded. Everybody in it signs in with the password ${DEMO_PASSWORD}`,
  );
});
