import { clockFrom, clockSetting, readSettings } from '#libs/hosting/src/index.js';

/**
 * The time at which stories run: LOADTRAIN_CLOCK says it, e.g. 2027-02-28T03:00:00Z, else it is the machine's. A story asks it and
 * never the machine, so that it may be told at any hour.
 */
export const labClock = clockFrom(readSettings(process.env, { startMs: clockSetting }).startMs);
