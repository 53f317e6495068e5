import type { MigrationInterface, QueryRunner } from 'typeorm';

/** The number that a request had elsewhere stays with it, and tells whether a line of a file came before. */
export class KeepWhatAnImportCalledARequest1796030552237 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "request" ADD "imported_as" text`);
    await runner.query(
      `CREATE UNIQUE INDEX "ix_request_team_id_imported_as" ON "request"  ("team_id", "imported_as") WHERE "imported_as" is not null`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`DROP INDEX "public"."ix_request_team_id_imported_as"`);
    await runner.query(`ALTER TABLE "request" DROP COLUMN "imported_as"`);
  }
}
