/** How a result is named and shown. `factor` turns the kept value into the shown one. */
export interface ResultWords {
  label: string;
  unit: string;
  factor: number;
}

const PERCENT = { unit: '%', factor: 100 } as const;
const MPA = { unit: 'MPa', factor: 1 } as const;
const PER_WIDTH = { unit: 'N/mm', factor: 1 } as const;

/** By result key; the unit is that of force tests. */
const WORDS: Readonly<Record<string, ResultWords>> = {
  'peak-load': { label: 'Peak force', unit: 'N', factor: 1 },
  'peak-stress': { label: 'Strength', ...MPA },
  'strain-at-peak': { label: 'Strain at peak', ...PERCENT },
  'plastic-strain-at-peak': { label: 'Plastic strain at peak', ...PERCENT },
  'strain-at-break': { label: 'Strain at break', ...PERCENT },
  'plastic-strain-at-break': { label: 'Plastic strain at break', ...PERCENT },
  'stress-at-break': { label: 'Stress at break', ...MPA },
  modulus: { label: 'Modulus', ...MPA },
  'offset-yield': { label: 'Offset yield strength', ...MPA },
  'upper-yield': { label: 'Upper yield strength', ...MPA },
  'lower-yield': { label: 'Lower yield strength', ...MPA },
  'stress-at-strain': { label: 'Stress at strain', ...MPA },
  'energy-to-peak': { label: 'Energy to peak', unit: 'J', factor: 1 },
  'energy-to-break': { label: 'Energy to break', unit: 'J', factor: 1 },
  'work-density-to-break': { label: 'Work density to break', unit: 'MJ/m³', factor: 1 },
  'hardening-exponent': { label: 'Hardening exponent', unit: '', factor: 1 },
  'hardening-coefficient': { label: 'Hardening coefficient', ...MPA },
  'mean-peel': { label: 'Mean peel force per width', ...PER_WIDTH },
  'least-peel': { label: 'Least peel force per width', ...PER_WIDTH },
  'highest-peel': { label: 'Highest peel force per width', ...PER_WIDTH },
  'mean-tear-peaks': { label: 'Mean of tear peaks', ...PER_WIDTH },
  'median-tear-peaks': { label: 'Median of tear peaks', ...PER_WIDTH },
  stiffness: { label: 'Stiffness', unit: 'N/mm', factor: 1 },
  'travel-at-peak': { label: 'Travel at peak', unit: 'mm', factor: 1 },
  'yield-point-extension': { label: 'Yield point extension', ...PERCENT },
  'elongation-after-fracture': { label: 'Elongation after fracture', ...PERCENT },
  'reduction-of-area': { label: 'Reduction of area', ...PERCENT },
};

/** What the strength of a test type is called in the trade. */
const STRENGTH_OF: Readonly<Record<string, string>> = {
  tension: 'Tensile strength',
  compression: 'Compressive strength',
  'flexure-3': 'Flexural strength',
  'flexure-4': 'Flexural strength',
  'lap-shear': 'Lap shear strength',
  'short-beam': 'Short-beam strength',
  'in-plane-shear': 'In-plane shear strength',
  'double-shear': 'Shear strength',
  torsion: 'Torsional strength',
  tear: 'Tear strength',
  strip: 'Strip strength',
};
const MODULUS_OF: Readonly<Record<string, string>> = {
  tension: 'Tensile modulus',
  compression: 'Compressive modulus',
  'flexure-3': 'Flexural modulus',
  'flexure-4': 'Flexural modulus',
  torsion: 'Shear modulus',
};
/** Test types whose stress is a force per width or thickness. */
const PER_WIDTH_TESTS: readonly string[] = ['strip', 'tear', 'peel'];
/** Results in MPa that are no stress of the specimen. */
const OF_THE_MATERIAL: readonly string[] = ['modulus', 'hardening-coefficient'];
const TORQUE: Readonly<Record<string, Partial<ResultWords>>> = {
  'peak-load': { label: 'Peak torque', unit: 'N·m' },
  stiffness: { label: 'Torsional stiffness', unit: 'N·m/°' },
};

/**
 * Name and unit of a result in a test of some type; a key that nobody named is shown as it is. A key may say at which strain (mm for a
 * component) it was read, as a fraction: `stress-at-strain@0.1`.
 */
export function resultWords(key: string, testType: string): ResultWords {
  const [plain = key, at] = key.split('@');
  const words = wordsOf(plain, testType);
  if (at === undefined) return words;
  const where =
    testType === 'component' ? `${at} mm` : `${Number((Number(at) * PERCENT.factor).toPrecision(SHOWN_DIGITS))} %`;
  return { ...words, label: `${words.label}, ${where}` };
}

const SHOWN_DIGITS = 6;

function wordsOf(key: string, testType: string): ResultWords {
  const words = { ...(WORDS[key] ?? { label: key, unit: '', factor: 1 }), ...stressUnit(key, testType) };
  if (key === 'peak-stress') return { ...words, label: STRENGTH_OF[testType] ?? words.label };
  if (key === 'modulus') return { ...words, label: MODULUS_OF[testType] ?? words.label };
  return testType === 'torsion' ? { ...words, ...TORQUE[key] } : words;
}

/** What stands for stress in a test of some type: nothing divides the force on a component, and a width alone that of a peel. */
function stressUnit(key: string, testType: string): Partial<ResultWords> {
  const unit = WORDS[key]?.unit;
  if (key === 'stiffness' || OF_THE_MATERIAL.includes(key)) return {};
  if (unit !== MPA.unit && unit !== PER_WIDTH.unit) return {};
  if (testType === 'component') return { unit: 'N' };
  if (testType === 'fracture' && key === 'peak-stress') return { label: 'Stress intensity at peak', unit: 'MPa·√m' };
  return PER_WIDTH_TESTS.includes(testType) ? PER_WIDTH : {};
}
