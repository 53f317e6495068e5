import { CalibrationEntity } from './calibration/calibration.entity.js';
import { NonconformityEntity } from './calibration/nonconformity.entity.js';
import { ShiftCheckEntity } from './calibration/shift-check.entity.js';
import { StoredFileEntity } from './exchange/stored-file.entity.js';
import { FeedKeyEntity } from './feeds/feed-key.entity.js';
import { JobEntity } from './jobs/job.entity.js';
import { MaterialEntity } from './methods/material.entity.js';
import { MethodEntity } from './methods/method.entity.js';
import { NoticeEntity } from './notices/notice.entity.js';
import { ApiTokenEntity } from './people/api-token.entity.js';
import { AuthorisationEntity } from './people/authorisation.entity.js';
import { ClosedDayEntity } from './people/closed-day.entity.js';
import { LabSettingEntity } from './people/lab-setting.entity.js';
import { PersonEntity } from './people/person.entity.js';
import { RosterShiftEntity } from './people/roster-shift.entity.js';
import { SessionEntity } from './people/session.entity.js';
import { SignInAttemptEntity } from './people/sign-in-attempt.entity.js';
import { TeamEntity, TeamMemberEntity } from './people/team.entity.js';
import { PlanEntity, BookingEntity, BookingItemEntity } from './plan/plan.entity.js';
import { TrialPlanEntity } from './plan/trial-plan.entity.js';
import { FactChangeEntity } from './platform/fact-change.entity.js';
import { IdempotencyKeyEntity } from './platform/idempotency-key.entity.js';
import { NumberingEntity } from './platform/numbering.entity.js';
import { RecordEventEntity } from './record/record-event.entity.js';
import { RecordHeadEntity } from './record/record-head.entity.js';
import { FaultEntity } from './register/fault.entity.js';
import { ItemWindowEntity } from './register/item-window.entity.js';
import { ItemEntity } from './register/item.entity.js';
import { RigLinkEntity } from './register/rig.entity.js';
import { ReportEntity } from './reports/report.entity.js';
import { BatchEntity } from './requests/batch.entity.js';
import { RequestMessageEntity } from './requests/request-message.entity.js';
import { RequestEntity } from './requests/request.entity.js';
import { SpecimenEntity } from './requests/specimen.entity.js';
import { CurveEntity, CurveSourceEntity, DurationEntity } from './results/curve.entity.js';
import { ResultEntity } from './results/result.entity.js';
import { TaskRunEntity } from './tasks/task-run.entity.js';
import { WebhookDeliveryEntity } from './webhooks/webhook-delivery.entity.js';
import { WebhookEntity } from './webhooks/webhook.entity.js';

/** Every table of the lab, by hand: what is not listed here does not exist for the database. */
export const ENTITIES = [
  CalibrationEntity,
  NonconformityEntity,
  ShiftCheckEntity,
  StoredFileEntity,
  FeedKeyEntity,
  JobEntity,
  MaterialEntity,
  MethodEntity,
  NoticeEntity,
  ApiTokenEntity,
  AuthorisationEntity,
  ClosedDayEntity,
  LabSettingEntity,
  PersonEntity,
  RosterShiftEntity,
  SessionEntity,
  SignInAttemptEntity,
  TeamEntity,
  TeamMemberEntity,
  PlanEntity,
  BookingEntity,
  BookingItemEntity,
  TrialPlanEntity,
  FactChangeEntity,
  IdempotencyKeyEntity,
  NumberingEntity,
  RecordEventEntity,
  RecordHeadEntity,
  FaultEntity,
  ItemWindowEntity,
  ItemEntity,
  RigLinkEntity,
  ReportEntity,
  BatchEntity,
  RequestMessageEntity,
  RequestEntity,
  SpecimenEntity,
  CurveEntity,
  CurveSourceEntity,
  DurationEntity,
  ResultEntity,
  TaskRunEntity,
  WebhookDeliveryEntity,
  WebhookEntity,
] as const;
