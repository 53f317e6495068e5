import type { EntityManager } from 'typeorm';
import { ClosedDayEntity } from './closed-day.entity.js';

/** The days on which the lab is closed, `YYYY-MM-DD` in its time zone. */
export async function closedDays(manager: EntityManager): Promise<string[]> {
  return (await manager.find(ClosedDayEntity, { order: { day: 'ASC' } })).map(({ day }) => day);
}
