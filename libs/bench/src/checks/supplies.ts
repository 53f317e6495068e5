import { tick } from './bench-check.js';
import type { CheckRule } from './check-facts.js';

const SUPPLIES: Readonly<Record<string, readonly [label: string, detail: string]>> = {
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

/** What the items of the train are supplied with is on and sound. */
export const supplies: CheckRule = ({ train }) =>
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
