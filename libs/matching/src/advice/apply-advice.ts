import type { Advice } from '../answer/answer.js';
import type { Ask } from '../ask/ask.js';
import type { Item } from '../register/item.js';
import type { Lab } from '../register/lab.js';

/**
 * The lab and the ask as they would be if an advice were followed. Nothing is changed in place.
 *
 * @throws {RangeError} when the advice names an item, technician or field that is not there
 */
export function applyAdvice({ apply }: Pick<Advice, 'apply'>, lab: Lab, ask: Ask): { lab: Lab; ask: Ask } {
  switch (apply.change) {
    case 'item':
      return {
        ask,
        lab: { ...lab, items: replaced(lab.items, apply.itemId, (item) => ({ ...item, ...apply.set })) },
      };
    case 'new-item':
      return { ask, lab: { ...lab, items: [...lab.items, apply.item] } };
    case 'technician': {
      const known = lab.technicians.some(({ id }) => id === apply.technicianId);
      if (!known) throw new RangeError(`No technician ${apply.technicianId}.`);
      const technicians = lab.technicians.map((each) =>
        each.id === apply.technicianId ? { ...each, methodIds: [...each.methodIds, apply.methodId] } : each,
      );
      return { ask, lab: { ...lab, technicians } };
    }
    case 'ask':
      return { lab, ask: withField(ask, apply.field.split('.'), apply.value) as Ask };
  }
}

function replaced(items: readonly Item[], id: string, change: (item: Item) => Item): Item[] {
  if (!items.some((item) => item.id === id)) throw new RangeError(`No item ${id}.`);
  return items.map((item) => (item.id === id ? change(item) : item));
}

function withField(value: unknown, [key, ...rest]: readonly string[], to: unknown): unknown {
  if (key === undefined) return to;
  if (typeof value !== 'object' || value === null) throw new RangeError(`No field ${key}.`);
  return { ...value, [key]: withField(new Map(Object.entries(value)).get(key), rest, to) };
}
