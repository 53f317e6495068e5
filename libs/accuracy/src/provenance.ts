/** Where a figure of a table comes from, and how sure we are of it. */
export interface Provenance {
  source: string;
  confidence:
    'from memory (high)' | 'from memory (medium)' | 'from memory (low)' | 'seen' | 'common practice, no source';
}
