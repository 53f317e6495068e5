import type { SaveItemBody } from '#libs/contract/src/index.js';
import { refuseIfAny } from '#libs/errors/src/index.js';
import { at, checkItem, ITEM_FIELDS } from '#libs/matching/src/index.js';
import type { ItemField, ItemState, Utility } from '#libs/matching/src/index.js';
import type { ItemEntity } from '#libs/records/src/index.js';
import { plainCopy, put } from '../exchange/paths.js';

/** The columns that a form or an import fills, once they are checked. */
export type CheckedColumns = Omit<ItemEntity, 'id' | 'state' | 'registeredAt' | 'version'>;

/** The same before: the details may be anything. */
export type ItemColumns = Omit<CheckedColumns, 'details'> & { details: object };

export function itemColumns(body: SaveItemBody): ItemColumns {
  return {
    ...body,
    model: body.model ?? '',
    serialNumber: body.serialNumber ?? '',
    place: body.place ?? '',
    utilities: [...body.utilities] as Utility[],
    calibrationIntervalMonths: body.calibrationIntervalMonths ?? null,
    details: filled(body),
  };
}

/** The core reads every field of a kind: what nobody filled in stands as null, or as an empty list. */
function filled({ kind, details }: SaveItemBody): object {
  const whole = { details: plainCopy(details) };
  for (const field of ITEM_FIELDS[kind]) {
    const ours = field.path.startsWith('details.') && !field.required;
    if (ours && at(whole, field.path) === undefined) put(whole, field.path, emptyOf(field.type));
  }
  return whole.details;
}

/** How a field of this type stands when nothing was said. */
export function emptyOf(type: ItemField['type']): null | [] {
  return type === 'text' || type === 'number' || type === 'choice' || type === 'flag' ? null : [];
}

/** What the matching core checks of an item: everything but what only the register knows. */
export function checkable(columns: ItemColumns, state: ItemState): Record<string, unknown> {
  const { serialNumber: _serial, calibrationIntervalMonths: _interval, ...rest } = columns;
  return { ...rest, state };
}

/** @throws InvalidInput naming every field that is missing, out of bounds or strange to the kind */
export function refuseBadItem(columns: ItemColumns, state: ItemState): asserts columns is CheckedColumns {
  refuseIfAny(checkItem(checkable(columns, state)));
}
