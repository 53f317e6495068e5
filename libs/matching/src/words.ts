import { formatNumber, formatQuantity, isUnit } from '#libs/units/src/index.js';
import type { Unit } from '#libs/units/src/index.js';
import type { Finding } from './rules/rule.js';

/** Names an item for people, by its id. */
export type Naming = (itemId: string) => string;

/**
 * The sentence of a finding: what was found, what is allowed, what to do. The one place where findings become words.
 *
 * @param name tag of an item by its id
 */
export function sentenceOf(finding: Finding, name: Naming): string {
  const say = SENTENCES[finding.reason];
  if (!say)
    return `${finding.reason}: needed ${text(finding.required, finding.unit)}, there is ${text(finding.available, finding.unit)}.`;
  return say(new Facts(finding, name));
}

/** What a sentence may speak of, put into words when it does. */
class Facts {
  constructor(
    private readonly finding: Finding,
    private readonly name: Naming,
  ) {}

  get first(): string {
    return this.nth(0);
  }

  get second(): string {
    return this.nth(1);
  }

  get all(): string {
    return this.finding.items.map(this.name).join(', ');
  }

  get need(): string {
    return text(this.finding.required, this.finding.unit);
  }

  get has(): string {
    return text(this.finding.available, this.finding.unit);
  }

  get short(): string {
    const { margin, unit } = this.finding;
    return margin === null ? '' : text(Math.abs(margin), unit);
  }

  get ok(): boolean {
    return this.finding.outcome === 'pass';
  }

  private nth(place: number): string {
    const id = this.finding.items[place];
    return id === undefined ? '' : this.name(id);
  }
}

type Say = (facts: Facts) => string;

/** A limit that is kept or broken, with what to do when it is broken. */
const limit =
  (is: (facts: Facts) => string, then: string): Say =>
  (facts) =>
    facts.ok ? `${is(facts)}.` : `${is(facts)}: ${facts.short} short. ${then}`;

const SENTENCES: Record<string, Say> = {
  'frame-cannot-load': ({ first }) => `${first} cannot load in this direction. Choose another frame.`,
  'frame-too-small': limit(
    ({ need, has, first }) => `Needs ${need} with margin; ${first} carries ${has}`,
    'Choose a larger frame or lower the peak.',
  ),
  'cell-exceeds-frame': limit(
    ({ first, second, need, has }) =>
      `Cell ${first} is rated ${need}, frame ${second} ${has}; a cell may match its frame but not exceed it`,
    'Choose a smaller cell or a larger frame.',
  ),
  'cell-blind': ({ first, need, has }) => `${first} senses ${has}, not ${need}. Choose another cell.`,
  'cell-too-small': limit(
    ({ first, need, has }) => `Needs ${need} with margin; ${first} is rated ${has}`,
    'Choose a larger cell.',
  ),
  'cell-too-small-hung': limit(
    ({ first, need, has }) => `Needs ${need} with margin and what hangs on it; ${first} is rated ${has}`,
    'Choose a larger cell or lighter grips.',
  ),
  'hung-weight': ({ first, need, has }) =>
    `${need} hang on ${first} before the test; more than ${has} is a tenth of its range used up. Choose lighter grips or a larger cell.`,
  'link-too-weak': limit(
    ({ first, need, has }) => `Needs ${need} with margin at test temperature; ${first} carries ${has}`,
    'Choose a stronger link or lower the peak.',
  ),
  'not-made-for': ({ first }) => `${first} is not made for this direction. Choose another.`,
  'never-verified': ({ first, need }) => `${first} has no calibration in ${need}. Have it calibrated.`,
  'class-too-low': ({ first, need, has }) =>
    `The method asks for ${need}; ${first} holds ${has}. Calibrate it to that class, or agree a lower one.`,
  'below-verified': limit(
    ({ first, need, has }) => `The smallest reading is ${need}; ${first} is verified from ${has}`,
    'Choose a smaller cell, or verify further down.',
  ),
  'above-verified': limit(
    ({ first, need, has }) => `The test reaches ${need}; ${first} is verified to ${has}`,
    'Choose a larger cell, or verify further up.',
  ),
  lapses: ({ all, ok }) =>
    ok
      ? `The calibration of ${all} is in force throughout.`
      : `${all} is usable for part of the time only: its calibration lapses, or it is promised elsewhere.`,
  lapsed: ({ first }) => `The calibration of ${first} has lapsed. Have it calibrated before it is used.`,
  'never-calibrated': ({ first }) => `${first} needs a calibration and has none. Have it calibrated.`,
  'never-together': ({ all }) =>
    `${all} are never usable at the same time while someone who may run the method is on shift. Change the period or the units.`,
  'below-band': ({ first, need, has, ok }) =>
    ok
      ? `The peak of ${need} sits well in the range of ${first}.`
      : `The peak of ${need} lies below ${has}, the part of ${first} where it reads best. A smaller cell would read it better.`,
  'above-band': ({ first, need, has, ok }) =>
    ok
      ? `The peak of ${need} sits well in the range of ${first}.`
      : `The peak of ${need} lies above ${has}, near the end of ${first}. A larger cell would leave more room.`,
  meets: () => 'All ends meet.',
  'no-seat': ({ first, second, need, has }) =>
    `${second} takes a cell at ${has}, not at the ${need}; ${first} has no place there.`,
  'do-not-meet': ({ first, second, need, has }) =>
    `${first} offers ${need}; ${second} has ${has}. Add an adapter that joins them.`,
  'too-many-adapters': ({ has, need }) => `${has} adapters on one side; ${need} is the most.`,
  'too-tall': limit(
    ({ need, has, first }) => `Stack, specimen, travel and clearance take ${need}; ${first} opens ${has}`,
    'Use shorter grips, a shorter specimen or a taller frame.',
  ),
  'too-short': limit(
    ({ need, has, first }) => `The train closes to ${need}; ${first} comes down to ${has} only`,
    'Add an adapter of that length.',
  ),
  'ends-meet': limit(
    ({ need, has }) => `The test closes the ends by ${need}; there are ${has} between them`,
    'Lower the travel or use a taller specimen.',
  ),
  'too-wide': limit(
    ({ need, has, first, second }) =>
      `${first} is ${need} wide; between the columns of ${second || first} there are ${has}`,
    'Choose a wider frame.',
  ),
  'travel-too-short': limit(
    ({ need, has, first }) => `Needs ${need} of travel; ${first} has ${has}`,
    'Use a shorter specimen or a frame with more travel.',
  ),
  'too-slow': limit(
    ({ need, has, first }) => `The method asks for ${need}; ${first} goes no slower than ${has}`,
    'Choose another frame.',
  ),
  'too-fast': limit(
    ({ need, has, first }) => `The method asks for ${need}; ${first} reaches ${has}`,
    'Choose a faster frame.',
  ),
  'too-fast-at-force': limit(
    ({ need, has, first }) => `The method asks for ${need}; at this force ${first} reaches ${has}`,
    'Choose a stronger frame.',
  ),
  'no-load-control': ({ first, need }) =>
    `The method sets a load rate; ${first} has no ${need} control, so that the speed only comes near it.`,
  'end-not-taken': ({ first, need, has }) => `${first} takes ${has} ends, not ${need}. Choose other grips.`,
  'too-thin': limit(
    ({ need, has, all }) => `The end is ${need} thick; ${all} holds from ${has}`,
    'Choose faces for thinner ends.',
  ),
  'too-thick': limit(
    ({ need, has, all }) => `The end is ${need} thick; ${all} opens to ${has}`,
    'Choose grips that open wider, or a thinner end.',
  ),
  'too-wide-for-face': limit(
    ({ need, has, all }) => `The end is ${need} wide; the faces of ${all} are ${has}`,
    'Choose wider faces or a narrower specimen.',
  ),
  'no-faces': ({ all, need }) => `${all} needs faces for the seat ${need}. Put some on.`,
  'faces-do-not-seat': ({ first, second, need, has }) =>
    `${first} is made for the seat ${has}; ${second} has ${need}. Choose other faces.`,
  'platen-too-small': limit(
    ({ need, has, first }) => `The specimen is ${need} across; ${first} has ${has}`,
    'Choose a larger platen.',
  ),
  'no-spherical-seat': ({ all }) => `${all} has no spherical seat, which this method needs or prefers.`,
  'span-too-short': limit(
    ({ need, has, first }) => `The span is ${need}; ${first} sets ${has} at least`,
    'Choose a smaller fixture or a longer span.',
  ),
  'span-too-long': limit(
    ({ need, has, first }) => `The span is ${need}; ${first} sets ${has} at most`,
    'Choose a longer fixture or a shorter span.',
  ),
  'too-wide-for-fixture': limit(
    ({ need, has, first }) => `The specimen is ${need} wide; ${first} takes ${has}`,
    'Choose a wider fixture or a narrower specimen.',
  ),
  'too-thick-for-fixture': limit(
    ({ need, has, first }) => `The specimen is ${need} thick; ${first} takes ${has}`,
    'Choose a larger fixture or a thinner specimen.',
  ),
  surface: ({ first, need, has, ok }) =>
    ok
      ? `The ${has} faces of ${first} suit the material.`
      : `${first} has ${has} faces; ${need} suit this material. Watch for slip or a break in the jaw.`,
  'face-shape': ({ first, need, has }) => `${first} has ${has} faces; ${need} ones suit these ends. Watch for slip.`,
  'no-chamber': ({ need }) => `The test is at ${need}; that needs a chamber.`,
  'too-cold': limit(
    ({ need, has, first }) => `The test is at ${need}; ${first} goes down to ${has}`,
    'Choose a colder chamber.',
  ),
  'too-hot': limit(
    ({ need, has, first }) => `The test is at ${need}; ${first} goes up to ${has}`,
    'Choose a hotter chamber.',
  ),
  'chamber-too-wide': limit(
    ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} needs ${has}`,
    'Choose a wider frame.',
  ),
  'chamber-too-narrow': limit(
    ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} fits up to ${has}`,
    'Choose another chamber.',
  ),
  'too-wide-for-chamber': limit(
    ({ need, has, first, second }) => `${first} is ${need} wide; inside ${second} there are ${has}`,
    'Choose slimmer grips.',
  ),
  'too-tall-for-chamber': limit(
    ({ need, has, first }) => `Specimen and travel take ${need}; inside ${first} there are ${has}`,
    'Use a shorter specimen.',
  ),
  'item-too-cold': limit(
    ({ need, has, first }) => `The test is at ${need}; ${first} may be used from ${has}`,
    'Choose an item for the cold.',
  ),
  'item-too-hot': limit(
    ({ need, has, first }) => `The test is at ${need}; ${first} may be used up to ${has}`,
    'Choose an item for the heat.',
  ),
  'no-thermocouple': () => 'No thermocouple is fitted: the soak is judged by the air in the chamber alone.',
  'crosshead-strain': () => 'Strain is taken from the crosshead, so that the stretch of frame and grips is part of it.',
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
  'not-supplied': ({ first, second, need, has, ok }) =>
    ok ? `${second} supplies ${need} for ${first}.` : `${first} needs ${need}; ${second} has ${has}.`,
  hazards: ({ need }) =>
    `Take care: ${need.replaceAll('-', ' ')}. Follow the guide of the frame and the lab's own rules.`,
  'no-guard': ({ first, need }) => `The break can throw fragments or let go ${need}; ${first} has no guard. Fit one.`,
  'guard-too-weak': limit(
    ({ need, has, first }) => `The break lets go ${need}; the guard of ${first} holds back ${has}`,
    'Fit a stronger guard.',
  ),
  'guard-not-interlocked': ({ first }) =>
    `The guard of ${first} is not interlocked: close it before every start and keep clear.`,
  'guard-too-wide': limit(
    ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} needs ${has}`,
    'Choose another guard.',
  ),
  'guard-too-narrow': limit(
    ({ need, has, first, second }) => `${second} has ${need} between the columns; ${first} fits up to ${has}`,
    'Choose another guard.',
  ),
  faulty: ({ first }) => `${first} has an open fault. Repair it, or use another.`,
  'out-of-use': ({ first }) => `${first} is out of use. Put it back in service, or use another.`,
  held: ({ first }) => `${first} is promised elsewhere for the whole time. Free it, or use another.`,
  authorised: ({ has }) => `${has} may run this method.`,
  'nobody-authorised': () => 'Nobody is authorised for this method. Authorise a technician.',
  'nobody-on-shift': ({ has }) =>
    `${has} may run this method, but none is on shift in this period. Change the roster or the period.`,
  'no-cell': ({ need }) => `The lab has no load cell for ${need}.`,
  'no-ends': ({ need }) => `The lab has nothing to hold the specimen: ${need}.`,
};

for (const kind of ['force', 'torque', 'strain', 'temperature', 'video', 'displacement']) {
  SENTENCES[`channel-${kind}`] = ({ first, need, has, ok }) =>
    ok
      ? `${first} has ${has} ${kind} channels; ${need} needed.`
      : `${first} has ${has} free ${kind} channels; ${need} needed. Choose another frame or add a channel.`;
}

const DIGITS = 4;

function text(value: number | string | null, unit: string | null): string {
  if (typeof value !== 'number') return value ?? 'nothing';
  if (unit === 'ms') return new Date(value).toISOString().slice(0, 10);
  if (unit && isUnit(unit)) return formatQuantity(value, scaled(value, unit), DIGITS);
  return unit && unit !== 'channels' ? `${formatNumber(value, DIGITS)} ${unit}` : formatNumber(value, DIGITS);
}

/** Large forces read better in kN. */
function scaled(value: number, unit: Unit): Unit {
  return unit === 'N' && Math.abs(value) >= 10_000 ? 'kN' : unit;
}
