import type { LabSettings } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import { withDefaults } from '../people/lab-settings.js';
import { prepared, wordsSql } from '../platform/prepared.js';
import type { Prepared } from '../platform/prepared.js';
import type { TrainLink } from './job.entity.js';
import { ON_A_FRAME } from './job.repository.js';

/** What the bench goes by beside the job and the lab. */
export interface BenchNow {
  settings: LabSettings;
  /** Days on which the lab is closed, `YYYY-MM-DD` in its time zone, in their order. */
  closedDays: string[];
  /** Codes of the methods that the technician may run at that instant; none when there is no technician. */
  methods: ReadonlySet<string>;
  /** Jobs on frames with what they keep others from using. */
  held: HeldByJob[];
}

/** A job that holds a frame and items now. */
export interface HeldByJob {
  id: string;
  reference: string;
  frameId: string | null;
  train: TrainLink[];
  /** Ids of all that hangs on its frame, of the train or not. */
  fitted: string[];
}

/** The same as a row tells it. */
export interface BenchNowRow {
  settings: Partial<LabSettings> | null;
  closedDays: string[];
  methods: string[];
  held: HeldByJob[];
}

/** Columns that tell it, for a technician at an instant, both as SQL. */
export function benchNowSql(technician: string, at: string): string {
  return `(select settings from lab_setting where id = 1) as settings,
    array(select to_char(day, 'YYYY-MM-DD') from closed_day order by day) as "closedDays",
    array(select method_code from authorisation
      where person_id = ${technician} and from_at <= ${at} and (to_at is null or to_at > ${at})) as methods,
    (select coalesce(jsonb_agg(jsonb_build_object('id', id, 'reference', reference, 'frameId', frame_id, 'train', train,
        'fitted', array(select item_id from rig_link where rig_link.frame_id = holding.frame_id))), '[]')
      from job holding where state = any(${wordsSql(ON_A_FRAME)})) as held`;
}

export function benchNowOf({ settings, closedDays, methods, held }: BenchNowRow): BenchNow {
  return { settings: withDefaults(settings), closedDays, methods: new Set(methods), held };
}

const NOW: Prepared = { name: 'bench-now', text: `select ${benchNowSql('$1', '$2::timestamptz')}` };

/** Reads it in one query. */
export async function readBenchNow(manager: EntityManager, technicianId: string | null, at: Date): Promise<BenchNow> {
  const [row] = await prepared<BenchNowRow>(manager, NOW, [technicianId, at]);
  return benchNowOf(row!);
}
