import { quietly } from '../record/act.js';
import type { Stage } from '../record/act.js';
import { giveNotices } from './give-notices.js';
import { managersOf } from './tell-people.js';

/** The newest calibration of each item in service that needs one, when it is overdue. */
const OVERDUE = `
  select newest.id as "calibrationId", item.id as "itemId", item.tag, item.name
  from item cross join lateral (
    select id, due_at from calibration where calibration.item_id = item.id order by performed_at desc, entered_at desc limit 1) newest
  where item.needs_calibration and item.state = 'in-service' and newest.due_at <= $1
  order by item.tag`;

interface Overdue {
  calibrationId: string;
  itemId: string;
  tag: string;
  name: string;
}

/** Tells managers of calibrations that have lapsed, each once. @returns how many are overdue */
export function remind(stage: Stage): Promise<{ overdue: number }> {
  const now = stage.clock.now();
  return quietly(stage, async (manager) => {
    const overdue = await manager.query<Overdue[]>(OVERDUE, [now]);
    const to = overdue.length > 0 ? await managersOf(manager) : [];
    for (const { calibrationId, itemId, tag, name } of overdue) {
      await giveNotices(manager, now, {
        ...{ to, key: `calibration-overdue ${calibrationId}`, kind: 'item/calibration-overdue' },
        ...{ path: `/register/items/${itemId}`, subject: `The calibration of ${tag} is overdue` },
        sentence: `${name}: it is not used where a calibration is needed until it is calibrated again.`,
      });
    }
    return { overdue: overdue.length };
  });
}
