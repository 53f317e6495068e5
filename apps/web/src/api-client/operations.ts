// Made from the description of the API by `npm run types`; a spec compares the two.
export type SignInDto = { email: string; password: string };
export type OwnPasswordDto = { current: string; next: string };
export type NewTokenDto = { name: string; permissions: readonly string[]; days: number };
export type NewPersonDto = {
  name: string;
  email: string;
  roles: readonly ('requester' | 'technician' | 'manager' | 'auditor')[];
  teamIds: readonly string[];
  password?: string;
};
export type ChangePersonDto = {
  name?: string;
  roles?: readonly ('requester' | 'technician' | 'manager' | 'auditor')[];
  teamIds?: readonly string[];
  active?: boolean;
  password?: string;
};
export type AuthorisationDto = { methodCode: string; from: string; to?: string | null };
export type NewTeamDto = { name: string };
export type RosterShiftDto = { personId: string; startsAt: string; endsAt: string };
export type ClosedDayDto = { day: string; name: string };
export type WeeklyShiftDto = { weekday: number; from: string; to: string; name: string };
export type RetentionDto = {
  endedTasksMonths: number;
  endedSessionsMonths: number;
  noticesMonths: number;
  deliveriesMonths: number;
  idempotencyKeysDays: number;
};
export type LabSettingsDto = {
  name: string;
  address: string;
  contact: string;
  timeZone: string;
  shifts: readonly WeeklyShiftDto[];
  freezeMin: number;
  horizonDays: number;
  planningSeconds: number;
  warmUpMin: number;
  warmUpAfterMin: number;
  assumedArrivalMin: number;
  calibrationVisitMin: number;
  shiftCheckValidMin: number;
  shiftCheckTolerancePct: number;
  calibrationNoticeDays: number;
  rampCPerMin: number;
  soakMin: number;
  matching: object;
  objective: object;
  retention: RetentionDto;
};
export type PinDto = { jobId: string; frameId: string; startsAt?: string | null };
export type HoldDto = { jobId: string; why: string };
export type NewTrialDto = { name?: string };
export type TrialEditDto = {
  kind:
    'move' | 'unpin' | 'hold' | 'unhold' | 'frame-down' | 'extra-shift' | 'extra-item' | 'technician-off' | 'weight';
  jobId?: string;
  frameId?: string;
  personId?: string;
  likeItemId?: string;
  startsAt?: string;
  endsAt?: string;
  why?: string;
  weight?: number;
};
export type LandingBatchDto = { methodId: string; materialId?: string | null; specimenCount: number; ask: object };
export type LandingDto = { batches: readonly LandingBatchDto[]; dueAt?: string | null; specimensAt?: string | null };
export type SaveItemDto = {
  tag: string;
  kind:
    | 'frame'
    | 'load-cell'
    | 'grip'
    | 'jaw-face'
    | 'fixture'
    | 'platen'
    | 'adapter'
    | 'extensometer'
    | 'chamber'
    | 'guard'
    | 'transducer';
  name: string;
  model?: string;
  serialNumber?: string;
  place?: string;
  massKg: number;
  lengthMm: number;
  ratings: object;
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: readonly string[];
  needsCalibration: boolean;
  calibrationIntervalMonths?: number | null;
  details: object;
};
export type ItemStateDto = { state: 'in-service' | 'faulty' | 'out-of-use'; why: string };
export type FaultDto = { what: string };
export type CloseFaultDto = { remedy: string };
export type WindowDto = {
  kind: 'down' | 'held' | 'calibration-visit' | 'extra-shift';
  startsAt: string;
  endsAt: string;
  why: string;
};
export type RigLinkDto = { role: string; itemId: string };
export type RigDto = { links: readonly RigLinkDto[] };
export type ForceStepDto = { nominal: number; runs: readonly number[]; falling?: number | null };
export type ForceReadingsDto = {
  direction: 'tension' | 'compression' | 'torque';
  unit: string;
  capacity: number;
  resolution: number;
  zeroResidual: number;
  held?: 'indicated' | 'true';
  steps: readonly ForceStepDto[];
};
export type ExtensionStepDto = { referenceMm: number; runs: readonly number[] };
export type ExtensionReadingsDto = {
  unit: string;
  gaugeLengthNominalMm: number;
  gaugeLengthMeasuredMm: number;
  resolutionMm: number;
  steps: readonly ExtensionStepDto[];
};
export type RangeDto = {
  direction: 'tension' | 'compression' | 'torque' | 'extension' | 'temperature' | 'speed';
  className: string | null;
  from: number;
  to: number;
  unit: 'N' | 'mm' | 'N·m' | '°C' | 'mm/min';
};
export type RecordCalibrationDto = {
  standard: string;
  forceReadings?: readonly ForceReadingsDto[];
  extensionReadings?: ExtensionReadingsDto;
  certificateNumber: string;
  laboratory: string;
  performedAt: unknown | unknown;
  dueAt?: unknown | unknown;
  ranges?: readonly RangeDto[];
  asFound: 'within' | 'out-of-tolerance' | 'not-recorded';
  certificateFileId?: string | null;
  replaces?: string | null;
};
export type EvaluateDto = {
  standard: string;
  forceReadings?: readonly ForceReadingsDto[];
  extensionReadings?: ExtensionReadingsDto;
};
export type OpenNonconformityDto = { what: string; since?: string };
export type DecideNonconformityDto = { state: 'open' | 'closed'; decision: string };
export type SaveMethodDto = { data: object };
export type SaveMaterialDto = { data: object };
export type PreviewDto = { methodId: string; materialId?: string | null; ask: object };
export type ConformityDto = {
  resultKey: string;
  lower: number | null;
  upper: number | null;
  unit: string;
  of: 'each' | 'mean';
  rule: 'simple' | 'guarded';
  specification: string;
};
export type BatchDto = {
  label?: string;
  methodId: string;
  materialId?: string | null;
  specimenCount: number;
  ask: object;
  asTyped?: object;
};
export type SaveRequestDto = {
  title: string;
  purpose?: string;
  teamId: string;
  dueAt?: string | null;
  specimensAt?: string | null;
  weight?: number;
  disposal?: 'return' | 'keep-90-days' | 'discard';
  conformity?: ConformityDto | null;
  batches: readonly BatchDto[];
};
export type PerhapsReasonDto = { why?: string };
export type MessageDto = { body: string };
export type ReasonDto = { why: string };
export type ReviewDto = {
  methodAgreed: boolean;
  capabilityShown: boolean;
  specimensAgreed: boolean;
  disposalAgreed: boolean;
  decisionRuleAgreed?: boolean;
  differences?: string;
  note?: string;
};
export type ArrivalDto = {
  specimenIds: readonly string[];
  arrivedAt?: string;
  conditioningFrom?: string;
  condition?: string;
};
export type TakeDto = { frameId?: string };
export type CurveConfirmDto = { fileId: string; format: object };
export type ConfirmDto = { tag: string };
export type StandInDto = { itemId: string; tag: string };
export type ShiftCheckDto = { cellId: string; reference: number; reading: number; unit: string };
export type TickDto = { key: string; value?: number; note?: string };
export type WhyDto = { why: string };
export type ConditionsDto = { temperatureC?: number; humidityPct?: number; remarks?: string; deviations?: string };
export type MissingOfDto = { key: string; why: string; specimenId?: string };
export type FinishDto = { conditions: ConditionsDto; notTestedWhy?: string; missing?: readonly MissingOfDto[] };
export type BlockDto = { why: string; itemId?: string };
export type DimensionsDto = { dimensions: object };
export type TypedResultDto = { key: string; value: number; unit: string };
export type MissingWhyDto = { key: string; why: string };
export type TypedResultsDto = { results: readonly TypedResultDto[]; why?: string; missing?: readonly MissingWhyDto[] };
export type InvalidDto = { why: string; fate?: 'invalid' | 'not-tested' | 'valid' };
export type RemarksDto = {
  title?: string;
  deviations?: string;
  opinions?: string;
  sampling?: string;
  external?: string;
};
export type AmendDto = { why: string };
export type NoticePreferencesDto = { mail: 'at-once' | 'daily' | 'off' };
export type NewFeedKeyDto = { name: string };
export type NewWebhookDto = {
  url: string;
  kinds: readonly (
    | 'request/submitted'
    | 'request/returned'
    | 'request/accepted'
    | 'request/declined'
    | 'request/withdrawn'
    | 'request/promise-moved'
    | 'request/in-work'
    | 'request/in-review'
    | 'request/reported'
    | 'request/closed'
    | 'job/taken'
    | 'job/running'
    | 'job/blocked'
    | 'job/done'
    | 'job/aborted'
    | 'plan/published'
    | 'report/issued'
    | 'item/calibrated'
    | 'item/fault-opened'
    | 'item/fault-closed'
    | 'nonconformity/opened'
  )[];
};
export type Problem = {
  type: string;
  title: string;
  status: number;
  detail: string;
  instance?: string;
  errors?: FieldError[];
  facts?: { [name: string]: unknown };
};
export type FieldError = { field: string; found: string; allowed: string; unit?: string; sentence: string };
export type LiveEvent = {
  topic: 'requests' | 'jobs' | 'plan' | 'items' | 'results' | 'reports' | 'tasks' | 'people' | 'notices';
  id: string;
};
export type JobView = {
  id: string;
  reference: string;
  state: 'waiting' | 'ready' | 'taken' | 'rigged' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted';
  why: string | null;
  moves: JobMove[];
  request: { id: string; reference: string; title: string; dueAt: string | null };
  batch: { id: string; position: number; label: string; specimenCount: number; ask: { [name: string]: unknown } };
  method: {
    id: string;
    code: string;
    designation: string;
    title: string;
    testType: string;
    data: { [name: string]: unknown };
  };
  material: { id: string; name: string } | null;
  frame: { id: string; tag: string; name: string } | null;
  technician: PersonRef | null;
  train: TrainItemView[];
  setup: SetupStepView[];
  checks: BenchCheckView[];
  cautions: string[];
  limitStops: { upperMm: number; lowerMm: number; sentence: string } | null;
  speeds: { label: string; valueMmMin: number }[];
  dimensionsNeeded: { key: string; label: string; unit: string; readings: number; nominal: number | null }[];
  resultsNeeded: { key: string; label: string; unit: string; typed: boolean }[];
  specimens: {
    id: string;
    label: string;
    position: number;
    fate: SpecimenFate;
    invalidWhy: string | null;
    arrivedAt: string | null;
    condition: string;
    conditioningFrom: string | null;
    dimensions: { [name: string]: number[] };
    version: number;
    results: ResultView[];
    curve: { id: string; rows: number } | null;
    reading: CurveReadingView | null;
    missing: MissingResultView[];
  }[];
  plannedStartAt: string | null;
  plannedEndAt: string | null;
  takenAt: string | null;
  startedAt: string | null;
  finishedAt: string | null;
  conditions: { [name: string]: unknown };
  version: number;
};
export type JobMove =
  | 'release'
  | 'unrelease'
  | 'take'
  | 'give-back'
  | 'rig'
  | 'start'
  | 'pause'
  | 'resume'
  | 'block'
  | 'unblock'
  | 'finish'
  | 'abort';
export type PersonRef = { id: string; name: string };
export type TrainItemView = {
  role: string;
  itemId: string;
  tag: string;
  name: string;
  kind: string;
  place: string;
  lengthMm: number;
  massKg: number;
  rating: number | null;
  ratingUnit: string | null;
};
export type SetupStepView = {
  action: 'take-off' | 'keep' | 'put-on';
  item: TrainItemView;
  minutes: number;
  confirmed: boolean;
  confirmedAt: string | null;
  problem: string | null;
  standIns: { itemId: string; tag: string }[];
};
export type BenchCheckView = {
  key: string;
  label: string;
  detail: string;
  required: boolean;
  kind: 'tick' | 'value' | 'shift-check' | 'auto';
  unit?: string;
  done: boolean;
  doneAt: string | null;
  by: PersonRef | null;
  problem: string | null;
};
export type SpecimenFate = 'expected' | 'arrived' | 'tested' | 'invalid' | 'not-tested';
export type ResultView = {
  key: string;
  label: string;
  value: number;
  unit: string;
  revision: number;
  origin: 'typed' | 'computed' | 'reduced';
  basis: { [name: string]: unknown };
  flags: string[];
};
export type CurveReadingView = { taskId: string; state: 'waiting' | 'running' | 'failed'; message: string };
export type MissingResultView = { key: string; label: string; why: string | null; hint: string | null };
export type CurveProposalView = {
  fileId: string;
  known: boolean;
  fingerprint: string;
  format: { [name: string]: unknown };
  preview: { header: string[]; rows: string[][] };
  problems: { line: number; reason: string }[];
};
export type BenchView = {
  mine: {
    id: string;
    reference: string;
    state: 'waiting' | 'ready' | 'taken' | 'rigged' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted';
    title: string;
    frameTag: string | null;
  }[];
  next: {
    jobId: string;
    reference: string;
    title: string;
    frameTag: string;
    startsAt: string;
    requestReference: string;
    changeoverMin: number;
  } | null;
  nothingWhy: string | null;
  today: {
    jobId: string;
    reference: string;
    title: string;
    frameTag: string;
    startsAt: string;
    endsAt: string;
    state: 'waiting' | 'ready' | 'taken' | 'rigged' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted';
    technician: PersonRef | null;
  }[];
};
export type EnteredCalibration = { calibration: CalibrationView; impact: ImpactView | null };
export type CalibrationView = {
  id: string;
  standard: string;
  certificateNumber: string;
  laboratory: string;
  performedAt: string;
  validFrom: string;
  dueAt: string;
  ranges: CalibratedRangeView[];
  asFound: 'within' | 'out-of-tolerance' | 'not-recorded';
  readings: { [name: string]: unknown } | null;
  certificateFileId: string | null;
  replaces: string | null;
  enteredBy: PersonRef;
  enteredAt: string;
};
export type CalibratedRangeView = {
  direction: CalibratedQuantity;
  className: string | null;
  from: number;
  to: number;
  unit: 'N' | 'mm' | 'N·m' | '°C' | 'mm/min';
};
export type CalibratedQuantity = 'tension' | 'compression' | 'torque' | 'extension' | 'temperature' | 'speed';
export type ImpactView = {
  item: { id: string; tag: string; name: string };
  since: string;
  sinceWhy: string;
  until: string;
  jobs: {
    id: string;
    reference: string;
    requestId: string;
    requestReference: string;
    finishedAt: string | null;
    results: number;
  }[];
  reports: { id: string; number: string; revision: number; requestReference: string }[];
  people: PersonRef[];
  upcomingJobs: { id: string; reference: string; startsAt: string }[];
};
export type EvaluationView = { ranges: CalibratedRangeView[]; steps: { [name: string]: unknown }[]; notes: string[] };
export type DueLine = {
  item: {
    id: string;
    tag: string;
    name: string;
    kind:
      | 'frame'
      | 'load-cell'
      | 'grip'
      | 'jaw-face'
      | 'fixture'
      | 'platen'
      | 'adapter'
      | 'extensometer'
      | 'chamber'
      | 'guard'
      | 'transducer';
  };
  dueAt: string;
  status: CalibrationStatus;
  stops: { jobId: string; reference: string; requestReference: string; startsAt: string }[];
};
export type CalibrationStatus = 'not-needed' | 'in-force' | 'due-soon' | 'overdue' | 'never' | 'out-of-use';
export type NonconformityView = {
  id: string;
  reference: string;
  item: { id: string; tag: string } | null;
  what: string;
  since: string;
  touched: { [name: string]: unknown };
  state: 'open' | 'closed';
  decision: string | null;
  openedBy: PersonRef;
  openedAt: string;
  closedAt: string | null;
  version: number;
};
export type ExportTable = { name: string; columns: string[]; rows: number };
export type FeedKeyView = { id: string; name: string; madeAt: string; usedAt: string | null; key?: string };
export type MethodView = {
  id: string;
  code: string;
  version: number;
  designation: string;
  title: string;
  testType: string;
  state: 'offered' | 'retired';
  data: Method;
};
export type Method = {
  id: string;
  designation: string;
  version: number;
  changed?: string;
  title: string;
  testType: TestType;
  direction: Direction;
  materialGroups: MaterialGroup[];
  shapes: Shape[];
  geometry: GeometryNeed[];
  loadingSpanRatio: number | null;
  strength: StrengthProperty;
  speeds: SpeedStage[];
  results: string[];
  usualResults: string[];
  endStrain: number | null;
  modulusStrain: { from: number; to: number } | null;
  forceClass: ClassNeed;
  strain: StrainRule | null;
  ends: Ends;
  conditioning: Conditioning | null;
  minSpecimens: number;
  defaultMinPerSpecimen: number;
  defaultSetupMin: number;
  alignmentMaxBendingPct: number | null;
  hazards: Hazard[];
  guardAlways: boolean;
  reduction: { [name: string]: unknown };
  reportSteps: { [name: string]: ReportStep };
  source: string;
  confidence: string;
};
export type TestType =
  | 'tension'
  | 'compression'
  | 'flexure-3'
  | 'flexure-4'
  | 'lap-shear'
  | 'short-beam'
  | 'in-plane-shear'
  | 'double-shear'
  | 'peel'
  | 'tear'
  | 'strip'
  | 'torsion'
  | 'fracture'
  | 'component';
export type Direction = 'tension' | 'compression' | 'torque';
export type MaterialGroup =
  | 'metal'
  | 'plastic'
  | 'composite'
  | 'elastomer'
  | 'foam'
  | 'concrete'
  | 'wood'
  | 'film'
  | 'ceramic'
  | 'adhesive'
  | 'packaging'
  | 'textile';
export type Shape = 'strip' | 'component' | 'rectangle' | 'round' | 'tube' | 'thread';
export type GeometryNeed = {
  key: GeometryKey;
  shapes?: Shape[];
  required: boolean;
  min: number;
  max: number;
  usual?: number;
  help: string;
};
export type GeometryKey =
  | 'widthMm'
  | 'thicknessMm'
  | 'diameterMm'
  | 'outerDiameterMm'
  | 'innerDiameterMm'
  | 'areaMm2'
  | 'parallelLengthMm'
  | 'gaugeLengthMm'
  | 'gripSeparationMm'
  | 'heightMm'
  | 'lengthMm'
  | 'spanMm'
  | 'overlapMm'
  | 'crackLengthMm'
  | 'endWidthMm'
  | 'endThicknessMm';
export type StrengthProperty = 'peel' | 'tear' | 'tensile' | 'compressive' | 'flexural' | 'shear' | 'toughness';
export type SpeedStage = {
  stage: 'whole' | 'modulus' | 'yield' | 'to-break';
  rule: SpeedRule;
  tolerancePct: number | null;
  source: string;
};
export type SpeedRule =
  | { kind: 'fixed'; mmPerMin: number }
  | { kind: 'strain-rate'; perS: number; over: 'parallelLengthMm' | 'gaugeLengthMm' | 'gripSeparationMm' | 'heightMm' }
  | { kind: 'flexure-rate'; outerFibrePerMin: number }
  | { kind: 'stress-rate'; mPaPerS: number }
  | { kind: 'rotation'; degPerMin: number }
  | { kind: 'asked'; minMmPerMin: number; maxMmPerMin: number; usualMmPerMin: number };
export type ClassNeed = { standard: string; className: string; source: string };
export type StrainRule = {
  measures: 'axial' | 'deflection';
  demandedFor: string[];
  preferredFor: string[];
  usualGaugeLengthMm: number | null;
  standard: string;
  className: string;
  source: string;
};
export type Ends =
  | { by: 'grips'; ends: EndShape[]; surfaces: FaceSurface[] }
  | { by: 'platens'; sphericalSeat: 'not-needed' | 'required' | 'preferred' }
  | { by: 'fixture'; purpose: FixturePurpose; withGrip: boolean };
export type EndShape = 'round' | 'flat' | 'threaded' | 'shouldered' | 'pin-hole' | 'cord' | 'hexagon';
export type FaceSurface = 'smooth' | 'fine-serrated' | 'serrated' | 'diamond' | 'rubber' | 'lined';
export type FixturePurpose =
  | 'flexure-3'
  | 'short-beam'
  | 'double-shear'
  | 'flexure-4-third'
  | 'flexure-4-half'
  | 'peel-90'
  | 'peel-180'
  | 'climbing-drum'
  | 'combined-compression'
  | 'sandwich-flatwise'
  | 'fracture-bend'
  | 'component-pull'
  | 'component-push';
export type Conditioning = { hours: number; temperatureC: number; humidityPct: number | null; standard: string };
export type Hazard =
  'fragments' | 'stored-energy' | 'biological' | 'pressure' | 'heat' | 'cold' | 'sharp-edges' | 'dust';
export type ReportStep = { step: number } | { significant: number };
export type MaterialView = { id: string; code: string; name: string; group: string; data: Material; version: number };
export type Material = {
  id: string;
  name: string;
  group: MaterialGroup;
  strengths: StrengthBand[];
  modulusMPa: { low: number; high: number } | null;
  breakStrain: { low: number; high: number } | null;
  brittle: boolean;
  source: string;
  confidence: string;
};
export type StrengthBand = {
  property: StrengthProperty;
  low: number;
  typical: number;
  high: number;
  unit: 'MPa' | 'N/mm' | 'MPa·√m';
  source: string;
  confidence: string;
};
export type NoticesView = { rows: NoticeView[]; next: string | null; unread: number };
export type NoticeView = {
  id: string;
  kind: string;
  path: string;
  subject: string;
  sentence: string;
  at: string;
  readAt: string | null;
};
export type NoticePreferences = { mail: 'at-once' | 'daily' | 'off' };
export type OpenSessionView = { id: string; openedAt: string; seenAt: string; agent: string; thisOne: boolean };
export type TokenView = {
  id: string;
  name: string;
  permissions: string[];
  createdAt: string;
  expiresAt: string;
  usedAt: string | null;
  token?: string;
};
export type PageOfPersonView = { rows: PersonView[]; next: string | null; total?: number };
export type PersonView = {
  email: string;
  roles: Role[];
  teams: TeamRef[];
  active: boolean;
  authorisations: { id: string; methodCode: string; designation: string; from: string; to: string | null }[];
  version: number;
  id: string;
  name: string;
};
export type Role = 'requester' | 'technician' | 'manager' | 'auditor';
export type TeamRef = { id: string; name: string };
export type PageOfTeamRef = { rows: TeamRef[]; next: string | null; total?: number };
export type RosterView = { shifts: RosterShiftView[]; closedDays: ClosedDay[] };
export type RosterShiftView = { id: string; person: PersonRef; startsAt: string; endsAt: string };
export type ClosedDay = { day: string; name: string };
export type SessionView = {
  person: { id: string; name: string; email: string; roles: Role[]; teams: TeamRef[] };
  permissions: string[];
  lab: { name: string; timeZone: string; now: string };
  demo: boolean;
};
export type DemoPerson = { email: string; name: string; role: Role; password: string };
export type LabSettingsView = {
  version: number;
  name: string;
  address: string;
  contact: string;
  timeZone: string;
  shifts: WeeklyShift[];
  freezeMin: number;
  horizonDays: number;
  planningSeconds: number;
  warmUpMin: number;
  warmUpAfterMin: number;
  assumedArrivalMin: number;
  calibrationVisitMin: number;
  shiftCheckValidMin: number;
  shiftCheckTolerancePct: number;
  calibrationNoticeDays: number;
  rampCPerMin: number;
  soakMin: number;
  matching: MatchSettings;
  objective: LabObjective;
  retention: Retention;
  demo: boolean;
};
export type WeeklyShift = { weekday: number; from: string; to: string; name: string };
export type MatchSettings = {
  forceMargin: number;
  hungWeightCaution: number;
  cellBandLow: number;
  cellBandHigh: number;
  clearanceMm: number;
  roomC: number;
  roomMinC: number;
  roomMaxC: number;
  guardFromJ: number;
  guardFragmentsFromJ: number;
  assumedStiffnessNPerMm: number;
  suitableFaces: {
    metal: FaceSurface[];
    plastic: FaceSurface[];
    composite: FaceSurface[];
    elastomer: FaceSurface[];
    foam: FaceSurface[];
    concrete: FaceSurface[];
    wood: FaceSurface[];
    film: FaceSurface[];
    ceramic: FaceSurface[];
    adhesive: FaceSurface[];
    packaging: FaceSurface[];
    textile: FaceSurface[];
  };
  changeMin: {
    frame: number;
    'load-cell': number;
    grip: number;
    'jaw-face': number;
    fixture: number;
    platen: number;
    adapter: number;
    extensometer: number;
    chamber: number;
    guard: number;
    transducer: number;
  };
  shiftCheckMin: number;
  weights: { changeoverPerMin: number; forceFit: number; scarce: number; accuracy: number; caution: number };
};
export type LabObjective = {
  kind: 'lab';
  perLateMin: number;
  perChangeoverMin: number;
  perMovedMin: number;
  perMovedFrame: number;
  perEndMin: number;
  perLoadHourSquared: number;
};
export type Retention = {
  endedTasksMonths: number;
  endedSessionsMonths: number;
  noticesMonths: number;
  deliveriesMonths: number;
  idempotencyKeysDays: number;
};
export type StatusView = { parts: StatusPart[]; at: string };
export type StatusPart = { part: string; state: 'well' | 'trouble'; sentence: string };
export type LandingView = {
  batches: { frameTag: string | null; startsAt: string | null; endsAt: string | null; sentence: string }[];
  finish50At: string | null;
  finish80At: string | null;
  computedInMs: number;
};
export type PlanView = {
  id: string;
  version: number;
  publishedAt: string;
  madeBy: string;
  cause: string;
  figures: PlanFigures;
  horizon: { from: string; to: string };
  freezeUntil: string;
  lanes: LaneView[];
  visits: BookingView[];
  late: LateView[];
  unplaced: { jobId: string; jobReference: string; requestId: string; title: string; reasons: string[] }[];
  held: { jobId: string; jobReference: string; requestId: string; title: string; why: string }[];
  pools: { pool: string; label: string; loadPct: number; binds: boolean }[];
  changes: PlanChangeView[];
  changedBy: { version: number; publishedAt: string } | null;
  stale: boolean;
};
export type PlanFigures = {
  weightedLatenessHours: number;
  lateJobs: number;
  changeoverHours: number;
  movedHours: number;
  jobs: number;
};
export type LaneView = {
  frame: { id: string; tag: string; name: string; capacityN: number | null; torqueNm: number | null; state: string };
  open: { startsAt: string; endsAt: string }[];
  down: { id: string; kind: string; startsAt: string; endsAt: string; why: string }[];
  bookings: BookingView[];
  load: { weekStartsAt: string; bookedHours: number; availableHours: number }[];
};
export type BookingView = {
  id: string;
  kind: 'job' | 'calibration-visit';
  jobId: string | null;
  jobReference: string | null;
  requestId: string | null;
  requestReference: string | null;
  title: string;
  state: 'waiting' | 'ready' | 'taken' | 'rigged' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted' | null;
  frameId: string | null;
  setupAt: string;
  startsAt: string;
  endsAt: string;
  changeoverMin: number;
  dueAt: string | null;
  lateHours: number;
  pinned: boolean;
  technicianId: string | null;
  train: { role: string; itemId: string; tag: string }[];
};
export type LateView = {
  jobId: string;
  jobReference: string;
  requestId: string;
  requestReference: string;
  title: string;
  dueAt: string;
  endsAt: string | null;
  lateHours: number;
  riskPct: number | null;
  causes: CauseView[];
};
export type CauseView = {
  kind: 'release' | 'technician' | 'item' | 'changeover' | 'calibration' | 'capacity' | 'calendar' | 'pin' | 'work';
  hours: number;
  sentence: string;
};
export type PlanChangeView = {
  jobId: string;
  jobReference: string;
  requestId: string;
  title: string;
  was: PlanPlace | null;
  is: PlanPlace | null;
  why: string;
};
export type PlanPlace = { frameTag: string; startsAt: string };
export type TaskView = {
  id: string;
  name: string;
  state: TaskState;
  progressPct: number;
  message: string;
  error: string | null;
  result?: { [name: string]: unknown } | null;
};
export type TaskState = 'waiting' | 'running' | 'done' | 'failed' | 'set-aside' | 'cancelled';
export type FitView = { frameId: string; fits: boolean; reasons: string[] };
export type WhyView = {
  jobId: string;
  whyThisFrame: string[];
  alternatives: { frameTag: string; sentence: string }[];
  causes: CauseView[];
};
export type TrialView = {
  id: string;
  name: string;
  basedOnVersion: number;
  state: 'open' | 'published' | 'dropped';
  edits: TrialEdit[];
  plan: PlanView | null;
  comparison: PlanComparison | null;
  refused: { edit: number; reasons: string[] }[];
  pending: boolean;
  stale: boolean;
  version: number;
};
export type TrialEdit =
  | { kind: 'move'; jobId: string; frameId: string; startsAt: string }
  | { kind: 'unpin'; jobId: string }
  | { kind: 'hold'; jobId: string; why: string }
  | { kind: 'unhold'; jobId: string }
  | { kind: 'frame-down'; frameId: string; startsAt: string; endsAt: string; why: string }
  | { kind: 'extra-shift'; frameId: string; personId: string; startsAt: string; endsAt: string }
  | { kind: 'extra-item'; likeItemId: string }
  | { kind: 'technician-off'; personId: string; startsAt: string; endsAt: string }
  | { kind: 'weight'; jobId: string; weight: number };
export type PlanComparison = {
  before: PlanFigures;
  after: PlanFigures;
  later: { jobId: string; jobReference: string; title: string; hours: number }[];
  earlier: { jobId: string; jobReference: string; title: string; hours: number }[];
  movedFrame: { jobId: string; jobReference: string; from: string; to: string }[];
};
export type PageOfRecordEventView = { rows: RecordEventView[]; next: string | null; total?: number };
export type RecordEventView = {
  seq: string;
  at: string;
  actor: PersonRef | null;
  kind: string;
  subjectKind: string;
  subjectId: string;
  before: { [name: string]: unknown } | null;
  after: { [name: string]: unknown } | null;
  why: string | null;
  hash: string;
};
export type ImportView = {
  dryRun: boolean;
  encoding: TextEncoding;
  lines: number;
  created: number;
  updated: number;
  unchanged: number;
  problems: { line: number; field: string; sentence: string }[];
};
export type TextEncoding = 'UTF-8' | 'UTF-16' | 'Windows-1252';
export type PageOfItemView = { rows: ItemView[]; next: string | null; total?: number };
export type ItemView = {
  id: string;
  tag: string;
  kind:
    | 'frame'
    | 'load-cell'
    | 'grip'
    | 'jaw-face'
    | 'fixture'
    | 'platen'
    | 'adapter'
    | 'extensometer'
    | 'chamber'
    | 'guard'
    | 'transducer';
  name: string;
  model: string;
  serialNumber: string;
  state: ItemState;
  place: string;
  fittedOn: { frameId: string; frameTag: string; role: string } | null;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrationIntervalMonths: number | null;
  calibrationStatus: CalibrationStatus;
  calibrationDueAt: string | null;
  details: { [name: string]: unknown };
  version: number;
};
export type ItemState = 'out-of-use' | 'in-service' | 'faulty';
export type RatingPoint = { temperatureC: number; rating: number };
export type Utility =
  'compressed-air' | 'hydraulics' | 'power-400v' | 'liquid-nitrogen' | 'cooling-water' | 'extraction';
export type ItemDetail = {
  calibrations: CalibrationView[];
  faults: FaultView[];
  windows: {
    id: string;
    kind: 'calibration-visit' | 'extra-shift' | 'down' | 'held';
    startsAt: string;
    endsAt: string;
    why: string;
  }[];
  shiftChecks: {
    at: string;
    reference: number;
    reading: number;
    unit: string;
    errorPct: number;
    passed: boolean;
    technician: PersonRef;
  }[];
  upcomingJobs: { jobId: string; reference: string; startsAt: string }[];
  id: string;
  tag: string;
  kind:
    | 'frame'
    | 'load-cell'
    | 'grip'
    | 'jaw-face'
    | 'fixture'
    | 'platen'
    | 'adapter'
    | 'extensometer'
    | 'chamber'
    | 'guard'
    | 'transducer';
  name: string;
  model: string;
  serialNumber: string;
  state: ItemState;
  place: string;
  fittedOn: { frameId: string; frameTag: string; role: string } | null;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrationIntervalMonths: number | null;
  calibrationStatus: CalibrationStatus;
  calibrationDueAt: string | null;
  details: { [name: string]: unknown };
  version: number;
};
export type FaultView = {
  id: string;
  what: string;
  openedBy: PersonRef;
  openedAt: string;
  closedAt: string | null;
  remedy: string | null;
};
export type RigView = {
  frame: { id: string; tag: string; name: string };
  links: {
    role: string;
    itemId: string;
    tag: string;
    name: string;
    kind:
      | 'frame'
      | 'load-cell'
      | 'grip'
      | 'jaw-face'
      | 'fixture'
      | 'platen'
      | 'adapter'
      | 'extensometer'
      | 'chamber'
      | 'guard'
      | 'transducer';
  }[];
  version: number;
};
export type ReportLine = {
  id: string;
  number: string;
  revision: number;
  state: ReportState;
  request: { id: string; reference: string; title: string };
  team: string;
  issuedAt: string | null;
  authorisedBy: PersonRef | null;
};
export type ReportState = 'draft' | 'issuing' | 'issued' | 'superseded';
export type ReportView = {
  document: ReportDocument;
  missing: MissingLine[];
  remarks: ReportRemarks;
  preparedBy: PersonRef;
  preparedAt: string;
  sha256: string | null;
  hasFile: boolean;
  version: number;
  id: string;
  number: string;
  revision: number;
  state: ReportState;
  request: { id: string; reference: string; title: string };
  team: string;
  issuedAt: string | null;
  authorisedBy: PersonRef | null;
};
export type ReportDocument = {
  title: string;
  number: string;
  revision: number;
  amendment: string | null;
  replaces: string | null;
  laboratory: { name: string; address: string; place: string; contact: string };
  customer: { team: string; requester: string; contact: string };
  request: { reference: string; title: string; purpose: string };
  summary: string[];
  batches: ReportBatch[];
  sampling: string;
  deviations: string[];
  opinions: string[];
  conformity: { specification: string; statement: string; rule: string; detail: string }[];
  uncertaintyNote: string;
  relatesOnlyToItems: string;
  dates: { received: string | null; testedFrom: string | null; testedTo: string | null; issued: string | null };
  external: string;
  authorisedBy: { name: string; function: string } | null;
  verifyPath: string;
};
export type ReportBatch = {
  results: BatchResults;
  curves: CurveView[];
  stressStrain?: CurveView[];
  method: { designation: string; version: number; title: string };
  specimens: { label: string; description: string; condition: string; fate: string; sizes?: MeasuredSize[] }[];
  conditions: {
    temperatureC: number | null;
    humidityPct: number | null;
    speed: string;
    conditioning: string;
    remarks: string;
  };
  items: { role: string; tag: string; name: string; calibration: string; certificate: string; dueAt: string | null }[];
  technician: string;
};
export type BatchResults = {
  batchId: string;
  label: string;
  method: string;
  material: string | null;
  columns: {
    key: string;
    label: string;
    unit: string;
    step: number | null;
    digits?: number | null;
    definition?: string;
  }[];
  rows: {
    specimenId: string;
    label: string;
    fate: string;
    invalidWhy: string | null;
    missing?: { key: string; label: string; why: string | null }[];
    values: { [name: string]: { value: number; flags: string[]; revision: number } | null };
  }[];
  statistics: StatisticsView[];
  conformity: {
    specification: string;
    statement: 'conforms' | 'does not conform' | 'cannot be stated';
    rule: string;
    detail: string;
  } | null;
};
export type StatisticsView = {
  key: string;
  label: string;
  unit: string;
  n: number;
  mean: number;
  standardDeviation: number | null;
  cvPct: number | null;
  ci95: { low: number; high: number } | null;
  min: number;
  max: number;
  median: number;
  possibleOutliers: string[];
  toleranceBound: { low: number; k: number; sentence: string } | null;
  uncertainty: {
    expanded: number;
    k: number;
    degreesOfFreedom?: number | null;
    budget: { source: string; value: number; contributionPct: number }[];
  } | null;
};
export type CurveView = {
  id: string;
  specimenLabel: string;
  columns: { key: string; label: string; unit: string }[];
  points: { [name: string]: number[] };
  marks: { key: string; label: string; x: number; y: number }[];
  sha256: string;
  fileName: string;
  rows: number;
};
export type MeasuredSize = { key: string; label: string; unit: string; readings: number[]; mean: string };
export type MissingLine = { clause: string; what: string; how: string };
export type ReportRemarks = {
  title?: string;
  deviations?: string;
  opinions?: string;
  sampling?: string;
  external?: string;
};
export type VerifyView = {
  number: string;
  revision: number;
  known: boolean;
  matches: boolean | null;
  supersededBy: number | null;
  issuedAt: string | null;
};
export type PreviewView = {
  ask: Ask;
  items: {
    [name: string]: {
      tag: string;
      name: string;
      kind:
        | 'frame'
        | 'load-cell'
        | 'grip'
        | 'jaw-face'
        | 'fixture'
        | 'platen'
        | 'adapter'
        | 'extensometer'
        | 'chamber'
        | 'guard'
        | 'transducer';
    };
  };
  drawings: { frameId: string; segments: TrainSegment[] }[];
  computedInMs: number;
  needs: Needs;
  candidates: Candidate[];
  refusals: FrameRefusal[];
  advice: Advice[];
  ladder: ForceLadder | null;
};
export type Ask = {
  methodId: string;
  methodVersion: number;
  materialId: string | null;
  strength: Band | null;
  peak: Band | null;
  modulusMPa: Band | null;
  geometry: Geometry;
  endShape: EndShape;
  specimens: number;
  temperatureC: number | null;
  results: string[];
  speedMmPerMin: number | null;
  travelMm: number | null;
  options: AskOptions;
  hazards: Hazard[];
  confirmed: string[];
};
export type Band = { low: number; high: number };
export type Geometry = {
  shape: Shape;
  widthMm?: number;
  thicknessMm?: number;
  diameterMm?: number;
  outerDiameterMm?: number;
  innerDiameterMm?: number;
  areaMm2?: number;
  parallelLengthMm?: number;
  gaugeLengthMm?: number;
  gripSeparationMm?: number;
  heightMm?: number;
  lengthMm?: number;
  spanMm?: number;
  overlapMm?: number;
  crackLengthMm?: number;
  endWidthMm?: number;
  endThicknessMm?: number;
};
export type AskOptions = { contactExtensometer: boolean; crossheadStrain: boolean; lowerForceClass: boolean };
export type TrainSegment = {
  role:
    | 'load-cell'
    | 'extensometer'
    | 'chamber'
    | 'guard'
    | 'upper-adapter'
    | 'upper-adapter-2'
    | 'upper'
    | 'ends'
    | 'lower'
    | 'lower-adapter'
    | 'lower-adapter-2'
    | 'faces'
    | 'thermocouple'
    | 'crosshead'
    | 'specimen'
    | 'base';
  itemId: string | null;
  label: string;
  ratingText: string;
  lengthMm: number;
  widthMm: number;
  beside: boolean;
};
export type Needs = {
  methodId: string;
  methodVersion: number;
  testType: TestType;
  direction: Direction;
  loadUnit: 'N' | 'N·m';
  peakLow: Figure;
  peakHigh: Figure;
  smallest: Figure;
  speeds: { stage: 'whole' | 'modulus' | 'yield' | 'to-break'; speed: Figure }[];
  control: ControlMode;
  forceRate: Figure | null;
  travel: Figure;
  storedEnergy: Figure;
  strain: StrainNeed;
  temperature: Figure;
  chamber: boolean;
  specimen: SpecimenNeed;
  ends: Ends;
  forceClass: ClassNeed;
  conditioning: Figure | null;
  hazards: Hazard[];
  guardAlways: boolean;
  brittle: boolean;
  materialGroup:
    | 'metal'
    | 'plastic'
    | 'composite'
    | 'elastomer'
    | 'foam'
    | 'concrete'
    | 'wood'
    | 'film'
    | 'ceramic'
    | 'adhesive'
    | 'packaging'
    | 'textile'
    | null;
  specimens: number;
  minPerSpecimen: number;
  setupMin: number;
  alignmentMaxBendingPct: number | null;
  toConfirm: string[];
};
export type Figure = {
  value: number;
  unit: string;
  formula: string;
  inputs: { name: string; value: number; unit: string }[];
  source: string;
  assumed?: true;
};
export type ControlMode = 'position' | 'force' | 'strain';
export type StrainNeed = {
  how: 'extensometer' | 'crosshead' | 'none';
  demanded: boolean;
  contactAllowed: boolean;
  rule: StrainRule | null;
  gaugeLength: Figure | null;
  extension: Figure | null;
  smallestExtension: Figure | null;
  strainLengthMm: number | null;
};
export type SpecimenNeed = {
  endShape: EndShape;
  gripThicknessMm: number;
  gripWidthMm: number;
  freeLengthMm: number;
  bodyThicknessMm: number;
  bodyWidthMm: number;
  totalLengthMm: number | null;
  spanMm: number | null;
};
export type Candidate = {
  verdicts: Verdict[];
  windows: TimeWindow[];
  score: number;
  scoreParts: { part: ScorePart; points: number; sentence: string }[];
  changeover: Changeover;
  limitStops: LimitStops;
  soakMin: number;
  rampMin: number;
  hungMassKg: number;
  governing: {
    rule:
      | 'temperature'
      | 'speed'
      | 'strain'
      | 'frame-capacity'
      | 'cell-within-frame'
      | 'channels'
      | 'cell-capacity'
      | 'weakest-link'
      | 'verified-range'
      | 'calibration-in-force'
      | 'cell-band'
      | 'couplings'
      | 'test-space'
      | 'travel'
      | 'specimen-fit'
      | 'face-suits'
      | 'utilities'
      | 'guarding'
      | 'frame-state'
      | 'qualification';
    itemId: string;
    ratingN: number;
  };
  frameId: string;
  cellAt: 'crosshead' | 'base';
  links: Link[];
};
export type Verdict = {
  rule:
    | 'temperature'
    | 'speed'
    | 'strain'
    | 'frame-capacity'
    | 'cell-within-frame'
    | 'channels'
    | 'cell-capacity'
    | 'weakest-link'
    | 'verified-range'
    | 'calibration-in-force'
    | 'cell-band'
    | 'couplings'
    | 'test-space'
    | 'travel'
    | 'specimen-fit'
    | 'face-suits'
    | 'utilities'
    | 'guarding'
    | 'frame-state'
    | 'qualification';
  sentence: string;
  source: string;
  reason: string;
  outcome: 'pass' | 'caution' | 'fail';
  items: string[];
  required: string | number | null;
  available: string | number | null;
  margin: number | null;
  unit: string | null;
};
export type TimeWindow = { startMs: number; endMs: number };
export type ScorePart = 'changeover' | 'force-fit' | 'scarce-items' | 'accuracy' | 'cautions';
export type Changeover = { minutes: number; steps: ChangeoverStep[] };
export type ChangeoverStep = {
  step: 'take-off' | 'keep' | 'put-on' | 'warm' | 'check';
  itemId: string | null;
  minutes: number;
  why: string;
};
export type LimitStops = { startOpeningMm: number; lowerStopMm: number; upperStopMm: number };
export type Link = { role: LinkRole; itemId: string; poolKey: string; pool: string[] };
export type LinkRole =
  | 'load-cell'
  | 'extensometer'
  | 'chamber'
  | 'guard'
  | 'upper-adapter'
  | 'upper-adapter-2'
  | 'upper'
  | 'ends'
  | 'lower'
  | 'lower-adapter'
  | 'lower-adapter-2'
  | 'faces'
  | 'thermocouple';
export type FrameRefusal = { frameId: string; failing: Verdict[]; nearest: Train | null };
export type Train = { frameId: string; cellAt: 'crosshead' | 'base'; links: Link[] };
export type Advice = {
  kind: AdviceKind;
  sentence: string;
  opensFrames: string[];
  apply:
    | { change: 'item'; itemId: string; set: { [name: string]: unknown } }
    | { change: 'new-item'; item: Item }
    | { change: 'ask'; field: string; value: unknown }
    | { change: 'technician'; technicianId: string; methodId: string };
};
export type AdviceKind = 'free' | 'repair' | 'calibrate' | 'buy' | 'change-request' | 'authorise';
export type Item =
  Frame | LoadCell | Grip | JawFace | Fixture | Platen | Adapter | Extensometer | Chamber | Guard | Transducer;
export type Frame = {
  kind: 'frame';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: FrameDetails;
};
export type Calibration = {
  direction: CalibratedQuantity;
  standard: string;
  className: string;
  from: number;
  to: number;
  validFromMs: number;
  dueMs: number;
};
export type FrameDetails = {
  tensionCapacityN: number;
  compressionCapacityN: number;
  torqueCapacityNm: number;
  openingMinMm: number;
  openingMaxMm: number;
  travelMm: number;
  columnClearanceMm: number;
  speedMinMmPerMin: number;
  speedMaxMmPerMin: number;
  speedLimits: { aboveForceN: number; speedMaxMmPerMin: number }[];
  rotationMinDegPerMin: number;
  rotationMaxDegPerMin: number;
  stiffnessNPerMm: number | null;
  crossheadCoupling: Coupling;
  baseCoupling: Coupling;
  cellPositions: CellPosition[];
  channels: { kind: ChannelKind; count: number }[];
  utilitiesAtFrame: Utility[];
  guardEnergyJ: number;
  guardInterlocked: boolean;
  controlModes: ControlMode[];
};
export type Coupling = { type: CouplingType; sizeMm: number; gender: 'male' | 'female' | 'plain' };
export type CouplingType = 'thread' | 'clevis' | 'flange' | 'slot' | 'shaft';
export type CellPosition = 'crosshead' | 'base';
export type ChannelKind = 'torque' | 'temperature' | 'force' | 'strain' | 'video' | 'displacement';
export type LoadCell = {
  kind: 'load-cell';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: LoadCellDetails;
};
export type LoadCellDetails = {
  capacityN: number;
  torqueCapacityNm: number;
  directions: Direction[];
  overloadPct: number;
  frameCoupling: Coupling;
  specimenCoupling: Coupling;
};
export type Grip = {
  kind: 'grip';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: GripDetails;
};
export type GripDetails = {
  action: GripAction;
  acceptedEnds: EndShape[];
  openingMinMm: number;
  openingMaxMm: number;
  faceWidthMm: number;
  gripLengthMm: number;
  faceSlot: string | null;
  fixedFaceShape: 'flat' | 'vee' | 'line' | 'curved' | null;
  fixedFaceSurface: 'smooth' | 'fine-serrated' | 'serrated' | 'diamond' | 'rubber' | 'lined' | null;
  side: Side;
  coupling: Coupling;
  lowerMassKg: number | null;
  lowerLengthMm: number | null;
  outsideWidthMm: number;
};
export type GripAction =
  'threaded' | 'shouldered' | 'pin' | 'wedge' | 'hydraulic' | 'pneumatic' | 'screw' | 'roller' | 'capstan' | 'collet';
export type Side = 'upper' | 'lower' | 'pair';
export type JawFace = {
  kind: 'jaw-face';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: JawFaceDetails;
};
export type JawFaceDetails = {
  slot: string;
  shape: FaceShape;
  surface: FaceSurface;
  widthMm: number;
  openingMinMm: number;
  openingMaxMm: number;
};
export type FaceShape = 'flat' | 'vee' | 'line' | 'curved';
export type Fixture = {
  kind: 'fixture';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: FixtureDetails;
};
export type FixtureDetails = {
  purposes: FixturePurpose[];
  spanMinMm: number | null;
  spanMaxMm: number | null;
  noseRadiusMm: number | null;
  supportRadiusMm: number | null;
  specimenWidthMaxMm: number;
  specimenThicknessMaxMm: number;
  side: Side;
  coupling: Coupling;
  lowerMassKg: number | null;
  lowerLengthMm: number | null;
  outsideWidthMm: number;
};
export type Platen = {
  kind: 'platen';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: PlatenDetails;
};
export type PlatenDetails = {
  diameterMm: number;
  sphericalSeat: boolean;
  side: Side;
  coupling: Coupling;
  lowerMassKg: number | null;
  lowerLengthMm: number | null;
  outsideWidthMm: number;
};
export type Adapter = {
  kind: 'adapter';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: AdapterDetails;
};
export type AdapterDetails = { ends: [Coupling, Coupling] };
export type Extensometer = {
  kind: 'extensometer';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: ExtensometerDetails;
};
export type ExtensometerDetails = {
  gaugeLengthsMm: number[];
  travelPlusMm: number;
  travelMinusMm: number;
  measures: 'axial' | 'deflection';
  contact: boolean;
  channel: ChannelKind;
  specimenMinMm: number;
  specimenMaxMm: number;
};
export type Chamber = {
  kind: 'chamber';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: ChamberDetails;
};
export type ChamberDetails = {
  minC: number;
  maxC: number;
  insideWidthMm: number;
  insideHeightMm: number;
  fitsClearanceMinMm: number;
  fitsClearanceMaxMm: number;
  rampCPerMin: number;
  soakBaseMin: number;
  soakMinPerMm: number;
};
export type Guard = {
  kind: 'guard';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: GuardDetails;
};
export type GuardDetails = {
  energyJ: number;
  interlocked: boolean;
  fitsClearanceMinMm: number;
  fitsClearanceMaxMm: number;
};
export type Transducer = {
  kind: 'transducer';
  id: string;
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  massKg: number;
  lengthMm: number;
  ratings: { tension?: RatingPoint[]; compression?: RatingPoint[]; torque?: RatingPoint[] };
  temperatureMinC: number;
  temperatureMaxC: number;
  utilities: Utility[];
  needsCalibration: boolean;
  calibrations: Calibration[];
  heldWindows: TimeWindow[];
  details: TransducerDetails;
};
export type TransducerDetails = {
  measures: 'temperature' | 'displacement';
  channel: ChannelKind;
  rangeFrom: number;
  rangeTo: number;
};
export type ForceLadder = {
  unit: 'N' | 'N·m';
  min: number;
  max: number;
  marks: LadderMark[];
  governedBy: string | null;
};
export type LadderMark = {
  kind: 'frame' | 'hung-weight' | 'cell-band' | 'band' | 'smallest' | 'rating' | 'verified';
  label: string;
  itemId: string | null;
  from: number;
  to: number;
  governs: boolean;
};
export type PageOfRequestLine = { rows: RequestLine[]; next: string | null; total?: number };
export type RequestLine = {
  id: string;
  reference: string;
  title: string;
  state:
    | 'closed'
    | 'draft'
    | 'submitted'
    | 'returned'
    | 'accepted'
    | 'in-work'
    | 'in-review'
    | 'reported'
    | 'declined'
    | 'withdrawn';
  team: TeamRef;
  requester: PersonRef;
  methods: string[];
  specimens: number;
  specimensMissing: number;
  dueAt: string | null;
  waitsFor: string;
  promise50At: string | null;
  promise80At: string | null;
  late: boolean;
  unread?: number;
};
export type RequestView = {
  importedAs: string | null;
  purpose: string;
  specimensAt: string | null;
  weight: number;
  disposal: 'return' | 'keep-90-days' | 'discard';
  conformity: ConformityAsk | null;
  review: {
    methodAgreed: boolean;
    capabilityShown: boolean;
    specimensAgreed: boolean;
    disposalAgreed: boolean;
    decisionRuleAgreed?: boolean;
    differences?: string;
    note?: string;
    by: PersonRef;
    at: string;
  } | null;
  promiseNote: string | null;
  batches: BatchView[];
  messages: { id: string; author: PersonRef; body: string; at: string }[];
  moves: RequestMove[];
  reports: { id: string; number: string; revision: number; state: string }[];
  createdAt: string;
  submittedAt: string | null;
  acceptedAt: string | null;
  version: number;
  id: string;
  reference: string;
  title: string;
  state:
    | 'closed'
    | 'draft'
    | 'submitted'
    | 'returned'
    | 'accepted'
    | 'in-work'
    | 'in-review'
    | 'reported'
    | 'declined'
    | 'withdrawn';
  team: TeamRef;
  requester: PersonRef;
  methods: string[];
  specimens: number;
  specimensMissing: number;
  dueAt: string | null;
  waitsFor: string;
  promise50At: string | null;
  promise80At: string | null;
  late: boolean;
  unread?: number;
};
export type ConformityAsk = {
  resultKey: string;
  lower: number | null;
  upper: number | null;
  unit: string;
  of: 'each' | 'mean';
  rule: 'simple' | 'guarded';
  specification: string;
};
export type BatchView = {
  id: string;
  position: number;
  label: string;
  method: { id: string; code: string; version: number; designation: string; title: string; testType: string };
  material: { id: string; name: string } | null;
  specimenCount: number;
  ask: { [name: string]: unknown };
  asTyped: { [name: string]: { value: string; unit: string } };
  specimens: SpecimenView[];
  job: {
    id: string;
    reference: string;
    state: 'waiting' | 'ready' | 'taken' | 'rigged' | 'running' | 'paused' | 'blocked' | 'done' | 'aborted';
    why: string | null;
    frameTag: string | null;
    startsAt: string | null;
    endsAt: string | null;
  } | null;
};
export type SpecimenView = {
  id: string;
  label: string;
  position: number;
  fate: SpecimenFate;
  invalidWhy: string | null;
  arrivedAt: string | null;
  condition: string;
  conditioningFrom: string | null;
  dimensions: { [name: string]: number[] };
  version: number;
};
export type RequestMove =
  'return' | 'submit' | 'accept' | 'decline' | 'withdraw' | 'begin' | 'review' | 'report' | 'reopen' | 'close';
export type HistoryView = {
  method: string;
  key: string;
  label: string;
  unit: string;
  points: HistoryPoint[];
  chart: {
    centre: number;
    upper: number;
    lower: number;
    movingRangeUpper: number;
    signals: { index: number; sentence: string }[];
  } | null;
};
export type HistoryPoint = {
  at: string;
  requestReference: string;
  jobReference: string;
  batchLabel: string;
  material: string | null;
  cellTag: string | null;
  mean: number;
  standardDeviation: number | null;
  n: number;
};
export type WebhookView = {
  id: string;
  addedAt: string;
  lastState: 'waiting' | 'failed' | 'delivered' | null;
  secret?: string;
  url: string;
  kinds: (
    | 'request/submitted'
    | 'request/returned'
    | 'request/accepted'
    | 'request/declined'
    | 'request/withdrawn'
    | 'request/promise-moved'
    | 'request/in-work'
    | 'request/in-review'
    | 'request/reported'
    | 'request/closed'
    | 'job/taken'
    | 'job/running'
    | 'job/blocked'
    | 'job/done'
    | 'job/aborted'
    | 'plan/published'
    | 'report/issued'
    | 'item/calibrated'
    | 'item/fault-opened'
    | 'item/fault-closed'
    | 'nonconformity/opened'
  )[];
};
export type DeliveryView = {
  id: string;
  eventId: string;
  kind: string;
  state: DeliveryState;
  tries: number;
  announcedAt: string;
  lastStatus: number | null;
  trouble: string | null;
  nextTryAt: string | null;
  deliveredAt: string | null;
};
export type DeliveryState = 'waiting' | 'failed' | 'delivered';
export interface Operations {
  'GET /live': { parameters: {}; body: undefined; answer: string; versioned: false };
  'GET /tasks/{id}': { parameters: { id: string | number }; body: undefined; answer: TaskView; versioned: false };
  'POST /tasks/{id}/cancel': {
    parameters: { id: string | number };
    body: undefined;
    answer: TaskView;
    versioned: false;
  };
  'POST /session': { parameters: {}; body: SignInDto; answer: SessionView; versioned: false };
  'GET /session': { parameters: {}; body: undefined; answer: SessionView; versioned: false };
  'DELETE /session': {
    parameters: { all?: boolean | '' | null };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /session/demo': { parameters: {}; body: undefined; answer: DemoPerson[]; versioned: false };
  'GET /own/sessions': { parameters: {}; body: undefined; answer: OpenSessionView[]; versioned: false };
  'DELETE /own/sessions/{id}': {
    parameters: { id: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'PUT /own/password': { parameters: {}; body: OwnPasswordDto; answer: undefined; versioned: false };
  'GET /own/tokens': { parameters: {}; body: undefined; answer: TokenView[]; versioned: false };
  'POST /own/tokens': { parameters: {}; body: NewTokenDto; answer: TokenView; versioned: false };
  'DELETE /own/tokens/{id}': {
    parameters: { id: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /people': { parameters: {}; body: undefined; answer: PageOfPersonView; versioned: false };
  'POST /people': { parameters: {}; body: NewPersonDto; answer: PersonView; versioned: false };
  'GET /people/{id}': { parameters: { id: string | number }; body: undefined; answer: PersonView; versioned: false };
  'PATCH /people/{id}': {
    parameters: { id: string | number };
    body: ChangePersonDto;
    answer: PersonView;
    versioned: true;
  };
  'POST /people/{id}/authorisations': {
    parameters: { id: string | number };
    body: AuthorisationDto;
    answer: PersonView;
    versioned: false;
  };
  'DELETE /people/{id}/authorisations/{authorisationId}': {
    parameters: { id: string | number; authorisationId: string | number };
    body: undefined;
    answer: PersonView;
    versioned: false;
  };
  'GET /teams': { parameters: {}; body: undefined; answer: PageOfTeamRef; versioned: false };
  'POST /teams': { parameters: {}; body: NewTeamDto; answer: TeamRef; versioned: false };
  'PATCH /teams/{id}': { parameters: { id: string | number }; body: NewTeamDto; answer: TeamRef; versioned: false };
  'GET /roster': {
    parameters: { from?: string | '' | null; to?: string | '' | null };
    body: undefined;
    answer: RosterView;
    versioned: false;
  };
  'POST /roster': { parameters: {}; body: RosterShiftDto; answer: { id: string }; versioned: false };
  'DELETE /roster/{id}': { parameters: { id: string | number }; body: undefined; answer: undefined; versioned: false };
  'POST /roster/closed-days': { parameters: {}; body: ClosedDayDto; answer: undefined; versioned: false };
  'DELETE /roster/closed-days/{day}': {
    parameters: { day: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /settings': { parameters: {}; body: undefined; answer: LabSettingsView; versioned: false };
  'PUT /settings': { parameters: {}; body: LabSettingsDto; answer: LabSettingsView; versioned: true };
  'GET /session/ways': { parameters: {}; body: undefined; answer: { signOn: boolean }; versioned: false };
  'GET /status': { parameters: {}; body: undefined; answer: StatusView; versioned: false };
  'GET /plan': { parameters: {}; body: undefined; answer: PlanView; versioned: false };
  'POST /plan/replan': { parameters: {}; body: undefined; answer: TaskView; versioned: false };
  'POST /plan/help': { parameters: {}; body: undefined; answer: TaskView; versioned: false };
  'GET /plan/fit': {
    parameters: { jobId: string; startsAt?: string | '' | null; trialId?: string | '' | null };
    body: undefined;
    answer: FitView[];
    versioned: false;
  };
  'GET /plan/jobs/{id}/why': {
    parameters: { id: string | number };
    body: undefined;
    answer: WhyView;
    versioned: false;
  };
  'POST /plan/pins': { parameters: {}; body: PinDto; answer: undefined; versioned: false };
  'DELETE /plan/pins/{jobId}': {
    parameters: { jobId: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'POST /plan/holds': { parameters: {}; body: HoldDto; answer: undefined; versioned: false };
  'DELETE /plan/holds/{jobId}': {
    parameters: { jobId: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /trials': { parameters: {}; body: undefined; answer: TrialView[]; versioned: false };
  'POST /trials': { parameters: {}; body: NewTrialDto; answer: TrialView; versioned: false };
  'GET /trials/{id}': { parameters: { id: string | number }; body: undefined; answer: TrialView; versioned: false };
  'DELETE /trials/{id}': { parameters: { id: string | number }; body: undefined; answer: undefined; versioned: false };
  'POST /trials/{id}/edits': {
    parameters: { id: string | number };
    body: TrialEditDto;
    answer: TrialView;
    versioned: false;
  };
  'DELETE /trials/{id}/edits/{index}': {
    parameters: { id: string | number; index: string | number };
    body: undefined;
    answer: TrialView;
    versioned: false;
  };
  'POST /trials/{id}/replan': {
    parameters: { id: string | number };
    body: undefined;
    answer: TrialView;
    versioned: false;
  };
  'POST /trials/{id}/publish': {
    parameters: { id: string | number };
    body: undefined;
    answer: TrialView;
    versioned: false;
  };
  'POST /matching/landing': { parameters: {}; body: LandingDto; answer: LandingView; versioned: false };
  'GET /items/export.csv': {
    parameters: {
      kind?:
        | (
            | 'frame'
            | 'load-cell'
            | 'grip'
            | 'jaw-face'
            | 'fixture'
            | 'platen'
            | 'adapter'
            | 'extensometer'
            | 'chamber'
            | 'guard'
            | 'transducer'
          )
        | ''
        | null;
    };
    body: undefined;
    answer: string;
    versioned: false;
  };
  'POST /items/import': {
    parameters: { dryRun?: boolean | '' | null };
    body: Blob;
    answer: ImportView;
    versioned: false;
  };
  'GET /items': {
    parameters: {
      kind?:
        | (
            | 'frame'
            | 'load-cell'
            | 'grip'
            | 'jaw-face'
            | 'fixture'
            | 'platen'
            | 'adapter'
            | 'extensometer'
            | 'chamber'
            | 'guard'
            | 'transducer'
          )
        | ''
        | null;
      status?: ('not-needed' | 'in-force' | 'due-soon' | 'overdue' | 'never' | 'out-of-use') | '' | null;
      q?: string | '' | null;
      cursor?: string | '' | null;
    };
    body: undefined;
    answer: PageOfItemView;
    versioned: false;
  };
  'POST /items': { parameters: {}; body: SaveItemDto; answer: ItemDetail; versioned: false };
  'GET /items/{id}': { parameters: { id: string | number }; body: undefined; answer: ItemDetail; versioned: false };
  'PATCH /items/{id}': { parameters: { id: string | number }; body: SaveItemDto; answer: ItemDetail; versioned: true };
  'POST /items/{id}/state': {
    parameters: { id: string | number };
    body: ItemStateDto;
    answer: ItemDetail;
    versioned: false;
  };
  'POST /items/{id}/faults': {
    parameters: { id: string | number };
    body: FaultDto;
    answer: ItemDetail;
    versioned: false;
  };
  'POST /faults/{id}/close': {
    parameters: { id: string | number };
    body: CloseFaultDto;
    answer: ItemDetail;
    versioned: false;
  };
  'POST /items/{id}/windows': {
    parameters: { id: string | number };
    body: WindowDto;
    answer: ItemDetail;
    versioned: false;
  };
  'DELETE /windows/{id}': { parameters: { id: string | number }; body: undefined; answer: undefined; versioned: false };
  'GET /rigs': { parameters: {}; body: undefined; answer: RigView[]; versioned: false };
  'PUT /rigs/{frameId}': { parameters: { frameId: string | number }; body: RigDto; answer: RigView; versioned: true };
  'POST /items/{id}/calibrations': {
    parameters: { id: string | number };
    body: RecordCalibrationDto;
    answer: EnteredCalibration;
    versioned: false;
  };
  'POST /calibrations/evaluate': { parameters: {}; body: EvaluateDto; answer: EvaluationView; versioned: false };
  'GET /calibration/due': {
    parameters: { days?: string | '' | null };
    body: undefined;
    answer: DueLine[];
    versioned: false;
  };
  'GET /items/{id}/impact': {
    parameters: { id: string | number; since?: string | '' | null };
    body: undefined;
    answer: ImpactView;
    versioned: false;
  };
  'POST /items/{id}/nonconformity': {
    parameters: { id: string | number };
    body: OpenNonconformityDto;
    answer: NonconformityView;
    versioned: false;
  };
  'GET /nonconformities': { parameters: {}; body: undefined; answer: NonconformityView[]; versioned: false };
  'PATCH /nonconformities/{id}': {
    parameters: { id: string | number };
    body: DecideNonconformityDto;
    answer: NonconformityView;
    versioned: true;
  };
  'GET /methods': { parameters: {}; body: undefined; answer: MethodView[]; versioned: false };
  'POST /methods': { parameters: {}; body: SaveMethodDto; answer: MethodView; versioned: false };
  'GET /methods/{id}': {
    parameters: { id: string | number };
    body: undefined;
    answer: {
      id: string;
      code: string;
      version: number;
      designation: string;
      title: string;
      testType: string;
      state: 'offered' | 'retired';
      data: Method;
      versions: MethodView[];
    };
    versioned: false;
  };
  'GET /materials': { parameters: {}; body: undefined; answer: MaterialView[]; versioned: false };
  'POST /materials': { parameters: {}; body: SaveMaterialDto; answer: MaterialView; versioned: false };
  'POST /matching/preview': { parameters: {}; body: PreviewDto; answer: PreviewView; versioned: false };
  'GET /requests/export.csv': { parameters: {}; body: undefined; answer: string; versioned: false };
  'POST /requests/import': {
    parameters: { dryRun?: boolean | '' | null };
    body: Blob;
    answer: ImportView;
    versioned: false;
  };
  'GET /requests': {
    parameters: {
      state?: string | readonly string[] | '' | null;
      mine?: boolean | '' | null;
      q?: string | '' | null;
      cursor?: string | '' | null;
    };
    body: undefined;
    answer: PageOfRequestLine;
    versioned: false;
  };
  'POST /requests': { parameters: {}; body: SaveRequestDto; answer: RequestView; versioned: false };
  'GET /requests/{id}': { parameters: { id: string | number }; body: undefined; answer: RequestView; versioned: false };
  'PATCH /requests/{id}': {
    parameters: { id: string | number };
    body: SaveRequestDto;
    answer: RequestView;
    versioned: true;
  };
  'POST /requests/{id}/submit': {
    parameters: { id: string | number };
    body: undefined;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/withdraw': {
    parameters: { id: string | number };
    body: PerhapsReasonDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/copy': {
    parameters: { id: string | number };
    body: undefined;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/messages': {
    parameters: { id: string | number };
    body: MessageDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/return': {
    parameters: { id: string | number };
    body: ReasonDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/decline': {
    parameters: { id: string | number };
    body: ReasonDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/accept': {
    parameters: { id: string | number };
    body: ReviewDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/reopen': {
    parameters: { id: string | number };
    body: ReasonDto;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/close': {
    parameters: { id: string | number };
    body: undefined;
    answer: RequestView;
    versioned: false;
  };
  'POST /requests/{id}/arrivals': {
    parameters: { id: string | number };
    body: ArrivalDto;
    answer: RequestView;
    versioned: false;
  };
  'GET /bench': { parameters: {}; body: undefined; answer: BenchView; versioned: false };
  'POST /bench/take': { parameters: {}; body: TakeDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/specimens/{sid}/curve': {
    parameters: { id: string | number; sid: string | number; name: string };
    body: Blob;
    answer: CurveProposalView;
    versioned: false;
  };
  'POST /jobs/{id}/specimens/{sid}/curve/confirm': {
    parameters: { id: string | number; sid: string | number };
    body: CurveConfirmDto;
    answer: JobView;
    versioned: false;
  };
  'GET /jobs/{id}': { parameters: { id: string | number }; body: undefined; answer: JobView; versioned: false };
  'POST /jobs/{id}/confirm': {
    parameters: { id: string | number };
    body: ConfirmDto;
    answer: JobView;
    versioned: false;
  };
  'POST /jobs/{id}/stand-in': {
    parameters: { id: string | number };
    body: StandInDto;
    answer: JobView;
    versioned: false;
  };
  'POST /jobs/{id}/shift-check': {
    parameters: { id: string | number };
    body: ShiftCheckDto;
    answer: JobView;
    versioned: false;
  };
  'POST /jobs/{id}/tick': { parameters: { id: string | number }; body: TickDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/start': { parameters: { id: string | number }; body: undefined; answer: JobView; versioned: false };
  'POST /jobs/{id}/pause': { parameters: { id: string | number }; body: WhyDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/resume': { parameters: { id: string | number }; body: undefined; answer: JobView; versioned: false };
  'POST /jobs/{id}/finish': { parameters: { id: string | number }; body: FinishDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/block': { parameters: { id: string | number }; body: BlockDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/give-back': { parameters: { id: string | number }; body: WhyDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/unblock': { parameters: { id: string | number }; body: WhyDto; answer: JobView; versioned: false };
  'POST /jobs/{id}/abort': { parameters: { id: string | number }; body: WhyDto; answer: JobView; versioned: false };
  'PUT /jobs/{id}/specimens/{sid}/dimensions': {
    parameters: { id: string | number; sid: string | number };
    body: DimensionsDto;
    answer: JobView;
    versioned: false;
  };
  'POST /jobs/{id}/specimens/{sid}/results': {
    parameters: { id: string | number; sid: string | number };
    body: TypedResultsDto;
    answer: JobView;
    versioned: false;
  };
  'POST /jobs/{id}/specimens/{sid}/invalid': {
    parameters: { id: string | number; sid: string | number };
    body: InvalidDto;
    answer: JobView;
    versioned: false;
  };
  'GET /requests/{id}/results': {
    parameters: { id: string | number };
    body: undefined;
    answer: BatchResults[];
    versioned: false;
  };
  'GET /curves/{id}': { parameters: { id: string | number }; body: undefined; answer: CurveView; versioned: false };
  'GET /results/history': {
    parameters: { method: string; material?: string | '' | null; key: string; cell?: string | '' | null };
    body: undefined;
    answer: HistoryView;
    versioned: false;
  };
  'GET /reports': {
    parameters: { q?: string | '' | null; limit?: number | '' | null };
    body: undefined;
    answer: ReportLine[];
    versioned: false;
  };
  'POST /requests/{id}/report': {
    parameters: { id: string | number };
    body: undefined;
    answer: ReportView;
    versioned: false;
  };
  'GET /reports/{id}': { parameters: { id: string | number }; body: undefined; answer: ReportView; versioned: false };
  'PATCH /reports/{id}': { parameters: { id: string | number }; body: RemarksDto; answer: ReportView; versioned: true };
  'POST /reports/{id}/issue': {
    parameters: { id: string | number };
    body: undefined;
    answer: ReportView;
    versioned: true;
  };
  'POST /reports/{id}/amend': {
    parameters: { id: string | number };
    body: AmendDto;
    answer: ReportView;
    versioned: false;
  };
  'GET /reports/{id}/file.pdf': {
    parameters: { id: string | number };
    body: undefined;
    answer: unknown;
    versioned: false;
  };
  'GET /reports/{id}/data.csv': {
    parameters: { id: string | number };
    body: undefined;
    answer: string;
    versioned: false;
  };
  'GET /reports/{id}/data.json': {
    parameters: { id: string | number };
    body: undefined;
    answer: ReportDocument;
    versioned: false;
  };
  'GET /verify/{number}': {
    parameters: { number: string | number; revision?: number | '' | null; hash?: string | '' | null };
    body: undefined;
    answer: VerifyView;
    versioned: false;
  };
  'GET /record': {
    parameters: { subject?: string | '' | null; cursor?: string | '' | null };
    body: undefined;
    answer: PageOfRecordEventView;
    versioned: false;
  };
  'POST /files': { parameters: { name: string }; body: Blob; answer: { id: string; sha256: string }; versioned: false };
  'GET /files/{id}': { parameters: { id: string | number }; body: undefined; answer: unknown; versioned: false };
  'GET /export': { parameters: {}; body: undefined; answer: ExportTable[]; versioned: false };
  'GET /export/everything.jsonl': { parameters: {}; body: undefined; answer: unknown; versioned: false };
  'GET /export/{table}.jsonl': {
    parameters: { table: string | number };
    body: undefined;
    answer: unknown;
    versioned: false;
  };
  'GET /export/{table}.csv': {
    parameters: { table: string | number };
    body: undefined;
    answer: unknown;
    versioned: false;
  };
  'GET /notices': {
    parameters: { cursor?: string | '' | null };
    body: undefined;
    answer: NoticesView;
    versioned: false;
  };
  'GET /notices/preferences': { parameters: {}; body: undefined; answer: NoticePreferences; versioned: false };
  'PUT /notices/preferences': {
    parameters: {};
    body: NoticePreferencesDto;
    answer: NoticePreferences;
    versioned: false;
  };
  'POST /notices/read-all': { parameters: {}; body: undefined; answer: undefined; versioned: false };
  'POST /notices/{id}/read': {
    parameters: { id: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /feeds/frames/{tag}.ics': {
    parameters: { tag: string | number; key?: string | '' | null };
    body: undefined;
    answer: string;
    versioned: false;
  };
  'GET /feeds/people/{id}.ics': {
    parameters: { id: string | number; key?: string | '' | null };
    body: undefined;
    answer: string;
    versioned: false;
  };
  'GET /feed-keys': { parameters: {}; body: undefined; answer: FeedKeyView[]; versioned: false };
  'POST /feed-keys': { parameters: {}; body: NewFeedKeyDto; answer: FeedKeyView; versioned: false };
  'DELETE /feed-keys/{id}': {
    parameters: { id: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /webhooks': { parameters: {}; body: undefined; answer: WebhookView[]; versioned: false };
  'POST /webhooks': { parameters: {}; body: NewWebhookDto; answer: WebhookView; versioned: false };
  'DELETE /webhooks/{id}': {
    parameters: { id: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
  'GET /webhooks/{id}/deliveries': {
    parameters: { id: string | number };
    body: undefined;
    answer: DeliveryView[];
    versioned: false;
  };
  'POST /webhooks/{id}/try': {
    parameters: { id: string | number };
    body: undefined;
    answer: { deliveryId: string };
    versioned: false;
  };
  'POST /webhooks/{id}/deliveries/{deliveryId}/again': {
    parameters: { id: string | number; deliveryId: string | number };
    body: undefined;
    answer: undefined;
    versioned: false;
  };
}
