/**
 * Every unit that people may write, by quantity; the first unit of a quantity is the one that is kept and computed with.
 *
 * internal = (value + shift) × up / down. `up` and `down` are whole numbers below 2⁵³ (or powers of ten) wherever the factor
 * is rational, so that a factor is exact and one conversion costs at most two roundings.
 *
 * Source: the definitions 1 lb = 0.45359237 kg, 1 in = 25.4 mm, g = 9.80665 m/s² (conventional), all exact; NIST SP 811
 * (2008) appendix B. The decimals are checked in test/published/units.
 */
export interface UnitDefinition {
  up: number;
  down: number;
  shift?: number;
  spellings?: readonly string[];
}

/** Conventional acceleration of free fall, m/s² (exact by convention). */
export const G_MS2 = 9.80665;

const by = (up: number, down = 1, ...spellings: string[]): UnitDefinition => ({ up, down, spellings });

/** 1 lbf = 0.45359237 × 9.80665 N = 44482216152605 / 10¹³ N. */
const LBF_UP = 44482216152605;
const LBF_DOWN = 1e13;

/** 1 psi = 1 lbf / 1 in² = 8896443230521 / 1290320000000000 MPa. */
const PSI_UP = 8896443230521;
const PSI_DOWN = 1290320000000000;

/** 1 lbf/in = 8896443230521 / 50800000000000 N/mm. */
const PPI_UP = 8896443230521;
const PPI_DOWN = 50800000000000;

/** 1 lbf·in = 1129848290276167 / 10¹⁶ N·m and 1 lbf·ft = 3389544870828501 / (2.5 × 10¹⁵) N·m. */
const LBF_IN = by(1129848290276167, 1e16, 'in·lbf', 'in·lb', 'lb·in');
const LBF_FT = by(3389544870828501, 2.5e15, 'ft·lbf', 'ft·lb', 'lb·ft');

export const UNIT_TABLE = {
  force: {
    N: by(1, 1, 'newton'),
    kN: by(1000),
    MN: by(1e6),
    mN: by(1, 1000),
    cN: by(1, 100),
    lbf: by(LBF_UP, LBF_DOWN, 'lb', 'lbs'),
    ozf: by(222411080763025, 8e14, 'oz'),
    kip: by(LBF_UP, 1e10, 'kips', 'klbf'),
    kgf: by(980665, 1e5, 'kp'),
    gf: by(980665, 1e8),
    tf: by(980665, 100),
    'US tonf': by(8896443230521, 1e9, 'tonf (short)'),
    dyn: by(1, 1e5),
  },
  length: {
    mm: by(1),
    µm: by(1, 1000, 'micron', 'microns'),
    cm: by(10),
    m: by(1000),
    in: by(254, 10, 'inch', 'inches', '"', '″'),
    mil: by(254, 1e4, 'mils', 'thou'),
    ft: by(3048, 10, 'foot', 'feet'),
  },
  area: { 'mm²': by(1), 'cm²': by(100), 'm²': by(1e6), 'in²': by(64516, 100, 'sq in') },
  stress: {
    MPa: by(1),
    kPa: by(1, 1000),
    Pa: by(1, 1e6),
    GPa: by(1000),
    'N/mm²': by(1),
    psi: by(PSI_UP, PSI_DOWN, 'lbf/in²'),
    ksi: by(PSI_UP, 1290320000000),
    Msi: by(PSI_UP, 1290320000),
    psf: by(PSI_UP, 185806080000000000, 'lbf/ft²'),
    'kgf/mm²': by(980665, 1e5),
    'kgf/cm²': by(980665, 1e7),
    bar: by(1, 10),
    atm: by(101325, 1e6),
  },
  mass: {
    kg: by(1),
    g: by(1, 1000),
    mg: by(1, 1e6),
    t: by(1000),
    lb: by(45359237, 1e8, 'lbs'),
    oz: by(45359237, 1.6e9),
  },
  temperature: {
    '°C': by(1, 1, 'C', 'degC', 'deg C', 'celsius'),
    '°F': { up: 5, down: 9, shift: -32, spellings: ['F', 'degF', 'deg F', 'fahrenheit'] },
    K: { up: 1, down: 1, shift: -273.15, spellings: ['kelvin'] },
  },
  temperatureDifference: { 'Δ°C': by(1, 1, 'K', '°C', 'C'), 'Δ°F': by(5, 9, '°F', 'F') },
  speed: {
    'mm/min': by(1),
    'mm/s': by(60),
    'µm/s': by(6, 100),
    'm/min': by(1000),
    'm/s': by(60000),
    'in/min': by(254, 10, 'ipm'),
    'in/s': by(1524),
  },
  torque: {
    'N·m': by(1),
    'N·mm': by(1, 1000),
    'N·cm': by(1, 100),
    'kN·m': by(1000),
    'mN·m': by(1, 1000),
    'lbf·in': LBF_IN,
    'lbf·ft': LBF_FT,
    'ozf·in': by(LBF_IN.up, 1.6e17, 'in·ozf', 'oz·in', 'in·oz'),
    'kgf·m': by(980665, 1e5),
    'kgf·cm': by(980665, 1e7),
  },
  forcePerWidth: {
    'N/mm': by(1),
    'kN/m': by(1),
    'N/m': by(1, 1000),
    'N/cm': by(1, 10),
    'N/15mm': by(1, 15),
    'N/25mm': by(1, 25),
    'lbf/in': by(PPI_UP, PPI_DOWN, 'ppi', 'pli', 'lb/in'),
    'gf/in': by(196133, 508000000),
    'kgf/cm': by(980665, 1e6),
  },
  stiffness: {
    'N/mm': by(1),
    'kN/mm': by(1000),
    'N/m': by(1, 1000),
    'N/µm': by(1000),
    'lbf/in': by(PPI_UP, PPI_DOWN, 'lb/in'),
  },
  strain: {
    'mm/mm': by(1, 1, 'in/in', 'm/m'),
    '%': by(1, 100, 'percent', 'pct'),
    '‰': by(1, 1000),
    µε: by(1, 1e6, 'µm/m', 'ustrain', 'microstrain', 'ue'),
  },
  energy: {
    J: by(1),
    mJ: by(1, 1000),
    kJ: by(1000),
    'N·m': by(1),
    'N·mm': by(1, 1000),
    'lbf·in': LBF_IN,
    'lbf·ft': LBF_FT,
  },
  time: {
    min: by(1, 1, 'minute', 'minutes'),
    s: by(1, 60, 'sec', 'second', 'seconds'),
    ms: by(1, 60000),
    h: by(60, 1, 'hr', 'hour', 'hours'),
    d: by(1440, 1, 'day', 'days'),
  },
  angle: { '°': by(1, 1, 'deg', 'degree', 'degrees'), rad: by(180, Math.PI), rev: by(360, 1, 'turn', 'turns') },
  angularSpeed: {
    '°/min': by(1, 1, 'deg/min'),
    '°/s': by(60, 1, 'deg/s'),
    'rad/s': by(10800, Math.PI),
    rpm: by(360, 1, '1/min', 'r/min'),
  },
  stressRate: {
    'MPa/s': by(1, 1, 'N/mm²/s'),
    'MPa/min': by(1, 60, 'N/mm²/min'),
    'psi/s': by(PSI_UP, PSI_DOWN),
    'psi/min': by(PSI_UP, 77419200000000000),
    'ksi/s': by(PSI_UP, 1290320000000),
    'ksi/min': by(PSI_UP, 77419200000000),
  },
  strainRate: {
    '1/s': by(1, 1, '/s', 's^-1', 'mm/mm/s', 'in/in/s'),
    '1/min': by(1, 60, '/min', 'min^-1', 'mm/mm/min', 'in/in/min'),
    '1/h': by(1, 3600, '/h'),
    '%/s': by(1, 100),
    '%/min': by(1, 6000),
  },
  forceRate: {
    'N/s': by(1),
    'kN/s': by(1000),
    'N/min': by(1, 60),
    'kN/min': by(1000, 60),
    'lbf/s': by(LBF_UP, LBF_DOWN, 'lb/s'),
    'lbf/min': by(LBF_UP, 6e14, 'lb/min'),
  },
  energyPerArea: {
    'kJ/m²': by(1),
    'J/m²': by(1, 1000),
    'lbf·ft/in²': by(26689329691563, 12700000000000, 'ft·lbf/in²'),
  },
  energyPerLength: { 'J/m': by(1), 'lbf·ft/in': by(53378659383126, 1e12, 'ft·lbf/in') },
  fractureToughness: {
    'MPa·√m': by(1, 1, 'MPa·m^0.5'),
    'ksi·√in': by((PSI_UP * Math.sqrt(0.0254)) / 1290320000000, 1, 'ksi·in^0.5'),
  },
  linearDensity: { tex: by(1), dtex: by(1, 10), den: by(1, 9, 'denier') },
  tenacity: { 'cN/tex': by(1), 'N/tex': by(100), 'gf/den': by(8825985, 1e6) },
  density: { 'kg/m³': by(1), 'g/cm³': by(1000), 'lb/ft³': by(28349523125, 1769802912) },
} as const satisfies Record<string, Record<string, UnitDefinition>>;

/** What a figure is of. */
export type Quantity = keyof typeof UNIT_TABLE;

/** The units of one quantity. */
export type UnitOf<Q extends Quantity> = Q extends Quantity ? keyof (typeof UNIT_TABLE)[Q] & string : never;

/** Any unit that we know, as it is written on screens and kept in the database. */
export type Unit = UnitOf<Quantity>;
