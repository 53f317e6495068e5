import type { LabSettings } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import { withDefaults } from '../people/lab-settings.js';

/** What the bench goes by beside the job and the lab. */
export interface BenchRules {
  settings: LabSettings;
  /** Days on which the lab is closed, `YYYY-MM-DD` in its time zone, in their order. */
  closedDays: string[];
  /** Codes of the methods that the technician may run at that instant; none when there is no technician. */
  methods: ReadonlySet<string>;
}

/** Reads it in one query. */
export async function benchRules(manager: EntityManager, technicianId: string | null, at: Date): Promise<BenchRules> {
  const [row] = await manager.query<{ settings: Partial<LabSettings> | null; days: string[]; methods: string[] }[]>(
    `select (select settings from lab_setting where id = 1) as settings,
       array(select to_char(day, 'YYYY-MM-DD') from closed_day order by day) as days,
       array(select method_code from authorisation
         where person_id = $1 and from_at <= $2 and (to_at is null or to_at > $2)) as methods`,
    [technicianId, at],
  );
  const { settings, days, methods } = row!;
  return { settings: withDefaults(settings), closedDays: days, methods: new Set(methods) };
}
