import { clipWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '../register/item.js';
import type { Technician } from '../register/lab.js';
import { FAIL, PASS } from './outcome.js';
import { rule } from './rule.js';

/** At least one technician is authorised for the method and on shift at some time; the windows say when. */
export const qualification = rule({
  code: 'qualification',
  source: 'ISO/IEC 17025:2017 6.2.5, 6.2.6; roster',
  checks: [
    {
      sees: [],
      judge(_parts, { technicians, needs: { methodId }, staffed }, report) {
        const authorised = technicians.filter(({ methodIds }) => methodIds.includes(methodId)).length;
        if (authorised === 0) return report.say(FAIL, 'nobody-authorised', [], methodId, 0);
        return staffed.length === 0
          ? report.say(FAIL, 'nobody-on-shift', [], methodId, authorised)
          : report.say(PASS, 'authorised', [], methodId, authorised);
      },
    },
  ],
  sentences: {
    authorised: ({ has }) => `${has} may run this method.`,
    'nobody-authorised': () => 'Nobody is authorised for this method. Authorise a technician.',
    'nobody-on-shift': ({ has }) =>
      `${has} may run this method, but none is on shift in this period. Change the roster or the period.`,
  },
});

/** When somebody who may run the method is on shift. */
export function staffedWindows(technicians: readonly Technician[], methodId: string, period: TimeWindow): TimeWindow[] {
  return clipWindows(shiftsOf(technicians, methodId), period.startMs, period.endMs);
}

const known = new WeakMap<readonly Technician[], Map<string, TimeWindow[]>>();

/** Every shift of those who may run a method, joined once for each list of technicians. */
function shiftsOf(technicians: readonly Technician[], methodId: string): readonly TimeWindow[] {
  const byMethod = known.get(technicians) ?? new Map<string, TimeWindow[]>();
  known.set(technicians, byMethod);
  const found = byMethod.get(methodId);
  if (found) return found;
  const shifts = technicians.filter(({ methodIds }) => methodIds.includes(methodId)).map(({ windows }) => windows);
  const joined = unionWindows(...shifts);
  byMethod.set(methodId, joined);
  return joined;
}
