import type { Calibration, Extensometer } from '../item.js';
import type { StrainNeed } from '../needs.js';
import { isGoodFor, isOfClass } from '../usable-windows.js';
import type { CalibrationNeed } from '../usable-windows.js';
import { atLeast, notBelow, told, worst } from './rule.js';
import type { Context, Finding, Rule } from './rule.js';

/** A gauge length within 1 % of the one asked for is the same (common practice, no source). */
const GAUGE_TOLERANCE = 0.01;

/**
 * The extensometer has the gauge length, follows the extension, is calibrated to the class over all that is read, takes the specimen and may touch it.
 * Without one a result is a caution, or a failure where the method demands one.
 */
export const strain: Rule = {
  code: 'strain',
  source: 'ISO 9513, ASTM E83 and the method',
  checks: [{ sees: ['extensometer'], judge: ({ extensometer }, context) => judge(extensometer, context) }],
};

function judge(extensometer: Extensometer | null, context: Context): Finding | null {
  const { strain: need } = context.needs;
  if (need.how === 'none') return null;
  if (need.how === 'crosshead') return told('caution', 'crosshead-strain', []);
  if (!extensometer) return told(need.demanded ? 'fail' : 'caution', 'no-extensometer', [], wanted(need), null);
  return worst([...suits(extensometer, context), classAndRange(extensometer, context)]);
}

function wanted({ rule, gaugeLength }: StrainNeed): string {
  return [
    gaugeLength ? `gauge length ${gaugeLength.value} mm` : 'deflection',
    `${rule!.standard} class ${rule!.className}`,
  ].join(', ');
}

function suits({ id, details }: Extensometer, { needs }: Context): (Finding | null)[] {
  const { strain: need, specimen } = needs;
  if (details.measures !== need.rule!.measures)
    return [told('fail', 'measures-other', [id], need.rule!.measures, details.measures)];
  const travel =
    needs.direction === 'compression' && details.measures === 'axial' ? details.travelMinusMm : details.travelPlusMm;
  return [
    details.contact && !need.contactAllowed ? told('fail', 'may-not-touch', [id]) : null,
    need.gaugeLength ? gauge(id, details.gaugeLengthsMm, need.gaugeLength.value) : null,
    atLeast('extension-too-long', [id], need.extension?.value ?? 0, travel, 'mm'),
    notBelow('specimen-too-thin', [id], specimen.bodyThicknessMm, details.specimenMinMm, 'mm'),
    atLeast('specimen-too-thick', [id], specimen.bodyThicknessMm, details.specimenMaxMm, 'mm'),
  ];
}

function gauge(id: string, lengthsMm: readonly number[], neededMm: number): Finding | null {
  const has = lengthsMm.some((each) => Math.abs(each - neededMm) <= GAUGE_TOLERANCE * neededMm);
  return has ? null : told('fail', 'no-such-gauge', [id], neededMm, lengthsMm.join(', '), 'mm');
}

function classAndRange(extensometer: Extensometer, { extensometerNeed, period }: Context): Finding | null {
  const need = extensometerNeed!;
  const inForce = extensometer.calibrations.filter(
    ({ validFromMs, dueMs }) => validFromMs < period.endMs && dueMs > period.startMs,
  );
  const all = (inForce.length > 0 ? inForce : extensometer.calibrations).filter(
    ({ direction }) => direction === 'extension',
  );
  const ofClass = all.filter((each) => isOfClass(each, need));
  if (ofClass.length === 0) {
    const held = all.map(({ standard, className }) => `${standard} class ${className}`).join(', ') || 'none';
    return told('fail', 'extensometer-class', [extensometer.id], `${need.standard} class ${need.className}`, held);
  }
  return rangeFinding(extensometer, need, ofClass.find((each) => isGoodFor(each, need)) ?? widest(ofClass));
}

/** Both ends of the range; the worse of them counts. */
function rangeFinding({ id }: Extensometer, need: CalibrationNeed, { from, to }: Calibration): Finding | null {
  return worst([
    notBelow('extension-below-verified', [id], need.from, from, 'mm'),
    atLeast('extension-not-verified', [id], need.to, to, 'mm'),
  ]);
}

function widest(calibrations: readonly Calibration[]): Calibration {
  return calibrations.reduce((best, each) => (each.to - each.from > best.to - best.from ? each : best));
}
