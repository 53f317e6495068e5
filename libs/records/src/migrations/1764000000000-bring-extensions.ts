import type { MigrationInterface, QueryRunner } from 'typeorm';

/** `btree_gist` lets a constraint say that nobody and nothing is booked twice at a time. */
export class BringExtensions1764000000000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query('create extension if not exists btree_gist');
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop extension btree_gist');
  }
}
