export { eventWords } from './event-words.js';
export { linkWords } from './link-words.js';
export { JOB_MOVES, REQUEST_MOVES, REQUEST_STATES, waysOut } from './states.js';
export type { JobMove, JobState, Move, ReportState, RequestMove, RequestState, Role, SpecimenFate } from './states.js';
export type {
  FieldError,
  Instant,
  LiveEvent,
  Page,
  PersonRef,
  PersonView,
  Problem,
  RecordEventView,
  SessionView,
  SignInBody,
  TaskState,
  TaskView,
  TeamRef,
} from './platform.js';
export type {
  CalibratedRangeView,
  CalibrationStatus,
  CalibrationView,
  DueLine,
  EvaluationView,
  ExtensionReadingsBody,
  FaultView,
  ForceReadingsBody,
  ImpactView,
  ImportView,
  ItemDetail,
  ItemStateBody,
  ItemView,
  NonconformityView,
  RecordCalibrationBody,
  RigView,
  SaveItemBody,
  TextEncoding,
} from './register.js';
export type {
  ArrivalBody,
  BatchBody,
  BatchView,
  ConformityAsk,
  LandingView,
  PreviewBody,
  PreviewView,
  RequestLine,
  RequestView,
  ReviewBody,
  SaveRequestBody,
  SpecimenView,
} from './requests.js';
export type {
  BookingView,
  CauseView,
  FitView,
  HelpView,
  LaneView,
  LateView,
  PlanComparison,
  PlanChangeView,
  PlanFigures,
  PlanPlace,
  PlanView,
  TrialEdit,
  TrialView,
  WhyView,
} from './plan.js';
export type {
  BenchCheckView,
  BenchView,
  BlockBody,
  ConfirmBody,
  CurveConfirmBody,
  CurveReadingView,
  DimensionsBody,
  FinishBody,
  InvalidBody,
  MissingResultView,
  MissingWhy,
  JobView,
  ResultView,
  SetupStepView,
  ShiftCheckBody,
  StandInBody,
  TakeBody,
  TickBody,
  TrainItemView,
  TypedResultsBody,
  WhyBody,
} from './bench.js';
export type {
  BatchResults,
  CurveProposalView,
  CurveView,
  HistoryPoint,
  HistoryView,
  StatisticsView,
} from './results.js';
export type {
  MeasuredSize,
  MissingLine,
  ReportBatch,
  ReportDocument,
  ReportLine,
  ReportRemarks,
  ReportView,
  VerifyView,
} from './reports.js';
export { MAIL_WAYS, WEBHOOK_KINDS } from './notices.js';
export type {
  DeliveryState,
  DeliveryView,
  ExportTable,
  FeedKeyView,
  MailWay,
  NewFeedKeyBody,
  NewWebhookBody,
  NoticePreferences,
  NoticesView,
  NoticeView,
  WebhookKind,
  WebhookMessage,
  WebhookView,
} from './notices.js';
export type { LabSettings, LabSettingsView, Retention, WeeklyShift } from './settings.js';
export { sizesTable } from './sizes-table.js';
export { resultDefinition } from './result-definitions.js';
export { resultWords } from './result-words.js';
export type { ResultWords } from './result-words.js';
export type { MaterialView, MethodView, SaveMaterialBody, SaveMethodBody } from './methods.js';
export type {
  AuthorisationBody,
  ChangePersonBody,
  ClosedDay,
  DemoPerson,
  NewPersonBody,
  NewTokenBody,
  OpenSessionView,
  OwnPasswordBody,
  RosterShiftBody,
  RosterShiftView,
  RosterView,
  StatusPart,
  StatusView,
  TokenView,
} from './people.js';
