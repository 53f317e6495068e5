export { ENTITIES } from './entities.js';
export { openMigrated } from './platform/open-migrated.js';
export { LabRecords } from './lab-records.js';
export { openRecords } from './platform/open-records.js';
export { drift, migrate } from './platform/migrate.js';
export { LIVE_CHANNEL } from './platform/live-events.js';
export { listen } from './platform/listen.js';
export type { Listener } from './platform/listen.js';
export { factsChangedSince, factsStamp, touchFacts } from './platform/facts.js';
export { entityOf } from './platform/entity-of.js';
export { tidyUp } from './platform/tidy-up.js';
export { figuresOfOperation, ping } from './platform/operation.js';
export type { OperationFigures } from './platform/operation.js';
export { backupLines } from './platform/backup.js';
export { restoreLines } from './platform/restore.js';
export { whenThere } from './platform/when-there.js';
export { lockWhile } from './platform/lock.js';
export { drawNumber } from './platform/draw-number.js';
export { act, snapshot } from './record/act.js';
export type { Act, EventListener, Stage } from './record/act.js';
export { append } from './record/append.js';
export type { RecordEntry } from './record/append.js';
export type { EventName, Happening, LabEvent } from './record/event-kinds.js';
export { verifyRecord } from './record/verify-record.js';
export type { RecordCheck } from './record/verify-record.js';
export { announce, TASK_CHANNEL } from './tasks/announce.js';
export {
  announceEvery,
  requestCancel,
  beginRun,
  dispatchDue,
  endRun,
  findForgotten,
  getTaskView,
  heartbeat,
  putBack,
} from './tasks/task-runs.js';
export type { RunEnd } from './tasks/task-runs.js';
export { claimKey, storeAnswer, releaseKey, underClaim } from './platform/idempotency.js';
export type { Claim } from './platform/idempotency.js';
export { DEMO_PASSWORD } from './people/demo-password.js';
export { RosterRepository } from './people/roster.repository.js';
export {
  addPerson,
  addTeam,
  authorise,
  bindSignOn,
  changePerson,
  endAuthorisation,
  findAtDoor,
  getPerson,
  teamNamed,
  hasPeople,
  listActive,
  listPeople,
  listTeams,
  renameTeam,
  setPassword,
  setTeams,
  teamsOf,
} from './people/people.repository.js';
export type { PersonAtDoor } from './people/people.repository.js';
export {
  countTries,
  endAccess,
  findSessionHolder,
  findTokenHolder,
  forgetTries,
  forgetTriesOf,
  isStillIn,
  listSessions,
  listTokens,
  makeToken,
  openSession,
  revokeSessions,
  revokeToken,
} from './people/session.repository.js';
export type { Holder } from './people/session.repository.js';
export { getLabSettings, labSettings, setLabSettings } from './people/lab-settings.repository.js';
export { DEFAULT_LAB_SETTINGS } from './people/lab-settings.js';

export { RecordEventEntity } from './record/record-event.entity.js';
export { setAside, setAsideUnknown, takeUpSetAside } from './tasks/set-aside.js';
export { TaskRunEntity } from './tasks/task-run.entity.js';
export { AuthorisationEntity } from './people/authorisation.entity.js';
export { closedDays } from './people/closed-days.js';
export { ClosedDayEntity } from './people/closed-day.entity.js';
export { LabSettingEntity } from './people/lab-setting.entity.js';
export { PersonEntity } from './people/person.entity.js';
export { RosterShiftEntity } from './people/roster-shift.entity.js';
export { TeamEntity, TeamMemberEntity } from './people/team.entity.js';

export { PlanRepository } from './plan/plan.repository.js';
export type { NewPlan } from './plan/plan.repository.js';
export { readPlanFacts } from './plan/read-plan-facts.js';
export { itemsOfTrain, JobEntity } from './jobs/job.entity.js';
export type { TrainLink } from './jobs/job.entity.js';
export { JobRepository, readingKey } from './jobs/job.repository.js';
export { readTodayAtBench } from './jobs/read-today-at-bench.js';
export type { JobToday } from './jobs/read-today-at-bench.js';
export { readPlannedWork } from './jobs/read-planned-work.js';
export { readBenchNow } from './jobs/read-bench-now.js';
export type { HeldByJob } from './jobs/read-bench-now.js';
export type { PlannedWork } from './jobs/read-planned-work.js';
export { readPausedMs } from './jobs/read-paused-time.js';
export { SpecimenRepository } from './jobs/specimen.repository.js';
export { readJobAtBench } from './jobs/read-job-at-bench.js';
export type { JobAtBench } from './jobs/read-job-at-bench.js';
export { updatePromises, releaseBlocked, withdrawPromises } from './plan/update-promises.js';
export { applyEdits } from './plan/apply-edits.js';
export { revived } from './plan/trial-outcome.js';
export type { TrialOutcome } from './plan/trial-outcome.js';
export { PlanJobRepository } from './plan/plan-job.repository.js';
export { readPlanAround } from './plan/read-plan-around.js';
export type { NamedJob, PlanAround } from './plan/read-plan-around.js';
export { NO_NOTES } from './plan/plan-notes.js';
export type { BookingNotes, Fits, PlanNotes } from './plan/plan-notes.js';
export { NO_OVERLAY } from './plan/plan-facts.js';
export type { KeptBooking, OpenJob, Overlay, PlanFacts, TrainPlace } from './plan/plan-facts.js';
export { BookingEntity, PlanEntity } from './plan/plan.entity.js';
export type { NewBooking } from './plan/plan.entity.js';
export { TrialRepository } from './plan/trial.repository.js';
export { TrialPlanEntity } from './plan/trial-plan.entity.js';
export { insertRows, upsertRows } from './platform/write-rows.js';

export { labOf, readLab } from './register/read-lab.js';
export type { LabAsRead } from './register/read-lab.js';
export { standing } from './register/item-mapping.js';
export { ItemRepository } from './register/item.repository.js';
export type { ItemAround } from './register/item.repository.js';
export { RigRepository } from './register/rig.repository.js';
export { TroubleRepository } from './register/trouble.repository.js';
export { FaultEntity } from './register/fault.entity.js';
export { ItemWindowEntity } from './register/item-window.entity.js';
export { ItemEntity } from './register/item.entity.js';
export { RigLinkEntity } from './register/rig.entity.js';
export { CalibrationRepository } from './calibration/calibration.repository.js';
export { ImpactRepository } from './calibration/impact.repository.js';
export type { TouchedJob, TouchedReport, UpcomingJob } from './calibration/impact.repository.js';
export { NonconformityRepository } from './calibration/nonconformity.repository.js';
export { CalibrationEntity } from './calibration/calibration.entity.js';
export type { CalibratedRange } from './calibration/calibration.entity.js';
export { NonconformityEntity } from './calibration/nonconformity.entity.js';
export { ShiftCheckRepository } from './calibration/shift-check.repository.js';
export { ShiftCheckEntity } from './calibration/shift-check.entity.js';
export { MethodRepository } from './methods/method.repository.js';
export { materialOf, methodOf } from './methods/method-mapping.js';
export { MaterialEntity } from './methods/material.entity.js';
export { MethodEntity } from './methods/method.entity.js';
export { askOf } from './requests/ask-mapping.js';
export { readRequestsAround, peopleNamed } from './requests/read-requests-around.js';
export type { JobAround, RequestAround } from './requests/read-requests-around.js';
export { readRequestLines } from './requests/read-request-lines.js';
export type { JobInList, RequestInList } from './requests/read-request-lines.js';
export { readItemLines } from './register/read-item-lines.js';
export type { CalibrationDates, ItemAroundInList } from './register/read-item-lines.js';
export { readRequest } from './requests/read-request.js';
export type { BatchInWhole, JobInWhole, RequestWhole } from './requests/read-request.js';
export { RequestRepository } from './requests/request.repository.js';
export { RequestJobRepository } from './requests/request-job.repository.js';
export { BatchEntity } from './requests/batch.entity.js';
export { RequestEntity } from './requests/request.entity.js';
export type { SettledReview } from './requests/request.entity.js';
export { RequestMessageEntity } from './requests/request-message.entity.js';
export { SpecimenEntity } from './requests/specimen.entity.js';
export { FILE_LIMIT_BYTES, StoredFileRepository } from './exchange/stored-file.repository.js';
export { StoredFileEntity } from './exchange/stored-file.entity.js';
export { EventRepository } from './record/event.repository.js';
export { NumberingEntity } from './platform/numbering.entity.js';

export { ResultEntity } from './results/result.entity.js';
export type { ResultBasis } from './results/result.entity.js';
export { ResultRepository } from './results/result.repository.js';
export type { NewResult } from './results/result.repository.js';
export { HistoryRepository } from './results/history.repository.js';
export type { HistoryAsked, HistoryRow } from './results/history.repository.js';
export { storeCurve } from './results/store-curve.js';
export type { ReadCurve } from './results/store-curve.js';
export { sourceFingerprint } from './results/curve-source.js';
export { CurveEntity, DurationEntity } from './results/curve.entity.js';
export { resultsOfRequest } from './results/read-results.js';
export type { BatchFound } from './results/read-results.js';
export { frozenDocument, ReportEntity } from './reports/report.entity.js';
export { storeIssuedReport } from './reports/store-issued-report.js';
export { readReportLines } from './reports/read-report-lines.js';
export { ReportRepository } from './reports/report.repository.js';

export { NoticeEntity } from './notices/notice.entity.js';
export { NoticeRepository } from './notices/notice.repository.js';
export { remind } from './notices/remind.js';
export { WebhookEntity } from './webhooks/webhook.entity.js';
export { WebhookDeliveryEntity } from './webhooks/webhook-delivery.entity.js';
export { WebhookRepository } from './webhooks/webhook.repository.js';
export type { DueDelivery, TryOutcome } from './webhooks/webhook.repository.js';
export { FeedKeyRepository } from './feeds/feed-key.repository.js';
export type { FeedReader } from './feeds/feed-key.repository.js';
export { readFeedBookings } from './feeds/read-feed-bookings.js';
export type { FeedBooking, FeedOf } from './feeds/read-feed-bookings.js';
export { exportColumns, exportRows, exportTables } from './exchange/export-rows.js';
export type { ExportOptions } from './exchange/export-rows.js';
export { curveLacksOf } from './results/curve-lacks.js';
