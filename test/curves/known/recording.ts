/** A recorded test: columns as a frame writes them. A column that the test does not record is absent. */
export interface Recording {
  timeS: Float64Array;
  /** N; N·m in torsion. */
  load: Float64Array;
  /** mm of crosshead travel; degrees in torsion. */
  travel: Float64Array;
  /** mm of the extensometer or deflectometer, where there is one. */
  extension: Float64Array | null;
  isTorque: boolean;
}

/** The file that a frame would write: semicolons, headings with units. Empty cells stand where a value is NaN. */
export function fileOf({ timeS, load, travel, extension, isTorque }: Recording): Uint8Array {
  const headings = isTorque
    ? ['Time [s]', 'Torque [N·m]', 'Angle [°]']
    : ['Time [s]', 'Force [N]', 'Crosshead travel [mm]', ...(extension ? ['Extension [mm]'] : [])];
  const lines = Array.from(timeS, (time, row) =>
    [time, load[row]!, travel[row]!, ...(extension ? [extension[row]!] : [])].map(shown).join(';'),
  );
  return new TextEncoder().encode([headings.join(';'), ...lines, ''].join('\n'));
}

function shown(value: number): string {
  return Number.isNaN(value) ? '' : String(Number(value.toPrecision(9)));
}

/** The same recording with each column worked over. */
export function changed(
  recording: Recording,
  change: Partial<Record<'timeS' | 'load' | 'travel' | 'extension', (value: number, row: number) => number>>,
): Recording {
  const { timeS, load, travel, extension } = recording;
  const over = (values: Float64Array, by: ((value: number, row: number) => number) | undefined) =>
    by ? values.map((value, row) => by(value, row)) : values;
  return {
    ...recording,
    timeS: over(timeS, change.timeS),
    load: over(load, change.load),
    travel: over(travel, change.travel),
    extension: extension && over(extension, change.extension),
  };
}

/** The rows that are kept. */
export function onlyRows(recording: Recording, keep: (row: number) => boolean): Recording {
  const of = (values: Float64Array) => values.filter((_, row) => keep(row));
  return {
    ...recording,
    timeS: of(recording.timeS),
    load: of(recording.load),
    travel: of(recording.travel),
    extension: recording.extension && of(recording.extension),
  };
}
