import { bitOf } from './checks.js';

/** Cautions that one part of a train alone can bring, so that they may be priced with that part; the others are priced at the end. */
export const OWN_CAUTIONS = bitOf('cell-band') | bitOf('face-suits') | bitOf('specimen-fit') | bitOf('strain');
