import type { DataSource } from 'typeorm';

/** Whether the database answers. */
export async function ping(records: DataSource): Promise<boolean> {
  await records.query('select 1');
  return true;
}

/** What tells whether the lab's work flows: counts, and ages in seconds. */
export interface OperationFigures {
  tasks_waiting: number;
  tasks_running: number;
  tasks_failed_last_day: number;
  /** Of a kind that no worker knew so far. */
  tasks_set_aside: number;
  oldest_task_waits_s: number;
  oldest_not_handed_over_s: number;
  record_events: number;
  /** Mails of the last day that the mail server did not take so far. */
  mails_not_sent: number;
  /** Deliveries to other programs of the last day that failed so far. */
  deliveries_not_made: number;
}

/** @param now the time by the lab's clock, which notices and deliveries bear; tasks are measured by the database */
export async function figuresOfOperation(
  records: DataSource,
  now: Date,
): Promise<OperationFigures & Record<string, number>> {
  const [row] = await records.query<OperationFigures[]>(
    `
    select
      count(*) filter (where state = 'waiting' and merged_into is null)::int as tasks_waiting,
      count(*) filter (where state = 'running')::int as tasks_running,
      count(*) filter (where state = 'failed' and finished_at > now() - interval '1 day')::int as tasks_failed_last_day,
      count(*) filter (where state = 'set-aside')::int as tasks_set_aside,
      coalesce(extract(epoch from now() - min(due_at) filter (where state = 'waiting' and merged_into is null)), 0)::float8 as oldest_task_waits_s,
      coalesce(extract(epoch from now() - min(due_at) filter (where dispatched_at is null and state <> 'set-aside')), 0)::float8 as oldest_not_handed_over_s,
      (select seq::int from record_head) as record_events,
      (select count(*)::int from notice where at > $1::timestamptz - interval '1 day' and mailed_at is null and mail_trouble is not null) as mails_not_sent,
      (select count(*)::int from webhook_delivery where announced_at > $1::timestamptz - interval '1 day' and state <> 'delivered' and tries > 0)
        as deliveries_not_made
    from task_run where state in ('waiting', 'running', 'set-aside') or finished_at > now() - interval '1 day'`,
    [now],
  );
  const { oldest_task_waits_s: waits, oldest_not_handed_over_s: held, ...counts } = row!;
  return { ...counts, oldest_task_waits_s: Math.max(waits, 0), oldest_not_handed_over_s: Math.max(held, 0) };
}
