import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { StrainNeed } from '../ask/needs.js';
import type { Calibration, Extensometer } from '../register/item.js';
import { CAUTION, FAIL, PASS, worst } from './outcome.js';
import type { Outcome } from './outcome.js';
import type { Report } from './report.js';
import { rule } from './rule.js';
import type { Context } from './rule.js';
import { limit } from './sentence.js';
import { isGoodFor, isOfClass } from './usable-windows.js';
import { classesOf, relevant } from './verified-range.js';

/** A gauge length within 1 % of the one that is needed is the same (common practice, no source). */
const GAUGE_TOLERANCE = 0.01;

/**
 * The extensometer has the gauge length, follows the extension, is calibrated to the class over all that is read, takes the specimen
 * and may touch it. Without one a result is a caution, or a failure where the method demands one.
 */
export const strain = rule({
  code: 'strain',
  source: 'ISO 9513, ASTM E83 and the method',
  cautionsByOnePart: true,
  checks: [
    { sees: ['extensometer'], judge: ({ extensometer }, context, report) => judge(extensometer, context, report) },
  ],
  sentences: {
    'crosshead-strain': () =>
      'Strain is taken from the crosshead, so that the stretch of frame and grips is part of it.',
    'no-extensometer': ({ need, ok }) =>
      ok ? 'No strain is measured.' : `No extensometer is fitted; the results ask for ${need}.`,
    'measures-other': ({ first, need, has }) => `${first} measures ${has} strain; needed is ${need}.`,
    'may-not-touch': ({ first }) =>
      `${first} touches the specimen, which this one does not allow. Choose one without contact.`,
    'no-such-gauge': ({ first, need, has }) => `Needed is a gauge length of ${need}; ${first} has ${has} mm.`,
    'extension-too-long': limit(
      ({ need, has, first }) => `The extension is ${need}; ${first} follows ${has}`,
      'Choose one with more travel, or take it off before the break.',
    ),
    'specimen-too-thin': limit(
      ({ need, has, first }) => `The specimen is ${need} thick; ${first} takes from ${has}`,
      'Choose another extensometer.',
    ),
    'specimen-too-thick': limit(
      ({ need, has, first }) => `The specimen is ${need} thick; ${first} takes up to ${has}`,
      'Choose another extensometer.',
    ),
    'extensometer-class': ({ first, need, has }) =>
      `The method asks for ${need}; ${first} holds ${has}. Calibrate it to that class.`,
    'extension-not-verified': limit(
      ({ need, has, first }) => `The extension is ${need}; ${first} is verified to ${has}`,
      'Verify it further, or choose another.',
    ),
    'extension-below-verified': limit(
      ({ need, has, first }) => `The smallest extension that is read is ${need}; ${first} is verified from ${has}`,
      'Verify it further down, or choose another.',
    ),
  },
});

function judge(extensometer: Extensometer | null, context: Context, report: Report): Outcome {
  const { strain: need } = context.needs;
  if (need.how === 'none') return PASS;
  if (need.how === 'crosshead') return report.say(CAUTION, 'crosshead-strain', []);
  if (!extensometer) return report.say(need.demanded ? FAIL : CAUTION, 'no-extensometer', [], () => wanted(need));
  return worst(suits(extensometer, context, report), classAndRange(extensometer, context, report));
}

function wanted({ rule: asked, gaugeLength }: StrainNeed): string {
  const gauge = gaugeLength ? `gauge length ${gaugeLength.value} mm` : 'deflection';
  return `${gauge}, ${asked!.standard} class ${asked!.className}`;
}

function suits(extensometer: Extensometer, { needs }: Context, report: Report): Outcome {
  const { details } = extensometer;
  const { strain: need, specimen } = needs;
  const { measures } = need.rule!;
  if (details.measures !== measures)
    return report.say(FAIL, 'measures-other', extensometer, measures, details.measures);
  const pushes = needs.direction === 'compression' && details.measures === 'axial';
  const travelMm = pushes ? details.travelMinusMm : details.travelPlusMm;
  const touches = details.contact && !need.contactAllowed ? report.say(FAIL, 'may-not-touch', extensometer) : PASS;
  return worst(
    worst(touches, gauge(extensometer, need.gaugeLength?.value ?? null, report)),
    report.atLeast('extension-too-long', need.extension?.value ?? 0, travelMm, 'mm', extensometer),
    worst(
      report.notBelow('specimen-too-thin', specimen.bodyThicknessMm, details.specimenMinMm, 'mm', extensometer),
      report.atLeast('specimen-too-thick', specimen.bodyThicknessMm, details.specimenMaxMm, 'mm', extensometer),
    ),
  );
}

function gauge(extensometer: Extensometer, neededMm: number | null, report: Report): Outcome {
  if (neededMm === null) return PASS;
  const { gaugeLengthsMm } = extensometer.details;
  if (gaugeLengthsMm.some((each) => Math.abs(each - neededMm) <= GAUGE_TOLERANCE * neededMm)) return PASS;
  return report.say(FAIL, 'no-such-gauge', extensometer, neededMm, () => gaugeLengthsMm.join(', '), 'mm');
}

function classAndRange(extensometer: Extensometer, { extensometerNeed, period }: Context, report: Report): Outcome {
  const need = extensometerNeed!;
  const held = relevant(extensometer.calibrations, period).filter(({ direction }) => direction === 'extension');
  const ofClass = held.filter((each) => isOfClass(each, need));
  if (ofClass.length === 0)
    return report.say(
      FAIL,
      'extensometer-class',
      extensometer,
      () => `${need.standard} class ${need.className}`,
      () => classesOf(held) || 'none',
    );
  return rangeOf(ofClass.find((each) => isGoodFor(each, need)) ?? widest(ofClass), need, extensometer, report);
}

/** Both ends of a verified range; the worse of them counts. */
function rangeOf({ from, to }: Calibration, need: CalibrationNeed, item: Extensometer, report: Report): Outcome {
  return worst(
    report.notBelow('extension-below-verified', need.from, from, 'mm', item),
    report.atLeast('extension-not-verified', need.to, to, 'mm', item),
  );
}

function widest(calibrations: readonly Calibration[]): Calibration {
  return calibrations.reduce((best, each) => (each.to - each.from > best.to - best.from ? each : best));
}
