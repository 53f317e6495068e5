import type { MigrationInterface, QueryRunner } from 'typeorm';

/**
 * What a row refers to is there, and stays: a reference to nothing is refused, and so is deleting what something refers to.
 * Without a key stay references that outlive what they name: of tasks that were merged (old ones are tidied up), of deliveries to
 * events (a try is in no record), of idempotency keys (kept for two days), and those within a jsonb, such as the items of a train.
 */
export class RefuseReferencesToNothing1795927295526 implements MigrationInterface {
  async up(runner: QueryRunner): Promise<void> {
    await runner.query(
      `ALTER TABLE "stored_file" ADD CONSTRAINT "fk_stored_file_stored_by" FOREIGN KEY ("stored_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "calibration" ADD CONSTRAINT "fk_calibration_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "calibration" ADD CONSTRAINT "fk_calibration_certificate_file_id" FOREIGN KEY ("certificate_file_id") REFERENCES "stored_file"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "calibration" ADD CONSTRAINT "fk_calibration_replaces" FOREIGN KEY ("replaces") REFERENCES "calibration"("id") ON DELETE NO ACTION ON UPDATE NO ACTION DEFERRABLE INITIALLY DEFERRED`,
    );
    await runner.query(
      `ALTER TABLE "calibration" ADD CONSTRAINT "fk_calibration_entered_by" FOREIGN KEY ("entered_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "nonconformity" ADD CONSTRAINT "fk_nonconformity_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "nonconformity" ADD CONSTRAINT "fk_nonconformity_opened_by" FOREIGN KEY ("opened_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "request" ADD CONSTRAINT "fk_request_team_id" FOREIGN KEY ("team_id") REFERENCES "team"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "request" ADD CONSTRAINT "fk_request_requester_id" FOREIGN KEY ("requester_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "method" ADD CONSTRAINT "fk_method_entered_by" FOREIGN KEY ("entered_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "batch" ADD CONSTRAINT "fk_batch_method_id" FOREIGN KEY ("method_id") REFERENCES "method"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "batch" ADD CONSTRAINT "fk_batch_material_id" FOREIGN KEY ("material_id") REFERENCES "material"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "fk_job_batch_id" FOREIGN KEY ("batch_id") REFERENCES "batch"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "fk_job_request_id" FOREIGN KEY ("request_id") REFERENCES "request"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "fk_job_frame_id" FOREIGN KEY ("frame_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "fk_job_technician_id" FOREIGN KEY ("technician_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "job" ADD CONSTRAINT "fk_job_pin_frame_id" FOREIGN KEY ("pin_frame_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "shift_check" ADD CONSTRAINT "fk_shift_check_cell_id" FOREIGN KEY ("cell_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "shift_check" ADD CONSTRAINT "fk_shift_check_frame_id" FOREIGN KEY ("frame_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "shift_check" ADD CONSTRAINT "fk_shift_check_job_id" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "shift_check" ADD CONSTRAINT "fk_shift_check_technician_id" FOREIGN KEY ("technician_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking" ADD CONSTRAINT "fk_booking_plan_id" FOREIGN KEY ("plan_id") REFERENCES "plan"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking" ADD CONSTRAINT "fk_booking_job_id" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking" ADD CONSTRAINT "fk_booking_frame_id" FOREIGN KEY ("frame_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking" ADD CONSTRAINT "fk_booking_technician_id" FOREIGN KEY ("technician_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking_item" ADD CONSTRAINT "fk_booking_item_booking_id" FOREIGN KEY ("booking_id") REFERENCES "booking"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "booking_item" ADD CONSTRAINT "fk_booking_item_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "trial_plan" ADD CONSTRAINT "fk_trial_plan_owner_id" FOREIGN KEY ("owner_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "trial_plan" ADD CONSTRAINT "fk_trial_plan_based_on_plan_id" FOREIGN KEY ("based_on_plan_id") REFERENCES "plan"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "record_event" ADD CONSTRAINT "fk_record_event_actor_id" FOREIGN KEY ("actor_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "fault" ADD CONSTRAINT "fk_fault_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "fault" ADD CONSTRAINT "fk_fault_opened_by" FOREIGN KEY ("opened_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "fault" ADD CONSTRAINT "fk_fault_closed_by" FOREIGN KEY ("closed_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "item_window" ADD CONSTRAINT "fk_item_window_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "rig_link" ADD CONSTRAINT "fk_rig_link_item_id" FOREIGN KEY ("item_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "rig_link" ADD CONSTRAINT "fk_rig_link_frame_id" FOREIGN KEY ("frame_id") REFERENCES "item"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "report" ADD CONSTRAINT "fk_report_request_id" FOREIGN KEY ("request_id") REFERENCES "request"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "report" ADD CONSTRAINT "fk_report_prepared_by" FOREIGN KEY ("prepared_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "report" ADD CONSTRAINT "fk_report_authorised_by" FOREIGN KEY ("authorised_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "report" ADD CONSTRAINT "fk_report_file_id" FOREIGN KEY ("file_id") REFERENCES "stored_file"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "request_message" ADD CONSTRAINT "fk_request_message_request_id" FOREIGN KEY ("request_id") REFERENCES "request"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "request_message" ADD CONSTRAINT "fk_request_message_author_id" FOREIGN KEY ("author_id") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "curve" ADD CONSTRAINT "fk_curve_specimen_id" FOREIGN KEY ("specimen_id") REFERENCES "specimen"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "curve" ADD CONSTRAINT "fk_curve_job_id" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "curve" ADD CONSTRAINT "fk_curve_file_id" FOREIGN KEY ("file_id") REFERENCES "stored_file"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "curve" ADD CONSTRAINT "fk_curve_uploaded_by" FOREIGN KEY ("uploaded_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "curve_source" ADD CONSTRAINT "fk_curve_source_confirmed_by" FOREIGN KEY ("confirmed_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "duration" ADD CONSTRAINT "fk_duration_job_id" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "result" ADD CONSTRAINT "fk_result_specimen_id" FOREIGN KEY ("specimen_id") REFERENCES "specimen"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "result" ADD CONSTRAINT "fk_result_job_id" FOREIGN KEY ("job_id") REFERENCES "job"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "result" ADD CONSTRAINT "fk_result_entered_by" FOREIGN KEY ("entered_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
    await runner.query(
      `ALTER TABLE "webhook" ADD CONSTRAINT "fk_webhook_added_by" FOREIGN KEY ("added_by") REFERENCES "person"("id") ON DELETE NO ACTION ON UPDATE NO ACTION`,
    );
  }

  async down(runner: QueryRunner): Promise<void> {
    await runner.query(`ALTER TABLE "webhook" DROP CONSTRAINT "fk_webhook_added_by"`);
    await runner.query(`ALTER TABLE "result" DROP CONSTRAINT "fk_result_entered_by"`);
    await runner.query(`ALTER TABLE "result" DROP CONSTRAINT "fk_result_job_id"`);
    await runner.query(`ALTER TABLE "result" DROP CONSTRAINT "fk_result_specimen_id"`);
    await runner.query(`ALTER TABLE "duration" DROP CONSTRAINT "fk_duration_job_id"`);
    await runner.query(`ALTER TABLE "curve_source" DROP CONSTRAINT "fk_curve_source_confirmed_by"`);
    await runner.query(`ALTER TABLE "curve" DROP CONSTRAINT "fk_curve_uploaded_by"`);
    await runner.query(`ALTER TABLE "curve" DROP CONSTRAINT "fk_curve_file_id"`);
    await runner.query(`ALTER TABLE "curve" DROP CONSTRAINT "fk_curve_job_id"`);
    await runner.query(`ALTER TABLE "curve" DROP CONSTRAINT "fk_curve_specimen_id"`);
    await runner.query(`ALTER TABLE "request_message" DROP CONSTRAINT "fk_request_message_author_id"`);
    await runner.query(`ALTER TABLE "request_message" DROP CONSTRAINT "fk_request_message_request_id"`);
    await runner.query(`ALTER TABLE "report" DROP CONSTRAINT "fk_report_file_id"`);
    await runner.query(`ALTER TABLE "report" DROP CONSTRAINT "fk_report_authorised_by"`);
    await runner.query(`ALTER TABLE "report" DROP CONSTRAINT "fk_report_prepared_by"`);
    await runner.query(`ALTER TABLE "report" DROP CONSTRAINT "fk_report_request_id"`);
    await runner.query(`ALTER TABLE "rig_link" DROP CONSTRAINT "fk_rig_link_frame_id"`);
    await runner.query(`ALTER TABLE "rig_link" DROP CONSTRAINT "fk_rig_link_item_id"`);
    await runner.query(`ALTER TABLE "item_window" DROP CONSTRAINT "fk_item_window_item_id"`);
    await runner.query(`ALTER TABLE "fault" DROP CONSTRAINT "fk_fault_closed_by"`);
    await runner.query(`ALTER TABLE "fault" DROP CONSTRAINT "fk_fault_opened_by"`);
    await runner.query(`ALTER TABLE "fault" DROP CONSTRAINT "fk_fault_item_id"`);
    await runner.query(`ALTER TABLE "record_event" DROP CONSTRAINT "fk_record_event_actor_id"`);
    await runner.query(`ALTER TABLE "trial_plan" DROP CONSTRAINT "fk_trial_plan_based_on_plan_id"`);
    await runner.query(`ALTER TABLE "trial_plan" DROP CONSTRAINT "fk_trial_plan_owner_id"`);
    await runner.query(`ALTER TABLE "booking_item" DROP CONSTRAINT "fk_booking_item_item_id"`);
    await runner.query(`ALTER TABLE "booking_item" DROP CONSTRAINT "fk_booking_item_booking_id"`);
    await runner.query(`ALTER TABLE "booking" DROP CONSTRAINT "fk_booking_technician_id"`);
    await runner.query(`ALTER TABLE "booking" DROP CONSTRAINT "fk_booking_frame_id"`);
    await runner.query(`ALTER TABLE "booking" DROP CONSTRAINT "fk_booking_job_id"`);
    await runner.query(`ALTER TABLE "booking" DROP CONSTRAINT "fk_booking_plan_id"`);
    await runner.query(`ALTER TABLE "shift_check" DROP CONSTRAINT "fk_shift_check_technician_id"`);
    await runner.query(`ALTER TABLE "shift_check" DROP CONSTRAINT "fk_shift_check_job_id"`);
    await runner.query(`ALTER TABLE "shift_check" DROP CONSTRAINT "fk_shift_check_frame_id"`);
    await runner.query(`ALTER TABLE "shift_check" DROP CONSTRAINT "fk_shift_check_cell_id"`);
    await runner.query(`ALTER TABLE "job" DROP CONSTRAINT "fk_job_pin_frame_id"`);
    await runner.query(`ALTER TABLE "job" DROP CONSTRAINT "fk_job_technician_id"`);
    await runner.query(`ALTER TABLE "job" DROP CONSTRAINT "fk_job_frame_id"`);
    await runner.query(`ALTER TABLE "job" DROP CONSTRAINT "fk_job_request_id"`);
    await runner.query(`ALTER TABLE "job" DROP CONSTRAINT "fk_job_batch_id"`);
    await runner.query(`ALTER TABLE "batch" DROP CONSTRAINT "fk_batch_material_id"`);
    await runner.query(`ALTER TABLE "batch" DROP CONSTRAINT "fk_batch_method_id"`);
    await runner.query(`ALTER TABLE "method" DROP CONSTRAINT "fk_method_entered_by"`);
    await runner.query(`ALTER TABLE "request" DROP CONSTRAINT "fk_request_requester_id"`);
    await runner.query(`ALTER TABLE "request" DROP CONSTRAINT "fk_request_team_id"`);
    await runner.query(`ALTER TABLE "nonconformity" DROP CONSTRAINT "fk_nonconformity_opened_by"`);
    await runner.query(`ALTER TABLE "nonconformity" DROP CONSTRAINT "fk_nonconformity_item_id"`);
    await runner.query(`ALTER TABLE "calibration" DROP CONSTRAINT "fk_calibration_entered_by"`);
    await runner.query(`ALTER TABLE "calibration" DROP CONSTRAINT "fk_calibration_replaces"`);
    await runner.query(`ALTER TABLE "calibration" DROP CONSTRAINT "fk_calibration_certificate_file_id"`);
    await runner.query(`ALTER TABLE "calibration" DROP CONSTRAINT "fk_calibration_item_id"`);
    await runner.query(`ALTER TABLE "stored_file" DROP CONSTRAINT "fk_stored_file_stored_by"`);
  }
}
