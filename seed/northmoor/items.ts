import type { ItemKind } from '#libs/matching/src/index.js';
import { ADAPTERS } from './adapters.js';
import { CELLS } from './cells.js';
import { CHAMBERS, GUARDS, TRANSDUCERS } from './chambers.js';
import { EXTENSOMETERS } from './extensometers.js';
import { FIXTURES } from './fixtures.js';
import { FRAMES } from './frames.js';
import { GRIPS } from './grips.js';
import { idOf } from './ids.js';
import type { DemoItem } from './item-parts.js';
import { JAW_FACES } from './jaw-faces.js';
import { PLATENS } from './platens.js';

type AnyDemoItem = { [K in ItemKind]: DemoItem<K> }[ItemKind];

/** Everything in the register of the demo lab. */
export const ITEMS: readonly AnyDemoItem[] = [
  ...FRAMES,
  ...CELLS,
  ...GRIPS,
  ...JAW_FACES,
  ...FIXTURES,
  ...PLATENS,
  ...ADAPTERS,
  ...EXTENSOMETERS,
  ...CHAMBERS,
  ...GUARDS,
  ...TRANSDUCERS,
];

const BY_TAG = new Map(ITEMS.map((item) => [item.tag, item]));

/** @throws {Error} when no item bears the tag: a typing error in the demo's own data */
export function itemWithTag(tag: string): AnyDemoItem {
  const item = BY_TAG.get(tag);
  if (!item) throw new Error(`The demo lab has no item with the tag ${tag}.`);
  return item;
}

/** The id under which the item with that tag is kept. */
export const itemId = (tag: string): string => idOf('item', itemWithTag(tag).tag);
