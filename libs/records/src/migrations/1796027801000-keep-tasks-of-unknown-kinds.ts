import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A task of a kind that no worker knows gets a state of its own: it is kept, and keeps nothing else waiting. */
export class KeepTasksOfUnknownKinds1796027801000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "task_run" DROP CONSTRAINT "task_run_state_known"`);
    await runner.query(
      `ALTER TABLE "task_run" ADD CONSTRAINT "task_run_state_known" CHECK ("state" in ('waiting', 'running', 'set-aside', 'done', 'failed', 'cancelled'))`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`update "task_run" set "state" = 'waiting' where "state" = 'set-aside'`);
    await runner.query(`ALTER TABLE "task_run" DROP CONSTRAINT "task_run_state_known"`);
    await runner.query(
      `ALTER TABLE "task_run" ADD CONSTRAINT "task_run_state_known" CHECK ("state" in ('waiting', 'running', 'done', 'failed', 'cancelled'))`,
    );
  }
}
