import 'reflect-metadata';
import { snapshot, verifyRecord } from '#libs/records/src/index.js';
import { withRecords } from './with-records.js';

/** Recomputes the chain of the whole record and says what does not fit. Ends with 1 when anything does not. */
await withRecords(async ({ records }) => {
  const { events, faults } = await snapshot({ source: records }, verifyRecord); // a lab at work adds to it meanwhile
  faults.forEach((fault) => console.error(fault));
  console.log(
    faults.length === 0 ? `The record is whole: ${events} events.` : `${faults.length} faults in ${events} events.`,
  );
  process.exitCode = faults.length === 0 ? 0 : 1;
});
