import type { Coupling } from './item.js';

/** Whether two ends go together: type and size agree, and the genders are opposite or both plain. */
export function meets(a: Coupling, b: Coupling): boolean {
  if (a.type !== b.type || a.sizeMm !== b.sizeMm) return false;
  return a.gender === 'plain' ? b.gender === 'plain' : b.gender !== 'plain' && a.gender !== b.gender;
}

export function couplingKey({ type, sizeMm, gender }: Coupling): string {
  return `${type} ${sizeMm} ${gender}`;
}

/** For people: `clevis 20 mm, male`. */
export function couplingWords({ type, sizeMm, gender }: Coupling): string {
  return `${type} ${sizeMm} mm${gender === 'plain' ? '' : `, ${gender}`}`;
}

/** The end that meets this one. */
export function counterpart(coupling: Coupling): Coupling {
  const gender = coupling.gender === 'male' ? 'female' : coupling.gender === 'female' ? 'male' : 'plain';
  return { ...coupling, gender };
}
