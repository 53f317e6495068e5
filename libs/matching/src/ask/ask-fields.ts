import { END_SHAPES } from '../register/item-choices.js';
import type { AskField } from './ask.js';
import type { GeometryKey, Method } from '../register/method.js';

/**
 * What the request form asks for a method, in the order of the form: only what this method needs, in internal units with
 * its bounds. A form converts with libs/units; {@link checkAsk} judges by the same list.
 */
export function askFields(method: Method): AskField[] {
  return [
    {
      ...plain('geometry.shape', 'Shape', 'choice', 'Cross-section of the loaded part.'),
      choices: named(method.shapes),
    },
    ...method.geometry.map((need): AskField => ({
      field: `geometry.${need.key}`,
      label: GEOMETRY_LABELS[need.key],
      type: 'number',
      quantity: need.key === 'areaMm2' ? 'area' : 'length',
      unit: need.key === 'areaMm2' ? 'mm²' : 'mm',
      min: need.min,
      max: need.max,
      ...(need.usual === undefined ? {} : { usual: need.usual }),
      ...(need.shapes ? { shapes: need.shapes } : {}),
      required: need.required,
      help: need.help,
    })),
    ...endField(method),
    ...strengthFields(method),
    ...resultFields(method),
    { ...plain('specimens', 'Specimens', 'number', usualCount(method)), min: 1, max: 1000, usual: method.minSpecimens },
    {
      ...plain('temperatureC', 'Test temperature', 'number', 'Leave empty for room temperature.'),
      quantity: 'temperature',
      unit: '°C',
      min: -196,
      max: 1200,
      required: false,
    },
    ...speedField(method),
    ...travelField(method),
    ...optionFields(method),
  ];
}

/** Labels of the figures of a specimen. */
export const GEOMETRY_LABELS: Readonly<Record<GeometryKey, string>> = {
  widthMm: 'Width',
  thicknessMm: 'Thickness',
  diameterMm: 'Diameter',
  outerDiameterMm: 'Outer diameter',
  innerDiameterMm: 'Inner diameter',
  areaMm2: 'Loaded area',
  parallelLengthMm: 'Parallel length',
  gaugeLengthMm: 'Gauge length',
  gripSeparationMm: 'Distance between the grips',
  heightMm: 'Height',
  lengthMm: 'Overall length',
  spanMm: 'Support span',
  overlapMm: 'Overlap',
  crackLengthMm: 'Crack length',
  endWidthMm: 'Width at the ends',
  endThicknessMm: 'Thickness or diameter at the ends',
};

const STRENGTH_UNITS = {
  MPa: { quantity: 'stress', unit: 'MPa', max: 10_000 },
  'N/mm': { quantity: 'forcePerWidth', unit: 'N/mm', max: 10_000 },
  'MPa·√m': { quantity: 'fractureToughness', unit: 'MPa·√m', max: 1000 },
} as const;

/** Unit of the strength that a method's load formula starts from. */
export function strengthUnitOf(method: Pick<Method, 'testType'>): keyof typeof STRENGTH_UNITS {
  if (method.testType === 'fracture') return 'MPa·√m';
  return ['peel', 'tear', 'strip'].includes(method.testType) ? 'N/mm' : 'MPa';
}

/** Whether a load formula starts from a strength at all; a component's load is declared. */
export function hasStrength(method: Pick<Method, 'testType'>): boolean {
  return method.testType !== 'component';
}

function strengthFields(method: Method): AskField[] {
  const torque = method.direction === 'torque';
  const peak: AskField = {
    ...plain('peak', 'Highest load expected', 'band', 'A band, if you know it better than material and geometry do.'),
    quantity: torque ? 'torque' : 'force',
    unit: torque ? 'N·m' : 'N',
    min: 1e-6,
    max: 1e8,
    required: !hasStrength(method),
  };
  if (!hasStrength(method)) return [peak];
  const by = STRENGTH_UNITS[strengthUnitOf(method)];
  return [
    { ...plain('materialId', 'Material', 'choice', 'Its strength band gives the expected load.'), required: false },
    { ...plain('strength', 'Strength band', 'band', 'Overrules the library.'), ...by, min: 1e-6, required: false },
    peak,
    ...modulusField(method),
  ];
}

function modulusField(method: Method): AskField[] {
  if (!method.modulusStrain) return [];
  const help = 'Overrules the library; it gives the smallest force that must be read.';
  return [
    {
      ...plain('modulusMPa', "Young's modulus", 'band', help),
      quantity: 'stress',
      unit: 'MPa',
      min: 0.001,
      max: 2e6,
      required: false,
    },
  ];
}

function endField(method: Method): AskField[] {
  const choices = method.ends.by === 'grips' ? method.ends.ends : END_SHAPES.slice(0, 1);
  if (choices.length < 2) return [];
  return [{ ...plain('endShape', 'Ends', 'choice', 'What the grips take hold of.'), choices: named(choices) }];
}

function resultFields(method: Method): AskField[] {
  return [{ ...plain('results', 'Results', 'choices', 'What the report shall give.'), choices: named(method.results) }];
}

function speedField(method: Method): AskField[] {
  const rule = method.speeds.map((stage) => stage.rule).find((each) => each.kind === 'asked');
  if (!rule) return [];
  const bounds = {
    quantity: 'speed',
    unit: 'mm/min',
    min: rule.minMmPerMin,
    max: rule.maxMmPerMin,
    usual: rule.usualMmPerMin,
  };
  return [{ ...plain('speedMmPerMin', 'Speed', 'number', 'The method leaves it to you.'), ...bounds, required: false }];
}

function travelField(method: Method): AskField[] {
  if (method.direction === 'torque') return [];
  const help = 'Crosshead travel to the end of the test; left empty it is estimated.';
  const required = method.testType === 'component';
  return [
    { ...plain('travelMm', 'Travel', 'number', help), quantity: 'length', unit: 'mm', min: 0.01, max: 5000, required },
  ];
}

function optionFields(method: Method): AskField[] {
  const lower = flag(
    'options.lowerForceClass',
    'A lower force class will do',
    'A deviation from the method, stated on the report.',
  );
  if (!method.strain) return [lower];
  return [
    flag(
      'options.contactExtensometer',
      'An extensometer may touch the specimen',
      'No: only one without contact will do.',
    ),
    flag('options.crossheadStrain', 'Crosshead strain will do', 'Where the method does not demand an extensometer.'),
    lower,
  ];
}

function usualCount(method: Method): string {
  return `${method.designation}: ${method.minSpecimens} or more are usual.`;
}

function plain(field: string, label: string, type: AskField['type'], help: string): AskField {
  return { field, label, type, required: true, help };
}

function flag(field: string, label: string, help: string): AskField {
  return { field, label, type: 'flag', required: false, help };
}

function named(values: readonly string[]): { value: string; label: string }[] {
  return values.map((value) => ({ value, label: words(value) }));
}

/** `offset-yield` reads `Offset yield`. */
function words(value: string): string {
  const text = value.replaceAll('-', ' ');
  return text.charAt(0).toUpperCase() + text.slice(1);
}
