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
} from './register/item.js';
export {
  CALIBRATED_QUANTITIES,
  DIRECTIONS,
  END_SHAPES,
  ITEM_KINDS,
  ITEM_STATES,
  UTILITIES,
} from './register/item-choices.js';
export { choiceWords } from './register/choice-words.js';
export { ITEM_FIELDS } from './register/item-fields.js';
export type { ItemField } from './register/item-field.js';
export { at, checkItem } from './register/check-item.js';
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
} from './register/method.js';
export type { Material, MaterialGroup, StrengthBand, StrengthProperty } from './register/material.js';
export type { Ask, AskField, AskOptions, Band, Geometry, StrengthUsed } from './ask/ask.js';
export type { Figure, Needs, SpecimenNeed, StrainNeed } from './ask/needs.js';
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
  ScorePart,
  Train,
  TrainSegment,
  Verdict,
} from './answer/answer.js';
export type { RuleCode } from './rules/rules.js';
export { askFields, GEOMETRY_LABELS, hasStrength } from './ask/ask-fields.js';
export { checkAsk } from './ask/check-ask.js';
export { isNeeds, needsOf } from './ask/needs-of.js';
export { changeoverBetween } from './answer/changeover.js';
export type { Warming } from './answer/changeover.js';
export { checkTrain } from './answer/check-train.js';
export type { TrainCheck } from './answer/check-train.js';
export { equalUnits } from './search/equal-units.js';
export { loadAt, plasticTorque } from './ask/load-at.js';
export { ratingAt } from './register/rating-at.js';
export { applyAdvice } from './advice/apply-advice.js';
export { matchRequest } from './advice/match-request.js';
export type { AskWithMethod } from './advice/match-request.js';
export { matchTrains } from './answer/match-trains.js';
export { trainDrawing } from './answer/train-drawing.js';
export type { Lab, Rig, Technician } from './register/lab.js';
export type { MatchSettings } from './ask/settings.js';
export { DEFAULT_SETTINGS } from './ask/settings.js';
