export type {
  Adapter,
  AdapterDetails,
  CalibratedQuantity,
  Calibration,
  CellPosition,
  Chamber,
  ChamberDetails,
  ChannelKind,
  ControlMode,
  Coupling,
  CouplingType,
  Direction,
  EndDetails,
  EndShape,
  Extensometer,
  ExtensometerDetails,
  FaceShape,
  FaceSurface,
  Fixture,
  FixtureDetails,
  FixturePurpose,
  Frame,
  FrameDetails,
  Grip,
  GripAction,
  GripDetails,
  Guard,
  GuardDetails,
  Item,
  ItemCommon,
  ItemKind,
  ItemState,
  JawFace,
  JawFaceDetails,
  LoadCell,
  LoadCellDetails,
  Platen,
  PlatenDetails,
  RatingPoint,
  Ratings,
  Side,
  TimeWindow,
  Transducer,
  TransducerDetails,
  Utility,
} from './item.js';
export { CALIBRATED_QUANTITIES, DIRECTIONS, END_SHAPES, ITEM_KINDS, ITEM_STATES, UTILITIES } from './item-choices.js';
export { ITEM_FIELDS } from './item-fields.js';
export type { ItemField } from './item-field.js';
export { at, checkItem } from './check-item.js';
export type {
  ClassNeed,
  Conditioning,
  Ends,
  GeometryKey,
  GeometryNeed,
  Hazard,
  Method,
  ReportStep,
  Shape,
  SpeedRule,
  SpeedStage,
  StrainRule,
  TestType,
} from './method.js';
export type { Material, MaterialGroup, StrengthBand, StrengthProperty } from './material.js';
export type { Ask, AskField, AskOptions, Band, Geometry, StrengthUsed } from './ask.js';
export type { Figure, Needs, SpecimenNeed, StrainNeed } from './needs.js';
export type {
  Advice,
  AdviceKind,
  Candidate,
  Changeover,
  ChangeoverStep,
  ForceLadder,
  FrameRefusal,
  LadderMark,
  LimitStops,
  Link,
  LinkRole,
  MatchAnswer,
  RuleCode,
  ScorePart,
  Train,
  TrainSegment,
  Verdict,
} from './answer.js';
export { askFields, GEOMETRY_LABELS, hasStrength } from './ask-fields.js';
export { checkAsk } from './check-ask.js';
export { isNeeds, needsOf } from './needs-of.js';
export { changeoverBetween } from './changeover.js';
export type { Warming } from './changeover.js';
export { checkTrain } from './check-train.js';
export type { TrainCheck } from './check-train.js';
export { equalUnits } from './equal-units.js';
export { forceLadder } from './force-ladder.js';
export { loadAt, plasticTorque } from './load-at.js';
export { ratingAt } from './rating-at.js';
export { applyAdvice } from './advice/apply-advice.js';
export { matchRequest } from './match-request.js';
export type { AskWithMethod } from './match-request.js';
export { matchTrains } from './match-trains.js';
export { trainDrawing } from './train-drawing.js';
export { usableWindows } from './usable-windows.js';
export type { Lab, Rig, Technician } from './lab.js';
export type { MatchSettings } from './settings.js';
export { DEFAULT_SETTINGS } from './settings.js';
