import type { MigrationInterface, QueryRunner } from 'typeorm';

export class LayOutTheTables1764000001000 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `CREATE TABLE "calibration" ("id" uuid NOT NULL, "item_id" uuid NOT NULL, "standard" text NOT NULL, "certificate_number" text NOT NULL DEFAULT '', "laboratory" text NOT NULL DEFAULT '', "performed_at" TIMESTAMP WITH TIME ZONE NOT NULL, "valid_from" TIMESTAMP WITH TIME ZONE NOT NULL, "due_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ranges" jsonb NOT NULL, "as_found" text NOT NULL DEFAULT 'within', "readings" jsonb, "certificate_file_id" uuid, "replaces" uuid, "entered_by" uuid NOT NULL, "entered_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "calibration_due_after_valid" CHECK ("due_at" > "valid_from"), CONSTRAINT "pk_calibration" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_calibration_item_id" ON "calibration"  ("item_id") `);
    await runner.query(
      `CREATE TABLE "nonconformity" ("id" uuid NOT NULL, "reference" text NOT NULL, "item_id" uuid, "what" text NOT NULL, "since" TIMESTAMP WITH TIME ZONE NOT NULL, "touched" jsonb NOT NULL, "state" text NOT NULL DEFAULT 'open', "decision" text, "opened_by" uuid NOT NULL, "opened_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "closed_at" TIMESTAMP WITH TIME ZONE, "version" integer NOT NULL, CONSTRAINT "uq_nonconformity_reference" UNIQUE ("reference"), CONSTRAINT "pk_nonconformity" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_nonconformity_item_id" ON "nonconformity"  ("item_id") `);
    await runner.query(
      `CREATE TABLE "shift_check" ("id" uuid NOT NULL, "cell_id" uuid NOT NULL, "frame_id" uuid NOT NULL, "job_id" uuid, "reference" double precision NOT NULL, "reading" double precision NOT NULL, "unit" text NOT NULL, "tolerance_pct" double precision NOT NULL, "error_pct" double precision NOT NULL, "passed" boolean NOT NULL, "technician_id" uuid NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_shift_check" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE INDEX "ix_shift_check_cell_id_frame_id_at" ON "shift_check"  ("cell_id", "frame_id", "at") `,
    );
    await runner.query(
      `CREATE TABLE "stored_file" ("id" uuid NOT NULL, "name" text NOT NULL, "media_type" text NOT NULL, "size_bytes" integer NOT NULL, "sha256" text NOT NULL, "content" bytea NOT NULL, "stored_by" uuid NOT NULL, "stored_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_stored_file" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_stored_file_sha256" ON "stored_file"  ("sha256") `);
    await runner.query(
      `CREATE TABLE "person" ("id" uuid NOT NULL, "name" text NOT NULL, "email" text NOT NULL, "password_hash" text, "sign_on_subject" text, "roles" text array NOT NULL, "active" boolean NOT NULL DEFAULT true, "notices" jsonb NOT NULL DEFAULT '{}', "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "version" integer NOT NULL, CONSTRAINT "uq_person_email" UNIQUE ("email"), CONSTRAINT "uq_person_sign_on_subject" UNIQUE ("sign_on_subject"), CONSTRAINT "person_roles_known" CHECK ("roles" <@ array['requester', 'technician', 'manager', 'auditor']), CONSTRAINT "person_email_lower_case" CHECK ("email" = lower("email")), CONSTRAINT "pk_person" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "feed_key" ("id" uuid NOT NULL, "person_id" uuid NOT NULL, "name" text NOT NULL, "key_hash" text NOT NULL, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "used_at" TIMESTAMP WITH TIME ZONE, "revoked_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "uq_feed_key_key_hash" UNIQUE ("key_hash"), CONSTRAINT "pk_feed_key" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_feed_key_person_id" ON "feed_key"  ("person_id") `);
    await runner.query(
      `CREATE TABLE "job" ("id" uuid NOT NULL, "reference" text NOT NULL, "batch_id" uuid NOT NULL, "request_id" uuid NOT NULL, "state" text NOT NULL, "why" text, "released_at" TIMESTAMP WITH TIME ZONE, "frame_id" uuid, "technician_id" uuid, "train" jsonb NOT NULL DEFAULT '[]', "checks" jsonb NOT NULL DEFAULT '{}', "hold_why" text, "pin_frame_id" uuid, "pin_start_at" TIMESTAMP WITH TIME ZONE, "taken_at" TIMESTAMP WITH TIME ZONE, "started_at" TIMESTAMP WITH TIME ZONE, "finished_at" TIMESTAMP WITH TIME ZONE, "conditions" jsonb NOT NULL DEFAULT '{}', "version" integer NOT NULL, CONSTRAINT "uq_job_reference" UNIQUE ("reference"), CONSTRAINT "pk_job" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_job_batch_id" ON "job"  ("batch_id") `);
    await runner.query(`CREATE INDEX "ix_job_request_id" ON "job"  ("request_id") `);
    await runner.query(`CREATE INDEX "ix_job_frame_id" ON "job"  ("frame_id") `);
    await runner.query(`CREATE INDEX "ix_job_technician_id" ON "job"  ("technician_id") `);
    await runner.query(`CREATE INDEX "ix_job_state_finished_at" ON "job"  ("state", "finished_at") `);
    await runner.query(
      `CREATE TABLE "material" ("id" uuid NOT NULL, "code" text NOT NULL, "name" text NOT NULL, "group" text NOT NULL, "data" jsonb NOT NULL, "version" integer NOT NULL, CONSTRAINT "uq_material_code" UNIQUE ("code"), CONSTRAINT "pk_material" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "method" ("id" uuid NOT NULL, "code" text NOT NULL, "version" integer NOT NULL, "designation" text NOT NULL, "title" text NOT NULL, "test_type" text NOT NULL, "data" jsonb NOT NULL, "state" text NOT NULL DEFAULT 'offered', "entered_by" uuid, "entered_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "uq_method_code_version" UNIQUE ("code", "version"), CONSTRAINT "pk_method" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_method_code" ON "method"  ("code") `);
    await runner.query(
      `CREATE TABLE "notice" ("id" uuid NOT NULL, "person_id" uuid NOT NULL, "key" text NOT NULL, "kind" text NOT NULL, "path" text NOT NULL, "subject" text NOT NULL, "sentence" text NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "read_at" TIMESTAMP WITH TIME ZONE, "mailed_at" TIMESTAMP WITH TIME ZONE, "mail_tries" integer NOT NULL DEFAULT '0', "mail_trouble" text, CONSTRAINT "uq_notice_person_id_key" UNIQUE ("person_id", "key"), CONSTRAINT "pk_notice" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_notice_at" ON "notice"  ("at") `);
    await runner.query(`CREATE INDEX "ix_notice_unread" ON "notice"  ("person_id") WHERE "read_at" is null`);
    await runner.query(`CREATE INDEX "ix_notice_person_id_at_id" ON "notice"  ("person_id", "at", "id") `);
    await runner.query(
      `CREATE TABLE "api_token" ("id" uuid NOT NULL, "person_id" uuid NOT NULL, "name" text NOT NULL, "token_hash" text NOT NULL, "permissions" text array NOT NULL, "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "expires_at" TIMESTAMP WITH TIME ZONE NOT NULL, "used_at" TIMESTAMP WITH TIME ZONE, "revoked_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "uq_api_token_token_hash" UNIQUE ("token_hash"), CONSTRAINT "pk_api_token" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_api_token_person_id" ON "api_token"  ("person_id") `);
    await runner.query(
      `CREATE TABLE "authorisation" ("id" uuid NOT NULL, "person_id" uuid NOT NULL, "method_code" text NOT NULL, "from_at" TIMESTAMP WITH TIME ZONE NOT NULL, "to_at" TIMESTAMP WITH TIME ZONE, "granted_by" uuid NOT NULL, CONSTRAINT "authorisation_has_length" CHECK ("to_at" is null or "to_at" > "from_at"), CONSTRAINT "pk_authorisation" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_authorisation_person_id" ON "authorisation"  ("person_id") `);
    await runner.query(`CREATE INDEX "ix_authorisation_method_code" ON "authorisation"  ("method_code") `);
    await runner.query(
      `CREATE TABLE "closed_day" ("day" date NOT NULL, "name" text NOT NULL, CONSTRAINT "pk_closed_day" PRIMARY KEY ("day"))`,
    );
    await runner.query(
      `CREATE TABLE "lab_setting" ("id" integer NOT NULL, "settings" jsonb NOT NULL, "changed_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "version" integer NOT NULL, CONSTRAINT "lab_setting_is_one" CHECK ("id" = 1), CONSTRAINT "pk_lab_setting" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "roster_shift" ("id" uuid NOT NULL, "person_id" uuid NOT NULL, "starts_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ends_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "roster_shift_has_length" CHECK ("ends_at" > "starts_at"), CONSTRAINT "roster_shift_once_at_a_time" EXCLUDE using gist ("person_id" with =, tstzrange("starts_at", "ends_at") with &&), CONSTRAINT "pk_roster_shift" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_roster_shift_starts_at" ON "roster_shift"  ("starts_at") `);
    await runner.query(
      `CREATE TABLE "session" ("id" uuid NOT NULL, "token_hash" text NOT NULL, "person_id" uuid NOT NULL, "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "seen_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "expires_at" TIMESTAMP WITH TIME ZONE NOT NULL, "revoked_at" TIMESTAMP WITH TIME ZONE, "agent" text NOT NULL DEFAULT '', CONSTRAINT "uq_session_token_hash" UNIQUE ("token_hash"), CONSTRAINT "pk_session" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_session_person_id" ON "session"  ("person_id") `);
    await runner.query(
      `CREATE TABLE "sign_in_attempt" ("id" bigint GENERATED BY DEFAULT AS IDENTITY NOT NULL, "subject" text NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_sign_in_attempt" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_sign_in_attempt_subject_at" ON "sign_in_attempt"  ("subject", "at") `);
    await runner.query(
      `CREATE TABLE "team" ("id" uuid NOT NULL, "name" text NOT NULL, CONSTRAINT "uq_team_name" UNIQUE ("name"), CONSTRAINT "pk_team" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "team_member" ("team_id" uuid NOT NULL, "person_id" uuid NOT NULL, CONSTRAINT "pk_team_member" PRIMARY KEY ("team_id", "person_id"))`,
    );
    await runner.query(`CREATE INDEX "ix_team_member_person_id" ON "team_member"  ("person_id") `);
    await runner.query(
      `CREATE TABLE "plan" ("id" uuid NOT NULL, "version" integer NOT NULL, "facts_stamp" text NOT NULL, "made_at" TIMESTAMP WITH TIME ZONE NOT NULL, "published_at" TIMESTAMP WITH TIME ZONE NOT NULL, "made_by" text NOT NULL, "cause" text NOT NULL DEFAULT '', "figures" jsonb NOT NULL, CONSTRAINT "uq_plan_version" UNIQUE ("version"), CONSTRAINT "pk_plan" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "booking" ("id" uuid NOT NULL, "plan_id" uuid NOT NULL, "live" boolean NOT NULL, "job_id" uuid, "frame_id" uuid, "kind" text NOT NULL, "setup_at" TIMESTAMP WITH TIME ZONE NOT NULL, "starts_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ends_at" TIMESTAMP WITH TIME ZONE NOT NULL, "changeover_min" integer NOT NULL DEFAULT '0', "technician_id" uuid, "train" jsonb NOT NULL DEFAULT '[]', "why" jsonb NOT NULL DEFAULT '{}', CONSTRAINT "booking_in_order" CHECK ("setup_at" <= "starts_at" and "starts_at" < "ends_at"), CONSTRAINT "booking_frame_once_at_a_time" EXCLUDE using gist ("frame_id" with =, tstzrange("setup_at", "ends_at") with &&) where (live and frame_id is not null), CONSTRAINT "pk_booking" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_booking_job_id" ON "booking"  ("job_id") `);
    await runner.query(`CREATE INDEX "ix_booking_frame_id" ON "booking"  ("frame_id") `);
    await runner.query(`CREATE INDEX "ix_booking_plan_id" ON "booking"  ("plan_id") `);
    await runner.query(
      `CREATE TABLE "booking_item" ("booking_id" uuid NOT NULL, "item_id" uuid NOT NULL, "live" boolean NOT NULL, "starts_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ends_at" TIMESTAMP WITH TIME ZONE NOT NULL, CONSTRAINT "booking_item_once_at_a_time" EXCLUDE using gist ("item_id" with =, tstzrange("starts_at", "ends_at") with &&) where (live), CONSTRAINT "pk_booking_item" PRIMARY KEY ("booking_id", "item_id"))`,
    );
    await runner.query(`CREATE INDEX "ix_booking_item_item_id" ON "booking_item"  ("item_id") `);
    await runner.query(
      `CREATE TABLE "trial_plan" ("id" uuid NOT NULL, "name" text NOT NULL, "owner_id" uuid NOT NULL, "based_on_plan_id" uuid NOT NULL, "facts_stamp" text NOT NULL DEFAULT '', "edits" jsonb NOT NULL, "outcome" jsonb, "state" text NOT NULL DEFAULT 'open', "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "version" integer NOT NULL DEFAULT '1', CONSTRAINT "pk_trial_plan" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "fact_change" ("id" bigint GENERATED BY DEFAULT AS IDENTITY NOT NULL, "transaction" bigint NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "what" text NOT NULL, CONSTRAINT "pk_fact_change" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_fact_change_transaction" ON "fact_change"  ("transaction") `);
    await runner.query(`CREATE INDEX "ix_fact_change_at" ON "fact_change"  ("at") `);
    await runner.query(
      `CREATE TABLE "idempotency_key" ("person_id" uuid NOT NULL, "key" text NOT NULL, "request_hash" text NOT NULL, "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "claim_id" uuid NOT NULL, "claimed_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "done" boolean NOT NULL DEFAULT false, "status" integer, "body" jsonb, CONSTRAINT "pk_idempotency_key" PRIMARY KEY ("person_id", "key"))`,
    );
    await runner.query(`CREATE INDEX "ix_idempotency_key_created_at" ON "idempotency_key"  ("created_at") `);
    await runner.query(
      `CREATE TABLE "numbering" ("name" text NOT NULL, "next" integer NOT NULL, CONSTRAINT "pk_numbering" PRIMARY KEY ("name"))`,
    );
    await runner.query(
      `CREATE TABLE "record_event" ("id" uuid NOT NULL, "seq" bigint, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT clock_timestamp(), "actor_id" uuid, "kind" text NOT NULL, "subject_kind" text NOT NULL, "subject_id" text NOT NULL, "before" jsonb, "after" jsonb, "why" text, "prev_hash" text, "hash" text, CONSTRAINT "uq_record_event_seq" UNIQUE ("seq"), CONSTRAINT "pk_record_event" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_record_event_at" ON "record_event"  ("at") `);
    await runner.query(`CREATE INDEX "ix_record_event_actor_id" ON "record_event"  ("actor_id") `);
    await runner.query(`CREATE INDEX "ix_record_event_kind" ON "record_event"  ("kind") `);
    await runner.query(
      `CREATE INDEX "ix_record_event_subject_kind_subject_id" ON "record_event"  ("subject_kind", "subject_id") `,
    );
    await runner.query(
      `CREATE TABLE "record_head" ("id" integer NOT NULL, "seq" bigint NOT NULL, "hash" text NOT NULL, CONSTRAINT "record_head_is_one" CHECK ("id" = 1), CONSTRAINT "pk_record_head" PRIMARY KEY ("id"))`,
    );
    await runner.query(
      `CREATE TABLE "fault" ("id" uuid NOT NULL, "item_id" uuid NOT NULL, "what" text NOT NULL, "opened_by" uuid NOT NULL, "opened_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "closed_by" uuid, "closed_at" TIMESTAMP WITH TIME ZONE, "remedy" text, CONSTRAINT "pk_fault" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_fault_item_id" ON "fault"  ("item_id") `);
    await runner.query(
      `CREATE TABLE "item_window" ("id" uuid NOT NULL, "item_id" uuid NOT NULL, "kind" text NOT NULL, "starts_at" TIMESTAMP WITH TIME ZONE NOT NULL, "ends_at" TIMESTAMP WITH TIME ZONE NOT NULL, "why" text NOT NULL DEFAULT '', CONSTRAINT "item_window_has_length" CHECK ("ends_at" > "starts_at"), CONSTRAINT "pk_item_window" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_item_window_item_id" ON "item_window"  ("item_id") `);
    await runner.query(
      `CREATE TABLE "item" ("id" uuid NOT NULL, "tag" text NOT NULL, "kind" text NOT NULL, "name" text NOT NULL, "model" text NOT NULL DEFAULT '', "serial_number" text NOT NULL DEFAULT '', "state" text NOT NULL DEFAULT 'in-service', "place" text NOT NULL DEFAULT '', "mass_kg" double precision NOT NULL DEFAULT '0', "length_mm" double precision NOT NULL DEFAULT '0', "ratings" jsonb NOT NULL DEFAULT '{}', "temperature_min_c" double precision NOT NULL DEFAULT '10', "temperature_max_c" double precision NOT NULL DEFAULT '35', "utilities" jsonb NOT NULL DEFAULT '[]', "needs_calibration" boolean NOT NULL DEFAULT false, "calibration_interval_months" integer, "details" jsonb NOT NULL, "registered_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "version" integer NOT NULL, CONSTRAINT "uq_item_tag" UNIQUE ("tag"), CONSTRAINT "item_state_known" CHECK ("state" in ('in-service', 'faulty', 'out-of-use')), CONSTRAINT "item_length_not_negative" CHECK ("length_mm" >= 0), CONSTRAINT "item_mass_not_negative" CHECK ("mass_kg" >= 0), CONSTRAINT "pk_item" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_item_kind" ON "item"  ("kind") `);
    await runner.query(
      `CREATE TABLE "rig_link" ("item_id" uuid NOT NULL, "frame_id" uuid NOT NULL, "role" text NOT NULL, "fitted_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_rig_link" PRIMARY KEY ("item_id"))`,
    );
    await runner.query(`CREATE INDEX "ix_rig_link_frame_id" ON "rig_link"  ("frame_id") `);
    await runner.query(
      `CREATE TABLE "report" ("id" uuid NOT NULL, "request_id" uuid NOT NULL, "number" text NOT NULL, "revision" integer NOT NULL, "state" text NOT NULL, "document" jsonb NOT NULL, "remarks" jsonb NOT NULL DEFAULT '{}', "amendment" text, "prepared_by" uuid NOT NULL, "prepared_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "authorised_by" uuid, "authorised_at" TIMESTAMP WITH TIME ZONE, "issued_at" TIMESTAMP WITH TIME ZONE, "file_id" uuid, "sha256" text, "version" integer NOT NULL, CONSTRAINT "uq_report_number_revision" UNIQUE ("number", "revision"), CONSTRAINT "pk_report" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_report_request_id" ON "report"  ("request_id") `);
    await runner.query(
      `CREATE TABLE "request" ("id" uuid NOT NULL, "reference" text NOT NULL, "title" text NOT NULL, "purpose" text NOT NULL DEFAULT '', "state" text NOT NULL, "team_id" uuid NOT NULL, "requester_id" uuid NOT NULL, "due_at" TIMESTAMP WITH TIME ZONE, "specimens_at" TIMESTAMP WITH TIME ZONE, "weight" double precision NOT NULL DEFAULT '1', "disposal" text NOT NULL DEFAULT 'keep-90-days', "conformity" jsonb, "review" jsonb, "created_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "submitted_at" TIMESTAMP WITH TIME ZONE, "accepted_at" TIMESTAMP WITH TIME ZONE, "promise50_at" TIMESTAMP WITH TIME ZONE, "promise80_at" TIMESTAMP WITH TIME ZONE, "promise_note" text, "version" integer NOT NULL, CONSTRAINT "uq_request_reference" UNIQUE ("reference"), CONSTRAINT "request_weight_positive" CHECK ("weight" > 0), CONSTRAINT "pk_request" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_request_requester_id" ON "request"  ("requester_id") `);
    await runner.query(`CREATE INDEX "ix_request_state_created_at_id" ON "request"  ("state", "created_at", "id") `);
    await runner.query(
      `CREATE INDEX "ix_request_team_id_created_at_id" ON "request"  ("team_id", "created_at", "id") `,
    );
    await runner.query(`CREATE INDEX "ix_request_created_at_id" ON "request"  ("created_at", "id") `);
    await runner.query(
      `CREATE TABLE "specimen" ("id" uuid NOT NULL, "batch_id" uuid NOT NULL, "label" text NOT NULL, "position" integer NOT NULL, "fate" text NOT NULL DEFAULT 'expected', "invalid_why" text, "arrived_at" TIMESTAMP WITH TIME ZONE, "condition" text NOT NULL DEFAULT '', "conditioning_from" TIMESTAMP WITH TIME ZONE, "dimensions" jsonb NOT NULL DEFAULT '{}', "version" integer NOT NULL, CONSTRAINT "uq_specimen_label" UNIQUE ("label"), CONSTRAINT "pk_specimen" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_specimen_batch_id" ON "specimen"  ("batch_id") `);
    await runner.query(
      `CREATE TABLE "batch" ("id" uuid NOT NULL, "request_id" uuid NOT NULL, "position" integer NOT NULL, "label" text NOT NULL DEFAULT '', "method_id" uuid NOT NULL, "material_id" uuid, "ask" jsonb NOT NULL, "as_typed" jsonb NOT NULL DEFAULT '{}', "specimen_count" integer NOT NULL, "version" integer NOT NULL, CONSTRAINT "pk_batch" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_batch_request_id" ON "batch"  ("request_id") `);
    await runner.query(`CREATE INDEX "ix_batch_method_id" ON "batch"  ("method_id") `);
    await runner.query(
      `CREATE TABLE "request_message" ("id" uuid NOT NULL, "request_id" uuid NOT NULL, "author_id" uuid NOT NULL, "body" text NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_request_message" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_request_message_request_id" ON "request_message"  ("request_id") `);
    await runner.query(
      `CREATE TABLE "curve" ("id" uuid NOT NULL, "specimen_id" uuid NOT NULL, "job_id" uuid NOT NULL, "file_id" uuid NOT NULL, "format" jsonb NOT NULL, "rows" integer NOT NULL, "drawn" jsonb NOT NULL, "revision" integer NOT NULL DEFAULT '1', "uploaded_by" uuid NOT NULL, "uploaded_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_curve" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_curve_specimen_id" ON "curve"  ("specimen_id") `);
    await runner.query(`CREATE INDEX "ix_curve_job_id" ON "curve"  ("job_id") `);
    await runner.query(
      `CREATE TABLE "curve_source" ("fingerprint" text NOT NULL, "name" text NOT NULL DEFAULT '', "format" jsonb NOT NULL, "confirmed_by" uuid NOT NULL, "confirmed_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_curve_source" PRIMARY KEY ("fingerprint"))`,
    );
    await runner.query(
      `CREATE TABLE "duration" ("job_id" uuid NOT NULL, "method_code" text NOT NULL, "specimens" integer NOT NULL, "setup_min" double precision NOT NULL, "work_min" double precision NOT NULL, "at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_duration" PRIMARY KEY ("job_id"))`,
    );
    await runner.query(`CREATE INDEX "ix_duration_method_code" ON "duration"  ("method_code") `);
    await runner.query(
      `CREATE TABLE "result" ("id" uuid NOT NULL, "specimen_id" uuid NOT NULL, "job_id" uuid NOT NULL, "key" text NOT NULL, "value" double precision NOT NULL, "unit" text NOT NULL, "revision" integer NOT NULL DEFAULT '1', "origin" text NOT NULL, "basis" jsonb NOT NULL DEFAULT '{}', "why" text, "entered_by" uuid NOT NULL, "entered_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), CONSTRAINT "pk_result" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_result_job_id" ON "result"  ("job_id") `);
    await runner.query(
      `CREATE UNIQUE INDEX "ix_result_specimen_id_key_revision" ON "result"  ("specimen_id", "key", "revision") `,
    );
    await runner.query(
      `CREATE TABLE "task_run" ("id" uuid NOT NULL, "seq" BIGSERIAL NOT NULL, "name" text NOT NULL, "key" text, "payload" jsonb NOT NULL, "announced_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "due_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "dispatched_at" TIMESTAMP WITH TIME ZONE, "merged_into" uuid, "state" text NOT NULL DEFAULT 'waiting', "progress_pct" double precision NOT NULL DEFAULT '0', "message" text NOT NULL DEFAULT '', "error" text, "result" jsonb, "attempts" integer NOT NULL DEFAULT '0', "cancel_asked" boolean NOT NULL DEFAULT false, "started_at" TIMESTAMP WITH TIME ZONE, "alive_at" TIMESTAMP WITH TIME ZONE, "finished_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "task_run_state_known" CHECK ("state" in ('waiting', 'running', 'done', 'failed', 'cancelled')), CONSTRAINT "pk_task_run" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_task_run_name" ON "task_run"  ("name") `);
    await runner.query(
      `CREATE INDEX "ix_task_run_open" ON "task_run"  ("dispatched_at") WHERE "state" in ('waiting', 'running')`,
    );
    await runner.query(
      `CREATE INDEX "ix_task_run_to_dispatch" ON "task_run"  ("due_at") WHERE "dispatched_at" is null`,
    );
    await runner.query(
      `CREATE TABLE "webhook" ("id" uuid NOT NULL, "url" text NOT NULL, "kinds" text array NOT NULL, "secret" text NOT NULL, "added_by" uuid NOT NULL, "added_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "ended_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "pk_webhook" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_webhook_ended_at" ON "webhook"  ("ended_at") `);
    await runner.query(
      `CREATE TABLE "webhook_delivery" ("id" uuid NOT NULL, "webhook_id" uuid NOT NULL, "event_id" uuid NOT NULL, "kind" text NOT NULL, "body" text NOT NULL, "state" text NOT NULL DEFAULT 'waiting', "tries" integer NOT NULL DEFAULT '0', "announced_at" TIMESTAMP WITH TIME ZONE NOT NULL DEFAULT now(), "last_status" integer, "trouble" text, "next_try_at" TIMESTAMP WITH TIME ZONE, "delivered_at" TIMESTAMP WITH TIME ZONE, CONSTRAINT "uq_webhook_delivery_webhook_id_event_id" UNIQUE ("webhook_id", "event_id"), CONSTRAINT "webhook_delivery_state_known" CHECK ("state" in ('waiting', 'delivered', 'failed')), CONSTRAINT "pk_webhook_delivery" PRIMARY KEY ("id"))`,
    );
    await runner.query(`CREATE INDEX "ix_webhook_delivery_announced_at" ON "webhook_delivery"  ("announced_at") `);
    await runner.query(
      `CREATE INDEX "ix_webhook_delivery_webhook_id_announced_at" ON "webhook_delivery"  ("webhook_id", "announced_at") `,
    );
    await runner.query(
      `ALTER TABLE "feed_key" ADD CONSTRAINT "fk_feed_key_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "notice" ADD CONSTRAINT "fk_notice_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "api_token" ADD CONSTRAINT "fk_api_token_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "authorisation" ADD CONSTRAINT "fk_authorisation_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "authorisation" ADD CONSTRAINT "fk_authorisation_granted_by" FOREIGN KEY ("granted_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "roster_shift" ADD CONSTRAINT "fk_roster_shift_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "session" ADD CONSTRAINT "fk_session_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "team_member" ADD CONSTRAINT "fk_team_member_team_id" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "team_member" ADD CONSTRAINT "fk_team_member_person_id" FOREIGN KEY ("person_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "specimen" ADD CONSTRAINT "fk_specimen_batch_id" FOREIGN KEY ("batch_id") REFERENCES "batch"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "batch" ADD CONSTRAINT "fk_batch_request_id" FOREIGN KEY ("request_id") REFERENCES "request"("id") ON DELETE CASCADE ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "webhook_delivery" ADD CONSTRAINT "fk_webhook_delivery_webhook_id" FOREIGN KEY ("webhook_id") REFERENCES "webhook"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "webhook_delivery" DROP CONSTRAINT "fk_webhook_delivery_webhook_id"`);
    await runner.query(`ALTER TABLE "batch" DROP CONSTRAINT "fk_batch_request_id"`);
    await runner.query(`ALTER TABLE "specimen" DROP CONSTRAINT "fk_specimen_batch_id"`);
    await runner.query(`ALTER TABLE "team_member" DROP CONSTRAINT "fk_team_member_person_id"`);
    await runner.query(`ALTER TABLE "team_member" DROP CONSTRAINT "fk_team_member_team_id"`);
    await runner.query(`ALTER TABLE "session" DROP CONSTRAINT "fk_session_person_id"`);
    await runner.query(`ALTER TABLE "roster_shift" DROP CONSTRAINT "fk_roster_shift_person_id"`);
    await runner.query(`ALTER TABLE "authorisation" DROP CONSTRAINT "fk_authorisation_granted_by"`);
    await runner.query(`ALTER TABLE "authorisation" DROP CONSTRAINT "fk_authorisation_person_id"`);
    await runner.query(`ALTER TABLE "api_token" DROP CONSTRAINT "fk_api_token_person_id"`);
    await runner.query(`ALTER TABLE "notice" DROP CONSTRAINT "fk_notice_person_id"`);
    await runner.query(`ALTER TABLE "feed_key" DROP CONSTRAINT "fk_feed_key_person_id"`);
    await runner.query(`DROP INDEX "public"."ix_webhook_delivery_webhook_id_announced_at"`);
    await runner.query(`DROP INDEX "public"."ix_webhook_delivery_announced_at"`);
    await runner.query(`DROP TABLE "webhook_delivery"`);
    await runner.query(`DROP INDEX "public"."ix_webhook_ended_at"`);
    await runner.query(`DROP TABLE "webhook"`);
    await runner.query(`DROP INDEX "public"."ix_task_run_to_dispatch"`);
    await runner.query(`DROP INDEX "public"."ix_task_run_open"`);
    await runner.query(`DROP INDEX "public"."ix_task_run_name"`);
    await runner.query(`DROP TABLE "task_run"`);
    await runner.query(`DROP INDEX "public"."ix_result_specimen_id_key_revision"`);
    await runner.query(`DROP INDEX "public"."ix_result_job_id"`);
    await runner.query(`DROP TABLE "result"`);
    await runner.query(`DROP INDEX "public"."ix_duration_method_code"`);
    await runner.query(`DROP TABLE "duration"`);
    await runner.query(`DROP TABLE "curve_source"`);
    await runner.query(`DROP INDEX "public"."ix_curve_job_id"`);
    await runner.query(`DROP INDEX "public"."ix_curve_specimen_id"`);
    await runner.query(`DROP TABLE "curve"`);
    await runner.query(`DROP INDEX "public"."ix_request_message_request_id"`);
    await runner.query(`DROP TABLE "request_message"`);
    await runner.query(`DROP INDEX "public"."ix_batch_method_id"`);
    await runner.query(`DROP INDEX "public"."ix_batch_request_id"`);
    await runner.query(`DROP TABLE "batch"`);
    await runner.query(`DROP INDEX "public"."ix_specimen_batch_id"`);
    await runner.query(`DROP TABLE "specimen"`);
    await runner.query(`DROP INDEX "public"."ix_request_created_at_id"`);
    await runner.query(`DROP INDEX "public"."ix_request_team_id_created_at_id"`);
    await runner.query(`DROP INDEX "public"."ix_request_state_created_at_id"`);
    await runner.query(`DROP INDEX "public"."ix_request_requester_id"`);
    await runner.query(`DROP TABLE "request"`);
    await runner.query(`DROP INDEX "public"."ix_report_request_id"`);
    await runner.query(`DROP TABLE "report"`);
    await runner.query(`DROP INDEX "public"."ix_rig_link_frame_id"`);
    await runner.query(`DROP TABLE "rig_link"`);
    await runner.query(`DROP INDEX "public"."ix_item_kind"`);
    await runner.query(`DROP TABLE "item"`);
    await runner.query(`DROP INDEX "public"."ix_item_window_item_id"`);
    await runner.query(`DROP TABLE "item_window"`);
    await runner.query(`DROP INDEX "public"."ix_fault_item_id"`);
    await runner.query(`DROP TABLE "fault"`);
    await runner.query(`DROP TABLE "record_head"`);
    await runner.query(`DROP INDEX "public"."ix_record_event_subject_kind_subject_id"`);
    await runner.query(`DROP INDEX "public"."ix_record_event_kind"`);
    await runner.query(`DROP INDEX "public"."ix_record_event_actor_id"`);
    await runner.query(`DROP INDEX "public"."ix_record_event_at"`);
    await runner.query(`DROP TABLE "record_event"`);
    await runner.query(`DROP TABLE "numbering"`);
    await runner.query(`DROP INDEX "public"."ix_idempotency_key_created_at"`);
    await runner.query(`DROP TABLE "idempotency_key"`);
    await runner.query(`DROP INDEX "public"."ix_fact_change_at"`);
    await runner.query(`DROP INDEX "public"."ix_fact_change_transaction"`);
    await runner.query(`DROP TABLE "fact_change"`);
    await runner.query(`DROP TABLE "trial_plan"`);
    await runner.query(`DROP INDEX "public"."ix_booking_item_item_id"`);
    await runner.query(`DROP TABLE "booking_item"`);
    await runner.query(`DROP INDEX "public"."ix_booking_plan_id"`);
    await runner.query(`DROP INDEX "public"."ix_booking_frame_id"`);
    await runner.query(`DROP INDEX "public"."ix_booking_job_id"`);
    await runner.query(`DROP TABLE "booking"`);
    await runner.query(`DROP TABLE "plan"`);
    await runner.query(`DROP INDEX "public"."ix_team_member_person_id"`);
    await runner.query(`DROP TABLE "team_member"`);
    await runner.query(`DROP TABLE "team"`);
    await runner.query(`DROP INDEX "public"."ix_sign_in_attempt_subject_at"`);
    await runner.query(`DROP TABLE "sign_in_attempt"`);
    await runner.query(`DROP INDEX "public"."ix_session_person_id"`);
    await runner.query(`DROP TABLE "session"`);
    await runner.query(`DROP INDEX "public"."ix_roster_shift_starts_at"`);
    await runner.query(`DROP TABLE "roster_shift"`);
    await runner.query(`DROP TABLE "lab_setting"`);
    await runner.query(`DROP TABLE "closed_day"`);
    await runner.query(`DROP INDEX "public"."ix_authorisation_method_code"`);
    await runner.query(`DROP INDEX "public"."ix_authorisation_person_id"`);
    await runner.query(`DROP TABLE "authorisation"`);
    await runner.query(`DROP INDEX "public"."ix_api_token_person_id"`);
    await runner.query(`DROP TABLE "api_token"`);
    await runner.query(`DROP INDEX "public"."ix_notice_person_id_at_id"`);
    await runner.query(`DROP INDEX "public"."ix_notice_unread"`);
    await runner.query(`DROP INDEX "public"."ix_notice_at"`);
    await runner.query(`DROP TABLE "notice"`);
    await runner.query(`DROP INDEX "public"."ix_method_code"`);
    await runner.query(`DROP TABLE "method"`);
    await runner.query(`DROP TABLE "material"`);
    await runner.query(`DROP INDEX "public"."ix_job_state_finished_at"`);
    await runner.query(`DROP INDEX "public"."ix_job_technician_id"`);
    await runner.query(`DROP INDEX "public"."ix_job_frame_id"`);
    await runner.query(`DROP INDEX "public"."ix_job_request_id"`);
    await runner.query(`DROP INDEX "public"."ix_job_batch_id"`);
    await runner.query(`DROP TABLE "job"`);
    await runner.query(`DROP INDEX "public"."ix_feed_key_person_id"`);
    await runner.query(`DROP TABLE "feed_key"`);
    await runner.query(`DROP TABLE "person"`);
    await runner.query(`DROP INDEX "public"."ix_stored_file_sha256"`);
    await runner.query(`DROP TABLE "stored_file"`);
    await runner.query(`DROP INDEX "public"."ix_shift_check_cell_id_frame_id_at"`);
    await runner.query(`DROP TABLE "shift_check"`);
    await runner.query(`DROP INDEX "public"."ix_nonconformity_item_id"`);
    await runner.query(`DROP TABLE "nonconformity"`);
    await runner.query(`DROP INDEX "public"."ix_calibration_item_id"`);
    await runner.query(`DROP TABLE "calibration"`);
  }
}
