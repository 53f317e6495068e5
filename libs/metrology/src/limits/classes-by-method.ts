import type { Provenance } from '#libs/accuracy/src/index.js';

/** The class that a method asks of its force or extension measurement; a method may have several lines. */
export interface ClassNeeded extends Provenance {
  /** As people write the method's standard, without the year. */
  method: string;
  quantity: 'force' | 'extension';
  /** Which results it is for. */
  property: string;
  standard: 'ISO 7500-1' | 'ASTM E4' | 'ISO 9513' | 'ASTM E83';
  className: string;
  note: string;
}

type Line = [
  method: string,
  property: string,
  className: string,
  note: string,
  source: string,
  confidence: Provenance['confidence'],
];

const lines = (quantity: ClassNeeded['quantity'], standard: ClassNeeded['standard'], rows: Line[]): ClassNeeded[] =>
  rows.map(([method, property, className, note, source, confidence]) => ({
    method,
    quantity,
    property,
    standard,
    className,
    note,
    source,
    confidence,
  }));

/**
 * What published methods ask for. Methods of the lab say their own class; this table is where their proposals come from.
 * Compare with the edition in force before relying on it.
 */
export const CLASSES_BY_METHOD: readonly ClassNeeded[] = [
  ...lines('force', 'ISO 7500-1', [
    ['ISO 6892-1', 'all', '1', '', 'ISO 6892-1:2019 clause 9', 'from memory (high)'],
    ['ISO 527-1', 'all', '1', '', 'ISO 527-1:2019 5.1', 'seen'],
    ['ISO 178', 'all', '1', '', 'ISO 178:2019 clause 5', 'from memory (medium)'],
    ['ISO 604', 'all', '1', '', 'ISO 604 clause 5', 'from memory (medium)'],
    ['EN 12390-4', 'all', '1', '', 'EN 12390-4', 'from memory (medium)'],
    ['ISO 13934-1', 'all', '1', '', 'ISO 13934-1 clause 6', 'from memory (medium)'],
    ['ISO 37', 'all', '2', 'class 1 in some editions', 'ISO 37, ISO 5893', 'from memory (low)'],
  ]),
  ...lines('force', 'ASTM E4', [
    ['ASTM E8/E8M', 'all', '1 %', 'forces used lie within the verified range', 'ASTM E8/E8M 5.1', 'seen'],
    ['ASTM E111', 'all', '1 %', '', 'ASTM E111', 'from memory (medium)'],
  ]),
  ...lines('extension', 'ISO 9513', [
    [
      'ISO 6892-1',
      'ReH ReL Ae Rp Rt Rr',
      '1',
      'gauge length at least half of L0',
      'ISO 6892-1:2019 clause 9',
      'from memory (high)',
    ],
    ['ISO 6892-1', 'A Ag Agt At', '2', 'extension above 5 %', 'ISO 6892-1:2019 clause 9', 'from memory (high)'],
    ['ISO 6892-1', 'modulus', '0.5', 'recommended', 'ISO 6892-1:2019 annex G', 'from memory (low)'],
    ['ISO 527-1', 'stress-strain', '1', 'modulus: see modulusExtensionLimitMm', 'ISO 527-1:2019 5.1.5.1', 'seen'],
  ]),
  ...lines('extension', 'ASTM E83', [
    [
      'ASTM E8/E8M',
      'yield by offset or extension under load, yield point elongation',
      'B-2',
      '',
      'ASTM E8/E8M 5.4',
      'from memory (high)',
    ],
    ['ASTM E8/E8M', 'elongation below 5 %', 'C', '', 'ASTM E8/E8M 5.4', 'from memory (low)'],
    ['ASTM E8/E8M', 'elongation from 5 % to 50 %', 'D', '', 'ASTM E8/E8M 5.4', 'from memory (low)'],
    ['ASTM E8/E8M', 'elongation above 50 %', 'E', '', 'ASTM E8/E8M 5.4', 'from memory (low)'],
    ['ASTM E111', 'modulus', 'B-1', '', 'ASTM E111', 'from memory (high)'],
    ['ASTM D638', 'modulus', 'B-2', '', 'ASTM D638 10.3', 'seen'],
    ['ASTM D638', 'extension up to 20 %', 'C', '0.001 strain or 1 %', 'ASTM D638 5.2.2', 'seen'],
    [
      'ASTM D3039',
      'modulus, Poisson ratio',
      'B-1',
      'gauge length 10 mm to 50 mm',
      'ASTM D3039 clause 7',
      'from memory (high)',
    ],
    ['ASTM D412', 'elongation', 'D', 'gauge marks followed', 'ASTM D412', 'from memory (low)'],
  ]),
];

/** The lines of one method, in the table's order; empty when the table does not know it. */
export function classesNeededBy(method: string): ClassNeeded[] {
  return CLASSES_BY_METHOD.filter((line) => line.method === method);
}
