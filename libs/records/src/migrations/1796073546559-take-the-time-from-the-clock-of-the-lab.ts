import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Rows that people see bear the time of the lab's clock; a statement that forgets it fails instead of taking the database's. */
export class TakeTheTimeFromTheClockOfTheLab1796073546559 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    for (const [table, column] of COLUMNS)
      await runner.query(`ALTER TABLE "${table}" ALTER COLUMN "${column}" DROP DEFAULT`);
  }

  async down(runner: QueryRunner): Promise<void> {
    for (const [table, column] of COLUMNS)
      await runner.query(`ALTER TABLE "${table}" ALTER COLUMN "${column}" SET DEFAULT now()`);
  }
}

const COLUMNS = [
  ['person', 'created_at'],
  ['stored_file', 'stored_at'],
  ['item', 'registered_at'],
  ['calibration', 'entered_at'],
  ['nonconformity', 'opened_at'],
  ['request', 'created_at'],
  ['method', 'entered_at'],
  ['shift_check', 'at'],
  ['feed_key', 'made_at'],
  ['notice', 'at'],
  ['lab_setting', 'changed_at'],
  ['trial_plan', 'created_at'],
  ['fault', 'opened_at'],
  ['rig_link', 'fitted_at'],
  ['report', 'prepared_at'],
  ['request_message', 'at'],
  ['curve', 'uploaded_at'],
  ['curve_source', 'confirmed_at'],
  ['duration', 'at'],
  ['result', 'entered_at'],
  ['webhook', 'added_at'],
  ['webhook_delivery', 'announced_at'],
] as const;
