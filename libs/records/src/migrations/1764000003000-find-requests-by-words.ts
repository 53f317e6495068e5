import type { MigrationInterface, QueryRunner } from 'typeorm';

/** Parts of words are found by their trigrams: a word that few requests have would else be looked for in all of them. */
export class FindRequestsByWords1764000003000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('create extension if not exists pg_trgm');
    await runner.query('create index ix_request_reference_words on request using gin (reference gin_trgm_ops)');
    await runner.query('create index ix_request_title_words on request using gin (title gin_trgm_ops)');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop index ix_request_title_words');
    await runner.query('drop index ix_request_reference_words');
    await runner.query('drop extension pg_trgm');
  }
}
