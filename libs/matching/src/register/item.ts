/*
 * register/: what the lab has and offers: items, methods, materials. It imports the ground floor only.
 */
/** What may be registered. One item is one physical unit with one tag; a pair or a set that is always fitted together counts as one. */
export type Item =
  Frame | LoadCell | Grip | JawFace | Fixture | Platen | Adapter | Extensometer | Chamber | Guard | Transducer;

export type ItemKind = Item['kind'];
export type ItemState = 'in-service' | 'faulty' | 'out-of-use';

/** How the specimen is loaded. */
export type Direction = 'tension' | 'compression' | 'torque';
/** What a calibration compares: a load direction, or the quantity that a sensor shows. */
export type CalibratedQuantity = Direction | 'extension' | 'temperature' | 'speed';
export type Utility =
  'compressed-air' | 'hydraulics' | 'power-400v' | 'liquid-nitrogen' | 'cooling-water' | 'extraction';
export type ChannelKind = 'force' | 'torque' | 'strain' | 'temperature' | 'video' | 'displacement';
export type ControlMode = 'position' | 'force' | 'strain';

/** Half-open span of time, [startMs, endMs), UTC instants in milliseconds. */
export interface TimeWindow {
  startMs: number;
  endMs: number;
}

/** One point of a rating curve: what the item carries at a temperature. `rating` in N (forces) or N·m (torque). */
export interface RatingPoint {
  temperatureC: number;
  rating: number;
}

/** What an item in the load path carries, per direction; a direction that is absent is one it is not made for. */
export type Ratings = Partial<Record<Direction, readonly RatingPoint[]>>;

/** One end of an item. Two ends meet when type and size agree and the genders are opposite, or both plain. */
export interface Coupling {
  type: CouplingType;
  /** Thread diameter, pin diameter or bolt-circle diameter, mm. */
  sizeMm: number;
  gender: 'male' | 'female' | 'plain';
}
export type CouplingType = 'clevis' | 'thread' | 'flange' | 'slot' | 'shaft';

/** One calibration. `from` and `to` bound the verified range in N, N·m, mm, °C or mm/min, as `direction` says. */
export interface Calibration {
  direction: CalibratedQuantity;
  /** The standard that the class belongs to, e.g. `ISO 7500-1`, `ISO 9513`, `ASTM E83`. */
  standard: string;
  /** Class in that standard's own words, e.g. `0.5`, `1`, `B-2`. */
  className: string;
  from: number;
  to: number;
  /** In force over [validFromMs, dueMs). */
  validFromMs: number;
  dueMs: number;
}

export interface ItemCommon<K extends string, D> {
  kind: K;
  id: string;
  /** What its barcode says, e.g. `LC-05-2`. */
  tag: string;
  name: string;
  model: string;
  state: ItemState;
  place: string;
  /** Mass that it adds to the train, kg; for a pair, of its upper half. */
  massKg: number;
  /** Length that it adds to the stack, mm; for a pair, of its upper half. */
  lengthMm: number;
  ratings: Ratings;
  /** Temperatures at which it may be used, °C. */
  temperatureMinC: number;
  temperatureMaxC: number;
  /** What must be at the frame for it to work. */
  utilities: readonly Utility[];
  needsCalibration: boolean;
  calibrations: readonly Calibration[];
  /** When it is promised elsewhere (visit to the calibration lab, loan). */
  heldWindows: readonly TimeWindow[];
  details: D;
}

export type CellPosition = 'crosshead' | 'base';

export interface FrameDetails {
  /** Capacity per direction; 0 where the frame cannot load that way. */
  tensionCapacityN: number;
  compressionCapacityN: number;
  torqueCapacityNm: number;
  /** Distance between the crosshead's and the base's coupling faces, mm. */
  openingMinMm: number;
  openingMaxMm: number;
  /** Full stroke of the crosshead, mm. */
  travelMm: number;
  /** Free width between the columns (single column: twice the throat), mm. */
  columnClearanceMm: number;
  speedMinMmPerMin: number;
  speedMaxMmPerMin: number;
  /** Above a force the frame may be slower: above `aboveForceN` no faster than `speedMaxMmPerMin`. */
  speedLimits: readonly { aboveForceN: number; speedMaxMmPerMin: number }[];
  /** Rotation speeds of a torsion frame, °/min; 0 for a frame without torsion. */
  rotationMinDegPerMin: number;
  rotationMaxDegPerMin: number;
  /** Axial stiffness of the bare frame, N/mm; null when nobody has measured it. */
  stiffnessNPerMm: number | null;
  crossheadCoupling: Coupling;
  baseCoupling: Coupling;
  /** Where a load cell may hang. */
  cellPositions: readonly CellPosition[];
  channels: readonly { kind: ChannelKind; count: number }[];
  utilitiesAtFrame: readonly Utility[];
  /** Energy that the guard built onto the frame holds back, J; 0 without a guard. */
  guardEnergyJ: number;
  guardInterlocked: boolean;
  controlModes: readonly ControlMode[];
}

export interface LoadCellDetails {
  /** Rated force, N; 0 for a cell that senses torque only. */
  capacityN: number;
  /** Rated torque, N·m; 0 for a cell that senses force only. */
  torqueCapacityNm: number;
  directions: readonly Direction[];
  /** Force or torque that it survives, in percent of capacity. Shown, never used as capacity. */
  overloadPct: number;
  /** Coupling towards the frame, and towards the specimen. */
  frameCoupling: Coupling;
  specimenCoupling: Coupling;
}

export type GripAction =
  'wedge' | 'hydraulic' | 'pneumatic' | 'screw' | 'roller' | 'capstan' | 'threaded' | 'shouldered' | 'pin' | 'collet';
/** What the specimen offers the grip to hold. */
export type EndShape = 'flat' | 'round' | 'threaded' | 'shouldered' | 'pin-hole' | 'cord' | 'hexagon';
/** Which side of the specimen it serves; a pair serves both and goes on together. */
export type Side = 'upper' | 'lower' | 'pair';
export type FaceShape = 'flat' | 'vee' | 'line' | 'curved';
export type FaceSurface = 'smooth' | 'fine-serrated' | 'serrated' | 'diamond' | 'rubber' | 'lined';

/** Fields that every end of a train has, be it grip, fixture or platen. */
export interface EndDetails {
  side: Side;
  coupling: Coupling;
  /** Only for a pair whose halves differ: the lower half's mass and length; else null. */
  lowerMassKg: number | null;
  lowerLengthMm: number | null;
  /** Widest extent across the frame, mm. */
  outsideWidthMm: number;
}

export interface GripDetails extends EndDetails {
  action: GripAction;
  acceptedEnds: readonly EndShape[];
  /** Thickness or diameter that it takes, mm. With separate faces the faces' own figures count as well. */
  openingMinMm: number;
  openingMaxMm: number;
  /** Widest end that it takes, mm. */
  faceWidthMm: number;
  /** Length of specimen inside each grip, mm. */
  gripLengthMm: number;
  /** Name of the seat for separate jaw faces; null when the faces are part of the grip. */
  faceSlot: string | null;
  fixedFaceShape: FaceShape | null;
  fixedFaceSurface: FaceSurface | null;
}

export interface JawFaceDetails {
  slot: string;
  shape: FaceShape;
  surface: FaceSurface;
  widthMm: number;
  openingMinMm: number;
  openingMaxMm: number;
}

export type FixturePurpose =
  | 'flexure-3'
  | 'flexure-4-third'
  | 'flexure-4-half'
  | 'short-beam'
  | 'peel-90'
  | 'peel-180'
  | 'climbing-drum'
  | 'combined-compression'
  | 'double-shear'
  | 'sandwich-flatwise'
  | 'fracture-bend'
  | 'component-pull'
  | 'component-push';

export interface FixtureDetails extends EndDetails {
  purposes: readonly FixturePurpose[];
  /** Support span that can be set, mm; null where there is none. */
  spanMinMm: number | null;
  spanMaxMm: number | null;
  noseRadiusMm: number | null;
  supportRadiusMm: number | null;
  /** Largest specimen, mm. */
  specimenWidthMaxMm: number;
  specimenThicknessMaxMm: number;
}

export interface PlatenDetails extends EndDetails {
  diameterMm: number;
  sphericalSeat: boolean;
}

export interface AdapterDetails {
  ends: readonly [Coupling, Coupling];
}

export interface ExtensometerDetails {
  gaugeLengthsMm: readonly number[];
  /** Travel in tension (plus) and compression (minus), mm. */
  travelPlusMm: number;
  travelMinusMm: number;
  measures: 'axial' | 'deflection';
  /** Touches the specimen. */
  contact: boolean;
  channel: ChannelKind;
  /** Thickness or diameter that it takes, mm. */
  specimenMinMm: number;
  specimenMaxMm: number;
}

export interface ChamberDetails {
  minC: number;
  maxC: number;
  insideWidthMm: number;
  insideHeightMm: number;
  /** Column clearance of the frames that it fits, mm. */
  fitsClearanceMinMm: number;
  fitsClearanceMaxMm: number;
  rampCPerMin: number;
  /** Soak once the air is at temperature: base plus so much per mm of specimen thickness, minutes. */
  soakBaseMin: number;
  soakMinPerMm: number;
}

export interface GuardDetails {
  /** Energy that it holds back, J. */
  energyJ: number;
  interlocked: boolean;
  fitsClearanceMinMm: number;
  fitsClearanceMaxMm: number;
}

export interface TransducerDetails {
  measures: 'temperature' | 'displacement';
  channel: ChannelKind;
  /** Range in °C or mm. */
  rangeFrom: number;
  rangeTo: number;
}

export type Frame = ItemCommon<'frame', FrameDetails>;
export type LoadCell = ItemCommon<'load-cell', LoadCellDetails>;
export type Grip = ItemCommon<'grip', GripDetails>;
export type JawFace = ItemCommon<'jaw-face', JawFaceDetails>;
export type Fixture = ItemCommon<'fixture', FixtureDetails>;
export type Platen = ItemCommon<'platen', PlatenDetails>;
export type Adapter = ItemCommon<'adapter', AdapterDetails>;
export type Extensometer = ItemCommon<'extensometer', ExtensometerDetails>;
export type Chamber = ItemCommon<'chamber', ChamberDetails>;
export type Guard = ItemCommon<'guard', GuardDetails>;
export type Transducer = ItemCommon<'transducer', TransducerDetails>;
