import type { MigrationInterface, QueryRunner } from 'typeorm';

/** A result that was asked for and could not be had is said with its reason, per specimen. */
export class SayWhyAResultIsMissing1796028000000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "specimen" ADD "missing_why" jsonb NOT NULL DEFAULT '{}'`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "specimen" DROP COLUMN "missing_why"`);
  }
}
