import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * The record is chained by the database itself, at the end of each transaction, so that the lock on the chain's end is held
 * for a moment only and never while a transaction waits for something else. After that a link can be neither changed nor removed.
 * `verifyRecord` recomputes the same hash elsewhere.
 */
export class ChainTheRecord1764000002000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(`insert into record_head (id, seq, hash) values (1, 0, '')`);

    await runner.query(`
      create function record_event_body(event record_event) returns text language sql stable as $$
        select jsonb_build_array(event.seq, event.id, (extract(epoch from event.at) * 1000000)::bigint, event.actor_id,
          event.kind, event.subject_kind, event.subject_id, event.before, event.after, event.why)::text
      $$`);

    await runner.query(`
      create function record_event_seal() returns trigger language plpgsql as $$
      declare
        head record_head;
        event record_event;
      begin
        select * into strict head from record_head where id = 1 for update;
        select * into strict event from record_event where id = new.id;
        event.seq := head.seq + 1;
        event.prev_hash := head.hash;
        event.hash := encode(sha256(convert_to(head.hash || E'\\n' || record_event_body(event), 'UTF8')), 'hex');
        update record_event set seq = event.seq, prev_hash = event.prev_hash, hash = event.hash where id = event.id;
        update record_head set seq = event.seq, hash = event.hash where id = 1;
        return null;
      end $$`);
    await runner.query(`
      create constraint trigger record_event_seal after insert on record_event
        deferrable initially deferred for each row execute function record_event_seal()`);

    await runner.query(`
      create function record_event_refuse() returns trigger language plpgsql as $$
      begin
        if tg_op = 'UPDATE' and old.hash is null and new.hash is not null
           and (to_jsonb(old) - 'seq' - 'prev_hash' - 'hash') = (to_jsonb(new) - 'seq' - 'prev_hash' - 'hash') then
          return new;
        end if;
        raise exception 'The record is only added to.' using errcode = 'integrity_constraint_violation';
      end $$`);
    await runner.query(`
      create trigger record_event_refuse before update or delete on record_event
        for each row execute function record_event_refuse()`);
    await runner.query(`
      create trigger record_event_refuse_truncate before truncate on record_event
        for each statement execute function record_event_refuse()`);
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query('drop trigger record_event_refuse_truncate on record_event');
    await runner.query('drop trigger record_event_refuse on record_event');
    await runner.query('drop trigger record_event_seal on record_event');
    await runner.query('drop function record_event_refuse');
    await runner.query('drop function record_event_seal');
    await runner.query('drop function record_event_body');
    await runner.query('delete from record_head');
  }
}
