import { fieldProblem } from '#libs/errors/src/index.js';
import type { FieldProblem } from '#libs/errors/src/index.js';
import { internalUnitOf, isUnit, unitsOf } from '#libs/units/src/index.js';
import { CHANNEL_QUANTITIES } from './channel-units.js';
import { CURVE_CHANNELS } from './curve.js';
import type { CurveColumn, CurveFormat } from './curve-format.js';

/** What is wrong with a format that a person confirmed or changed; empty when a curve can be read with it. */
export function checkCurveFormat(format: CurveFormat): FieldProblem[] {
  const { columns } = format;
  const load = columns.some(({ channel }) => channel === 'forceN' || channel === 'stressMPa' || channel === 'torqueNm');
  return [
    ...columns.flatMap((column, at) => columnProblems(column, at, columns)),
    load ? null : wrong('columns', 'no load', 'a column of force, stress or torque'),
  ].filter((problem) => problem !== null);
}

function columnProblems(
  { channel, unit }: CurveColumn,
  at: number,
  columns: readonly CurveColumn[],
): (FieldProblem | null)[] {
  if (channel === null) return [];
  const field = `columns[${at}]`;
  if (!CURVE_CHANNELS.includes(channel))
    return [wrong(`${field}.channel`, channel, `one of ${CURVE_CHANNELS.join(', ')}`)];
  const quantity = CHANNEL_QUANTITIES[channel];
  const isRepeat = columns.findIndex((column) => column.channel === channel) < at;
  const fits = unit !== null && isUnit(unit, quantity);
  return [
    isRepeat ? wrong(`${field}.channel`, channel, 'a channel that no other column has') : null,
    fits
      ? null
      : wrong(`${field}.unit`, unit, `one of ${unitsOf(quantity).join(', ')}, e.g. ${internalUnitOf(quantity)}`),
  ];
}

function wrong(field: string, found: unknown, allowed: string): FieldProblem {
  return fieldProblem({ field, found, allowed, unit: '' });
}
