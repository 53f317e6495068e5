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

/** A check that is ticked at the frame. */
export function tick(key: string, label: string, detail: string, required = true): BenchCheck {
  return { key, label, detail, required, kind: 'tick' };
}
