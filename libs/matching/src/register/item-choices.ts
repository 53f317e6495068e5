import type {
  CalibratedQuantity,
  CellPosition,
  ChannelKind,
  ControlMode,
  Coupling,
  CouplingType,
  Direction,
  EndShape,
  FaceShape,
  FaceSurface,
  FixturePurpose,
  GripAction,
  ItemKind,
  ItemState,
  Side,
  Utility,
} from './item.js';

/** Every value of a closed list, in the order that a form shows them. The compiler refuses a list with a stray or a missing word. */
function every<T extends string>(words: Record<T, true>): readonly T[] {
  return Object.keys(words) as T[];
}

export const ITEM_KINDS = every<ItemKind>({
  frame: true,
  'load-cell': true,
  grip: true,
  'jaw-face': true,
  fixture: true,
  platen: true,
  adapter: true,
  extensometer: true,
  chamber: true,
  guard: true,
  transducer: true,
});
export const ITEM_STATES = every<ItemState>({ 'in-service': true, faulty: true, 'out-of-use': true });
export const DIRECTIONS = every<Direction>({ tension: true, compression: true, torque: true });
export const CALIBRATED_QUANTITIES = every<CalibratedQuantity>({
  tension: true,
  compression: true,
  torque: true,
  extension: true,
  temperature: true,
  speed: true,
});
export const UTILITIES = every<Utility>({
  'compressed-air': true,
  hydraulics: true,
  'power-400v': true,
  'liquid-nitrogen': true,
  'cooling-water': true,
  extraction: true,
});
export const CHANNEL_KINDS = every<ChannelKind>({
  force: true,
  torque: true,
  strain: true,
  temperature: true,
  video: true,
  displacement: true,
});
export const CONTROL_MODES = every<ControlMode>({ position: true, force: true, strain: true });
export const COUPLING_TYPES = every<CouplingType>({
  clevis: true,
  thread: true,
  flange: true,
  slot: true,
  shaft: true,
});
export const COUPLING_GENDERS = every<Coupling['gender']>({ male: true, female: true, plain: true });
export const CELL_POSITIONS = every<CellPosition>({ crosshead: true, base: true });
export const GRIP_ACTIONS = every<GripAction>({
  wedge: true,
  hydraulic: true,
  pneumatic: true,
  screw: true,
  roller: true,
  capstan: true,
  threaded: true,
  shouldered: true,
  pin: true,
  collet: true,
});
export const END_SHAPES = every<EndShape>({
  flat: true,
  round: true,
  threaded: true,
  shouldered: true,
  'pin-hole': true,
  cord: true,
  hexagon: true,
});
export const SIDES = every<Side>({ upper: true, lower: true, pair: true });
export const FACE_SHAPES = every<FaceShape>({ flat: true, vee: true, line: true, curved: true });
export const FACE_SURFACES = every<FaceSurface>({
  smooth: true,
  'fine-serrated': true,
  serrated: true,
  diamond: true,
  rubber: true,
  lined: true,
});
export const FIXTURE_PURPOSES = every<FixturePurpose>({
  'flexure-3': true,
  'flexure-4-third': true,
  'flexure-4-half': true,
  'short-beam': true,
  'peel-90': true,
  'peel-180': true,
  'climbing-drum': true,
  'combined-compression': true,
  'double-shear': true,
  'sandwich-flatwise': true,
  'fracture-bend': true,
  'component-pull': true,
  'component-push': true,
});
