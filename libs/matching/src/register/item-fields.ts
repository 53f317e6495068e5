import {
  CELL_POSITIONS,
  CHANNEL_KINDS,
  CONTROL_MODES,
  COUPLING_GENDERS,
  COUPLING_TYPES,
  DIRECTIONS,
  END_SHAPES,
  FACE_SHAPES,
  FACE_SURFACES,
  FIXTURE_PURPOSES,
  GRIP_ACTIONS,
  ITEM_STATES,
  SIDES,
  UTILITIES,
} from './item-choices.js';
import {
  celsius,
  choice,
  choices,
  count,
  fixed,
  flag,
  joule,
  kg,
  list,
  mm,
  newton,
  newtonMetre,
  ratingCurve,
  rotation,
  speed,
  text,
} from './item-field.js';
import type { ItemField } from './item-field.js';
import type { ItemKind } from './item.js';

const some = { min: 0.001 };
const maybe = { required: false };

/** What every item says about itself. */
export const COMMON_FIELDS: readonly ItemField[] = [
  text('tag', 'Tag', { max: 40, help: 'What its barcode says, e.g. LC-05-2. Never reused.' }),
  text('name', 'Name', { max: 120 }),
  text('model', 'Model', { max: 120, required: false }),
  choice('state', 'State', ITEM_STATES),
  text('place', 'Place', { max: 80, required: false, help: 'Where it is kept when it is not fitted.' }),
  kg('massKg', 'Mass', { help: 'What it adds to the train; for a pair, its upper half.' }),
  mm('lengthMm', 'Length in the train', { help: 'What it adds to the stack; for a pair, its upper half.' }),
  celsius('temperatureMinC', 'Lowest temperature'),
  celsius('temperatureMaxC', 'Highest temperature'),
  choices('utilities', 'Needs at the frame', UTILITIES, maybe),
  flag('needsCalibration', 'Needs calibration'),
];

const RATINGS = [
  ratingCurve('tension', 'Rating in tension'),
  ratingCurve('compression', 'Rating in compression'),
  ratingCurve('torque', 'Rating in torque'),
];

function coupling(path: string, label: string): ItemField[] {
  return [
    choice(`${path}.type`, `${label}: type`, COUPLING_TYPES),
    mm(`${path}.sizeMm`, `${label}: size`, {
      ...some,
      max: 1000,
      help: 'Pin, thread, bolt circle, slot or shaft size.',
    }),
    choice(`${path}.gender`, `${label}: gender`, COUPLING_GENDERS, { help: 'Two plain ends meet; male meets female.' }),
  ];
}

const END = [
  choice('details.side', 'Side', SIDES, { help: 'A pair serves both ends and goes on together.' }),
  ...coupling('details.coupling', 'Coupling'),
  kg('details.lowerMassKg', 'Mass of the lower half', { ...maybe, help: 'Only for a pair whose halves differ.' }),
  mm('details.lowerLengthMm', 'Length of the lower half', { ...maybe, help: 'Only for a pair whose halves differ.' }),
  mm('details.outsideWidthMm', 'Widest extent'),
];

const CLEARANCE = [
  mm('details.fitsClearanceMinMm', 'Fits frames from column clearance'),
  mm('details.fitsClearanceMaxMm', 'Fits frames up to column clearance'),
];

/** What each kind says beyond that; a path into `details` is the field of the same name in its type. */
export const KIND_FIELDS: Readonly<Record<ItemKind, readonly ItemField[]>> = {
  frame: [
    newton('details.tensionCapacityN', 'Capacity in tension', { help: '0 when it cannot pull.' }),
    newton('details.compressionCapacityN', 'Capacity in compression', { help: '0 when it cannot push.' }),
    newtonMetre('details.torqueCapacityNm', 'Capacity in torque', { help: '0 when it cannot twist.' }),
    mm('details.openingMinMm', 'Smallest opening', { help: 'Between the coupling faces of crosshead and base.' }),
    mm('details.openingMaxMm', 'Largest opening', some),
    mm('details.travelMm', 'Travel'),
    mm('details.columnClearanceMm', 'Column clearance', { ...some, help: 'Single column: twice the throat.' }),
    speed('details.speedMinMmPerMin', 'Lowest speed'),
    speed('details.speedMaxMmPerMin', 'Highest speed'),
    list(
      'details.speedLimits',
      'Speed limits at force',
      'speed-limits',
      'Above a force (N) no faster than a speed (mm/min).',
    ),
    rotation('details.rotationMinDegPerMin', 'Lowest rotation speed'),
    rotation('details.rotationMaxDegPerMin', 'Highest rotation speed', { help: '0 when it cannot twist.' }),
    {
      ...count('details.stiffnessNPerMm', 'Stiffness', { min: 1, max: 1e9, required: false }),
      quantity: 'stiffness',
      unit: 'N/mm',
    },
    ...coupling('details.crossheadCoupling', 'Crosshead coupling'),
    ...coupling('details.baseCoupling', 'Base coupling'),
    choices('details.cellPositions', 'Load cell at', CELL_POSITIONS),
    list('details.channels', 'Signal channels', 'channels', 'How many of each kind can be read at once.'),
    choices('details.utilitiesAtFrame', 'Utilities at the frame', UTILITIES, maybe),
    joule('details.guardEnergyJ', 'Energy its guard holds back', { help: '0 without a guard.' }),
    flag('details.guardInterlocked', 'Guard interlocked'),
    choices('details.controlModes', 'Control', CONTROL_MODES),
  ],
  'load-cell': [
    newton('details.capacityN', 'Rated force', { help: '0 for a cell that senses torque only.' }),
    newtonMetre('details.torqueCapacityNm', 'Rated torque', { help: '0 for a cell that senses force only.' }),
    choices('details.directions', 'Senses', DIRECTIONS),
    fixed('details.overloadPct', 'Safe overload', '%', {
      min: 100,
      max: 1000,
      help: 'Share of the rated force that it survives.',
    }),
    ...coupling('details.frameCoupling', 'Coupling to the frame'),
    ...coupling('details.specimenCoupling', 'Coupling to the specimen side'),
  ],
  grip: [
    ...RATINGS,
    ...END,
    choice('details.action', 'Action', GRIP_ACTIONS),
    choices('details.acceptedEnds', 'Takes ends', END_SHAPES),
    mm('details.openingMinMm', 'Opening from', { help: 'Thickness or diameter that it takes.' }),
    mm('details.openingMaxMm', 'Opening up to', some),
    mm('details.faceWidthMm', 'Width up to', some),
    mm('details.gripLengthMm', 'Grip length', { help: 'Length of specimen inside each grip.' }),
    text('details.faceSlot', 'Seat for jaw faces', {
      ...maybe,
      max: 40,
      help: 'Empty when the faces are part of the grip.',
    }),
    choice('details.fixedFaceShape', 'Fixed face: shape', FACE_SHAPES, maybe),
    choice('details.fixedFaceSurface', 'Fixed face: surface', FACE_SURFACES, maybe),
  ],
  'jaw-face': [
    ...RATINGS,
    text('details.slot', 'Seat', { max: 40 }),
    choice('details.shape', 'Shape', FACE_SHAPES),
    choice('details.surface', 'Surface', FACE_SURFACES),
    mm('details.widthMm', 'Width', some),
    mm('details.openingMinMm', 'Opening from'),
    mm('details.openingMaxMm', 'Opening up to', some),
  ],
  fixture: [
    ...RATINGS,
    ...END,
    choices('details.purposes', 'For', FIXTURE_PURPOSES),
    mm('details.spanMinMm', 'Span from', maybe),
    mm('details.spanMaxMm', 'Span up to', maybe),
    mm('details.noseRadiusMm', 'Nose radius', maybe),
    mm('details.supportRadiusMm', 'Support radius', maybe),
    mm('details.specimenWidthMaxMm', 'Specimen width up to', some),
    mm('details.specimenThicknessMaxMm', 'Specimen thickness up to', some),
  ],
  platen: [
    ...RATINGS,
    ...END,
    mm('details.diameterMm', 'Diameter', some),
    flag('details.sphericalSeat', 'Spherical seat'),
  ],
  adapter: [...RATINGS, ...coupling('details.ends.0', 'One end'), ...coupling('details.ends.1', 'Other end')],
  extensometer: [
    { ...mm('details.gaugeLengthsMm', 'Gauge lengths', some), type: 'numbers' },
    mm('details.travelPlusMm', 'Travel in tension'),
    mm('details.travelMinusMm', 'Travel in compression'),
    choice('details.measures', 'Measures', ['axial', 'deflection']),
    flag('details.contact', 'Touches the specimen'),
    choice('details.channel', 'Signal channel', CHANNEL_KINDS),
    mm('details.specimenMinMm', 'Specimen thickness from'),
    mm('details.specimenMaxMm', 'Specimen thickness up to', some),
  ],
  chamber: [
    celsius('details.minC', 'Coldest'),
    celsius('details.maxC', 'Hottest'),
    mm('details.insideWidthMm', 'Inside width', some),
    mm('details.insideHeightMm', 'Inside height', some),
    ...CLEARANCE,
    fixed('details.rampCPerMin', 'Ramp', '°C/min', { min: 0.01, max: 1000 }),
    fixed('details.soakBaseMin', 'Soak', 'min', { max: 10_000 }),
    fixed('details.soakMinPerMm', 'Soak per mm of thickness', 'min', { max: 1000 }),
  ],
  guard: [joule('details.energyJ', 'Energy it holds back'), flag('details.interlocked', 'Interlocked'), ...CLEARANCE],
  transducer: [
    choice('details.measures', 'Measures', ['temperature', 'displacement']),
    choice('details.channel', 'Signal channel', CHANNEL_KINDS),
    count('details.rangeFrom', 'Range from, °C or mm', { min: -300, max: 10_000 }),
    count('details.rangeTo', 'Range up to, °C or mm', { min: -300, max: 10_000 }),
  ],
};

/** All fields of a kind, common ones first: the one table behind checks, CSV columns and forms. */
export const ITEM_FIELDS: Readonly<Record<ItemKind, readonly ItemField[]>> = Object.fromEntries(
  Object.entries(KIND_FIELDS).map(([kind, fields]) => [kind, [...COMMON_FIELDS, ...fields]]),
) as Record<ItemKind, ItemField[]>;

/** Pairs of fields of which the first may not exceed the second. */
export const ORDERED_FIELDS: readonly (readonly [string, string])[] = [
  ['temperatureMinC', 'temperatureMaxC'],
  ['details.openingMinMm', 'details.openingMaxMm'],
  ['details.speedMinMmPerMin', 'details.speedMaxMmPerMin'],
  ['details.rotationMinDegPerMin', 'details.rotationMaxDegPerMin'],
  ['details.spanMinMm', 'details.spanMaxMm'],
  ['details.specimenMinMm', 'details.specimenMaxMm'],
  ['details.minC', 'details.maxC'],
  ['details.fitsClearanceMinMm', 'details.fitsClearanceMaxMm'],
  ['details.rangeFrom', 'details.rangeTo'],
];
