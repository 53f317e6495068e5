import type { Needs } from './needs.js';

/** What must hold the specimen, for people. */
export function endWords({ ends, specimen }: Needs): string {
  if (ends.by === 'platens') return 'compression platens';
  if (ends.by === 'grips') return `grips for ${specimen.endShape.replaceAll('-', ' ')} ends`;
  return `a ${ends.purpose.replaceAll('-', ' ')} fixture${ends.withGrip ? ' and a grip above it' : ''}`;
}
