import type { ItemKind, LinkRole } from '#libs/matching/src/index.js';

/** The places of a load train, from the crosshead down, then what stands beside it. */
export const PLACES: readonly LinkRole[] = [
  ...(['load-cell', 'upper-adapter', 'upper-adapter-2', 'upper', 'ends', 'faces'] as const),
  ...(['lower', 'lower-adapter', 'lower-adapter-2'] as const),
  ...(['extensometer', 'chamber', 'guard', 'thermocouple'] as const),
];

/** Links in the order in which they hang. */
export function fromTheTop<Link extends { role: string }>(links: readonly Link[]): Link[] {
  const placeOf = (role: string) => {
    const at = PLACES.findIndex((place) => place === role);
    return at === -1 ? PLACES.length : at;
  };
  return [...links].sort((a, b) => placeOf(a.role) - placeOf(b.role));
}

/** Where an item of a kind usually goes: the first of its places that nothing is in yet. */
export function usualPlace(kind: ItemKind, taken: readonly string[]): LinkRole {
  const own = PLACES_OF[kind] ?? PLACES;
  return own.find((place) => !taken.includes(place)) ?? own[0]!;
}

const ENDS: readonly LinkRole[] = ['ends', 'upper', 'lower'];
const PLACES_OF: Partial<Record<ItemKind, readonly LinkRole[]>> = {
  'load-cell': ['load-cell'],
  adapter: ['upper-adapter', 'lower-adapter', 'upper-adapter-2', 'lower-adapter-2'],
  grip: ENDS,
  fixture: ENDS,
  platen: ENDS,
  'jaw-face': ['faces'],
  extensometer: ['extensometer'],
  chamber: ['chamber'],
  guard: ['guard'],
  transducer: ['thermocouple'],
};

/** Says at each link what is wrong: a place takes one item (a pair fills `ends` at once). */
export function placeProblems(links: readonly { role: string }[]): (string | undefined)[] {
  return links.map(({ role }, at) =>
    links.findIndex((other) => other.role === role) < at ? 'Something else is in this place already.' : undefined,
  );
}
