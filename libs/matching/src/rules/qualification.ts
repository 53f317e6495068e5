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
  const shifts = technicians.filter(({ methodIds }) => methodIds.includes(methodId)).map(({ windows }) => windows);
  return clipWindows(unionWindows(...shifts), period.startMs, period.endMs);
}
