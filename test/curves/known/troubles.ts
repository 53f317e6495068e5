import { changed, onlyRows } from './recording.js';
import type { Recording } from './recording.js';

/** What goes wrong with a record in practice. `chance` gives numbers in [0, 1). */
export interface Trouble {
  name: string;
  /** Null where this record cannot have it. */
  spoil(recording: Recording, chance: () => number): Recording | null;
}

const highest = (values: Float64Array): number => values.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
const rowOfHighest = (values: Float64Array): number =>
  values.findIndex((value) => Math.abs(value) === highest(values));
/** About normal with a standard deviation of 1: the sum of twelve even chances (textbook). */
const normal = (chance: () => number): number => Array.from({ length: 12 }, chance).reduce((sum, each) => sum + each, -6);
const rounded = (value: number, step: number): number => Math.round(value / step) * step;

export const TROUBLES: readonly Trouble[] = [
  { name: 'none', spoil: (recording) => recording },
  {
    name: 'noise and steps of the recorder',
    spoil: (recording, chance) => {
      const peak = highest(recording.load);
      const far = recording.extension ? highest(recording.extension) : 0;
      return changed(recording, {
        load: (value) => rounded(value + 2e-4 * peak * normal(chance), 1e-4 * peak),
        travel: (value) => rounded(value, 1e-4),
        extension: (value) => rounded(value + 2e-6 * far * normal(chance), Math.max(1e-5, 1e-6 * far)),
      });
    },
  },
  {
    name: 'recorded slowly',
    spoil: (recording) => {
      const every = Math.max(2, Math.floor(recording.load.length / 250));
      return onlyRows(recording, (row) => row % every === 0);
    },
  },
  {
    name: 'slack before the load rises',
    spoil: (recording, chance) => {
      const rows = 40;
      const step = ((0.02 + 0.08 * chance()) * highest(recording.travel)) / rows;
      const lead = (values: Float64Array, of: (row: number) => number, shift: number) =>
        Float64Array.from([...Array.from({ length: rows }, (_, row) => of(row)), ...values.map((value) => value + shift)]);
      return {
        ...recording,
        timeS: lead(recording.timeS, (row) => row / 10, rows / 10),
        load: lead(recording.load, () => recording.load[0]!, 0),
        travel: lead(recording.travel, (row) => row * step, rows * step),
        extension: recording.extension && lead(recording.extension, () => 0, 0),
      };
    },
  },
  {
    name: 'zeroed under a preload',
    spoil: (recording, chance) => {
      const level = (0.012 + 0.04 * chance()) * highest(recording.load);
      const first = recording.load.findIndex((value) => Math.abs(value) > level);
      const kept = onlyRows(recording, (row) => row >= first);
      const zero = (values: Float64Array) => values.map((value) => value - values[0]!);
      return { ...kept, travel: zero(kept.travel), extension: kept.extension && zero(kept.extension) };
    },
  },
  {
    name: 'force not zeroed',
    spoil: (recording, chance) => {
      const offset = (0.02 + 0.05 * chance()) * highest(recording.load) * (chance() < 0.5 ? -1 : 1);
      return changed(recording, { load: (value) => value + offset });
    },
  },
  {
    name: 'drift of the force',
    spoil: (recording) => {
      const peak = highest(recording.load);
      const last = recording.load.length - 1;
      return changed(recording, { load: (value, row) => value + (0.005 * peak * row) / last });
    },
  },
  {
    name: 'cut off before the end',
    spoil: (recording, chance) => {
      const last = Math.round(recording.load.length * (0.4 + 0.5 * chance()));
      return onlyRows(recording, (row) => row < last);
    },
  },
  {
    name: 'one reading of nonsense',
    spoil: (recording, chance) => {
      const at = 30 + Math.floor(chance() * (rowOfHighest(recording.load) - 60));
      const wrong = 1.3 * highest(recording.load);
      return at < 30 ? null : changed(recording, { load: (value, row) => (row === at ? wrong : value) });
    },
  },
  {
    name: 'rows missing',
    spoil: (recording, chance) => {
      const rows = recording.load.length;
      const from = Math.floor(rows * (0.3 + 0.6 * chance()));
      return onlyRows(recording, (row) => row < from || row > from + rows * 0.08);
    },
  },
  {
    name: 'extensometer taken off',
    spoil: (recording, chance) => offFrom(recording, chance, () => 0),
  },
  {
    name: 'extensometer taken off, channel open',
    spoil: (recording, chance) => offFrom(recording, chance, () => -1),
  },
  {
    name: 'extensometer taken off, cells empty',
    spoil: (recording, chance) => offFrom(recording, chance, () => NaN),
  },
  {
    name: 'extensometer at its stop',
    spoil: (recording, chance) => offFrom(recording, chance, (last) => last),
  },
  {
    name: 'extensometer slipped in the elastic part',
    spoil: (recording, chance) => {
      if (!recording.extension) return null;
      const at = rowAtLoad(recording, 0.15 + 0.2 * chance());
      const slip = (0.002 + 0.002 * chance()) * 50;
      return at < 12 ? null : changed(recording, { extension: (value, row) => (row >= at ? value + slip : value) });
    },
  },
  {
    name: 'grip slipped in the elastic part',
    spoil: (recording, chance) => {
      const at = rowAtLoad(recording, 0.15 + 0.2 * chance());
      if (at < 30) return null;
      const back = Math.round(at * 0.06) + 6;
      return spliced(recording, at, back);
    },
  },
  {
    name: 'signs turned',
    spoil: (recording) =>
      changed(recording, { load: (value) => -value, travel: (value) => -value, extension: (value) => -value }),
  },
];

function rowAtLoad({ load }: Recording, share: number): number {
  const level = share * highest(load);
  return load.findIndex((value) => Math.abs(value) >= level);
}

function offFrom(recording: Recording, chance: () => number, shows: (last: number) => number): Recording | null {
  if (!recording.extension) return null;
  const at = Math.floor(recording.extension.length * (0.5 + 0.4 * chance()));
  const last = recording.extension[at - 1]!;
  return changed(recording, { extension: (value, row) => (row >= at ? shows(last) : value) });
}

/** From a row on the load runs back along the line and climbs again, while the crosshead goes on: a grip that slips. */
function spliced(recording: Recording, at: number, back: number): Recording {
  const order = [
    ...Array.from({ length: at + 1 }, (_, row) => row),
    ...Array.from({ length: back }, (_, step) => at - 1 - step),
    ...Array.from({ length: recording.load.length - (at - back) - 1 }, (_, step) => at - back + 1 + step),
  ];
  const step = recording.travel[at]! - recording.travel[at - 1]!;
  const travel = Float64Array.from(order, (row, place) => (place <= at ? recording.travel[row]! : NaN));
  for (let place = at + 1; place < travel.length; place++) {
    const forward = place > at + back ? recording.travel[order[place]!]! - recording.travel[order[place]! - 1]! : step;
    travel[place] = travel[place - 1]! + forward;
  }
  return {
    ...recording,
    timeS: Float64Array.from(order, (_, place) => place / 10),
    load: Float64Array.from(order, (row) => recording.load[row]!),
    travel,
    extension: recording.extension && Float64Array.from(order, (row) => recording.extension![row]!),
  };
}
