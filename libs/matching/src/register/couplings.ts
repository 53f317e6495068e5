import type { Coupling } from './item.js';

/** Whether two ends go together: type and size agree, and the genders are opposite or both plain. */
export function meets(a: Coupling, b: Coupling): boolean {
  if (a.type !== b.type || a.sizeMm !== b.sizeMm) return false;
  return a.gender === 'plain' ? b.gender === 'plain' : b.gender !== 'plain' && a.gender !== b.gender;
}

const ids = new Map<string, number>();
const known = new WeakMap<Coupling, number>();

/** A small number for each kind of end that ever occurred: equal ends have equal numbers. */
export function couplingId(coupling: Coupling): number {
  const found = known.get(coupling);
  if (found !== undefined) return found;
  const key = `${coupling.type} ${coupling.sizeMm} ${coupling.gender}`;
  const id = ids.get(key) ?? ids.size;
  ids.set(key, id);
  known.set(coupling, id);
  return id;
}

const words = new WeakMap<Coupling, string>();

/** For people: `clevis 20 mm, male`. */
export function couplingWords(coupling: Coupling): string {
  const { type, sizeMm, gender } = coupling;
  const found = words.get(coupling) ?? `${type} ${sizeMm} mm${gender === 'plain' ? '' : `, ${gender}`}`;
  words.set(coupling, found);
  return found;
}

/** The end that meets this one. */
export function counterpart(coupling: Coupling): Coupling {
  const gender = coupling.gender === 'male' ? 'female' : coupling.gender === 'female' ? 'male' : 'plain';
  return { ...coupling, gender };
}
