export { ENTITIES } from './entities.js';
export { openRecords } from './platform/open-records.js';
export { drift, migrate } from './platform/migrate.js';
export { LIVE_CHANNEL, notify } from './platform/live-events.js';
export { listen } from './platform/listen.js';
export type { Listener } from './platform/listen.js';
export { factsChangedSince, factsStamp, touchFacts } from './platform/facts.js';
export { KEPT_DAYS, tidyUp } from './platform/tidy-up.js';
export { drawNumber } from './platform/draw-number.js';
export { append } from './record/append.js';
export type { RecordEntry } from './record/append.js';
export { linkHash, verifyRecord } from './record/verify-record.js';
export type { RecordCheck } from './record/verify-record.js';
export { announce, TASK_CHANNEL } from './tasks/announce.js';
export {
  announceEvery,
  askToCancel,
  beginRun,
  dispatchDue,
  endRun,
  findForgotten,
  getTaskView,
  keepAlive,
  putBack,
} from './tasks/task-runs.js';
export type { RunEnd } from './tasks/task-runs.js';
export { DEFAULT_LAB_SETTINGS } from './people/lab-settings.js';

export { IdempotencyKeyEntity } from './platform/idempotency-key.entity.js';
export { RecordEventEntity } from './record/record-event.entity.js';
export { TaskRunEntity } from './tasks/task-run.entity.js';
export { ApiTokenEntity } from './people/api-token.entity.js';
export { AuthorisationEntity } from './people/authorisation.entity.js';
export { ClosedDayEntity } from './people/closed-day.entity.js';
export { LabSettingEntity } from './people/lab-setting.entity.js';
export { PersonEntity } from './people/person.entity.js';
export { RosterShiftEntity } from './people/roster-shift.entity.js';
export { SessionEntity } from './people/session.entity.js';
export { SignInAttemptEntity } from './people/sign-in-attempt.entity.js';
export { TeamEntity, TeamMemberEntity } from './people/team.entity.js';

export { PlanRepository, TrialRepository } from './plan/plan.repository.js';
export type { NewBooking, NewPlan } from './plan/plan.repository.js';
export { readPlanFacts } from './plan/read-plan-facts.js';
export { NO_OVERLAY } from './plan/plan-facts.js';
export type { KeptBooking, OpenJob, Overlay, PlanFacts, TrainPlace } from './plan/plan-facts.js';
export { BookingEntity, BookingItemEntity, PlanEntity, TrialPlanEntity } from './plan/plan.entity.js';
