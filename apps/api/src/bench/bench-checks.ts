import type { LabSettings } from '#libs/contract/src/index.js';
import type { Item, LimitStops, Needs, Utility, Verdict } from '#libs/matching/src/index.js';
import type { ShiftCheckReason } from '#libs/metrology/src/index.js';
import { formatNumber } from '#libs/units/src/index.js';
import { SHIFT_CHECK_WORDS } from './shift-check.js';

/** A check before the first specimen, as the job asks for it. */
export interface BenchCheck {
  key: string;
  label: string;
  detail: string;
  required: boolean;
  kind: 'tick' | 'value' | 'shift-check';
  unit?: string;
  /** Largest value that passes, for a check with a value. */
  max?: number;
}

export interface CheckFacts {
  needs: Needs;
  /** Items of the train, by their place. */
  train: readonly { role: string; item: Item }[];
  frameTag: string;
  limitStops: LimitStops | null;
  verdicts: readonly Verdict[];
  settings: LabSettings;
  shiftCheck: ShiftCheckReason | null;
}

type Rule = (facts: CheckFacts) => BenchCheck | BenchCheck[] | null;

/** Every check that this job asks for, in working order. */
export function checksFor(facts: CheckFacts): BenchCheck[] {
  return RULES.flatMap((rule) => rule(facts) ?? []);
}

const tick = (key: string, label: string, detail: string, required = true): BenchCheck => ({
  key,
  label,
  detail,
  required,
  kind: 'tick',
});

const shiftCheck: Rule = ({ train, frameTag, settings, shiftCheck: reason }) => {
  const cell = tagsOf(train, ['load-cell']);
  const why = reason ? `Needed: ${SHIFT_CHECK_WORDS[reason]}.` : 'The last one holds.';
  const detail = `A known load on ${cell} at ${frameTag}; the reading may be off by ${formatNumber(settings.shiftCheckTolerancePct)} % at most. ${why} A cell that fails is out of use at once.`;
  return { key: 'shift-check', label: 'Shift check of the cell', detail, required: true, kind: 'shift-check' };
};

const limitStops: Rule = ({ limitStops: stops }) =>
  stops &&
  tick(
    'limit-stops',
    'Limit stops set',
    `Opening between the coupling faces: lower stop at ${mm(stops.lowerStopMm)}, upper stop at ${mm(stops.upperStopMm)}; the test starts at ${mm(stops.startOpeningMm)}. Set them before anything moves.`,
  );

const guard: Rule = ({ train, frameTag, verdicts }) => {
  const asked = verdicts.find(({ rule }) => rule === 'guarding');
  const needed = asked !== undefined && asked.reason !== '' && asked.reason !== 'hazards';
  const fitted = tagsOf(train, ['guard']);
  const which = fitted || `the guard of ${frameTag}`;
  return tick(
    'guard',
    'Guard in place',
    needed || fitted ? `Close ${which} before every start.` : 'Close the guard where the frame has one.',
    needed || fitted !== '',
  );
};

const emergencyStop: Rule = () =>
  tick(
    'emergency-stop',
    'Emergency stop reachable, and released on purpose',
    'Reach it from where you stand, press it once, see that nothing moves, and release it by hand.',
  );

const warmUp: Rule = ({ frameTag, settings }) =>
  tick(
    'warm-up',
    'Frame warmed up, self-test passed',
    `${frameTag} on for ${formatNumber(settings.warmUpMin)} min or more, and its own self-test without a fault.`,
  );

const channels: Rule = ({ train }) => {
  const wired = train.filter(({ item }) => ['load-cell', 'extensometer', 'transducer'].includes(item.kind));
  return tick(
    'channels',
    'Transducers on the right channels',
    `${wired.map(({ item }) => item.tag).join(', ')}: touch each lightly and see that its own channel answers, with the right sign.`,
  );
};

const SUPPLIES: Partial<Record<Utility, readonly [label: string, detail: string]>> = {
  'compressed-air': [
    'Air pressure',
    'Air on, pressure as the guide of the grips says, hoses seated and without leaks.',
  ],
  hydraulics: [
    'Hydraulic pressure',
    'Pump on, pressure as the guide of the grips says, hoses sound: a leak under pressure cuts skin.',
  ],
  'cooling-water': ['Cooling water', 'Water runs, and nothing drips.'],
  'liquid-nitrogen': ['Liquid nitrogen', 'Valve, hose and oxygen alarm sound; room aired.'],
  extraction: ['Extraction', 'Extraction runs and draws at the specimen.'],
};

const supplies: Rule = ({ train }) =>
  [...new Set(train.flatMap(({ item }) => item.utilities))].flatMap((utility) => {
    const words = SUPPLIES[utility];
    const users = train.filter(({ item }) => item.utilities.includes(utility)).map(({ item }) => item.tag);
    return words
      ? [
          tick(
            utility === 'compressed-air' ? 'air-pressure' : utility,
            words[0],
            `${words[1]} For ${users.join(', ')}.`,
          ),
        ]
      : [];
  });

const ends: Rule = ({ needs, train }) => {
  const { spanMm } = needs.specimen;
  if (needs.ends.by === 'platens')
    return tick('platens', 'Platens clean and parallel', 'No grit between the faces; a spherical seat moves freely.');
  if (needs.ends.by === 'fixture') {
    return tick(
      'fixture',
      'Fixture set',
      spanMm === null
        ? `${tagsOf(train, ['ends', 'upper', 'lower'])} seated and centred.`
        : `Supports measured at a span of ${mm(spanMm)}, load nose at the middle and square to it.`,
    );
  }
  const faces = tagsOf(train, ['faces']);
  return tick(
    'faces',
    'Jaw faces and alignment aid fitted',
    `${faces ? `${faces} on both sides, seated` : 'Faces seated'} and clean; alignment aid in place, so that the specimen sits on the axis.`,
  );
};

const extensometer: Rule = ({ needs, train }) => {
  const tag = tagsOf(train, ['extensometer']);
  if (!tag) return null;
  const gauge = needs.strain.gaugeLength
    ? `gauge length ${mm(needs.strain.gaugeLength.value)}`
    : 'probe square to the specimen';
  return tick(
    'extensometer',
    'Extensometer set',
    `${tag}: ${gauge}, at zero, lock off; know when it has to come off before the break.`,
  );
};

const temperature: Rule = ({ needs, train }) => {
  const chamber = train.flatMap(({ item }) => (item.kind === 'chamber' ? [item] : []))[0];
  if (!chamber) return null;
  const { soakBaseMin, soakMinPerMm } = chamber.details;
  const soakMin = Math.ceil(soakBaseMin + soakMinPerMm * needs.specimen.bodyThicknessMm);
  return tick(
    'temperature',
    'Chamber at temperature, specimen soaked',
    `${chamber.tag} at ${formatNumber(needs.temperature.value)} °C, then ${soakMin} min of soak before each specimen.`,
  );
};

const zero: Rule = ({ needs }) =>
  needs.ends.by === 'grips'
    ? tick(
        'zero',
        'Force zeroed before the second end is gripped',
        'Specimen hangs in one grip only: zero the force now, and never after the second end is closed.',
      )
    : tick(
        'zero',
        'Force zeroed before contact',
        'Nothing touches the specimen yet: zero the force now, and never once it carries load.',
      );

const alignment: Rule = ({ needs: { alignmentMaxBendingPct: max } }) =>
  max === null
    ? null
    : {
        key: 'alignment',
        label: 'Alignment',
        detail: `Percent bending of the strain-gauged specimen: ${formatNumber(max)} % at most.`,
        required: true,
        kind: 'value',
        unit: '%',
        max,
      };

const RULES: readonly Rule[] = [
  shiftCheck,
  limitStops,
  guard,
  emergencyStop,
  warmUp,
  channels,
  supplies,
  ends,
  extensometer,
  temperature,
  zero,
  alignment,
];

function tagsOf(train: CheckFacts['train'], roles: readonly string[]): string {
  return train
    .filter(({ role }) => roles.includes(role))
    .map(({ item }) => item.tag)
    .join(', ');
}

function mm(value: number): string {
  return `${formatNumber(value)} mm`;
}
