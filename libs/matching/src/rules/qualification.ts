import { clipWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { TimeWindow } from '../item.js';
import { told } from './rule.js';
import type { Technician } from '../lab.js';
import type { Rule } from './rule.js';

/** At least one technician is authorised for the method and on shift at some time; the windows say when. */
export const qualification: Rule = {
  code: 'qualification',
  source: 'ISO/IEC 17025:2017 6.2.5, 6.2.6; roster',
  checks: [
    {
      sees: [],
      judge(_parts, context) {
        const authorised = context.technicians.filter(({ methodIds }) => methodIds.includes(context.needs.methodId));
        if (authorised.length === 0) return told('fail', 'nobody-authorised', [], context.needs.methodId, 0);
        if (context.staffed.length === 0)
          return told('fail', 'nobody-on-shift', [], context.needs.methodId, authorised.length);
        return told('pass', 'authorised', [], context.needs.methodId, authorised.length);
      },
    },
  ],
};

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
