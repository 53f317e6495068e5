import type { Needs } from '../ask/needs.js';
import { eachItem } from './each-item.js';
import { CAUTION, FAIL, PASS, worst } from './outcome.js';
import { rule } from './rule.js';
import { limit } from './sentence.js';

/**
 * Away from room temperature a chamber reaches it, fits the frame and takes the ends of the train, and everything inside is rated for
 * it. The cell stays outside. Ramp and soak come with the candidate.
 */
export const temperature = rule({
  code: 'temperature',
  source: 'item data; soak: common practice, no source',
  checks: [
    {
      sees: ['chamber'],
      judge({ chamber }, { needs }, report) {
        if (!needs.chamber) return PASS;
        const { value } = needs.temperature;
        if (!chamber) return report.say(FAIL, 'no-chamber', [], value, null, '°C');
        const { minC, maxC } = chamber.details;
        return worst(
          report.notBelow('too-cold', value, minC, '°C', chamber),
          report.atLeast('too-hot', value, maxC, '°C', chamber),
        );
      },
    },
    {
      sees: ['frame', 'chamber'],
      frameFields: ['columnClearanceMm'],
      judge({ frame, chamber }, _context, report) {
        if (!chamber) return PASS;
        const { columnClearanceMm } = frame.details;
        const { fitsClearanceMinMm, fitsClearanceMaxMm } = chamber.details;
        const items = [chamber, frame];
        return worst(
          report.notBelow('chamber-too-wide', columnClearanceMm, fitsClearanceMinMm, 'mm', items),
          report.atLeast('chamber-too-narrow', columnClearanceMm, fitsClearanceMaxMm, 'mm', items),
        );
      },
    },
    {
      sees: ['ends', 'chamber'],
      judge({ ends: { upper, lower }, chamber }, { needs }, report) {
        if (!chamber) return PASS;
        const widest = Math.max(upper.details.outsideWidthMm, lower.details.outsideWidthMm);
        const { insideWidthMm, insideHeightMm } = chamber.details;
        return worst(
          report.atLeast('too-wide-for-chamber', widest, insideWidthMm, 'mm', [upper, chamber]),
          report.atLeast('too-tall-for-chamber', insideMm(needs), insideHeightMm, 'mm', chamber),
        );
      },
    },
    ...eachItem(['ends', 'adapters', 'faces', 'extensometer'], (item, { needs }, report) => {
      const { value } = needs.temperature;
      return worst(
        report.notBelow('item-too-cold', value, item.temperatureMinC, '°C', item),
        report.atLeast('item-too-hot', value, item.temperatureMaxC, '°C', item),
      );
    }),
    {
      sees: ['thermocouple'],
      judge: ({ thermocouple }, { needs }, report) =>
        needs.chamber && !thermocouple ? report.say(CAUTION, 'no-thermocouple', []) : PASS,
    },
  ],
  sentences: {
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
  },
});

/** Height that specimen and travel take inside a chamber, mm. */
function insideMm({ specimen, direction, travel }: Needs): number {
  return specimen.freeLengthMm + (direction === 'tension' ? travel.value : 0);
}
