import type { Item, TimeWindow } from './item.js';

/** What is fitted on a frame right now. */
export interface Rig {
  frameId: string;
  itemIds: readonly string[];
  /** Temperature that its chamber is at, °C; null without a chamber. */
  chamberC: number | null;
}

export interface Technician {
  id: string;
  /** Ids of the methods that the person may run. */
  methodIds: readonly string[];
  /** When the person is on shift. */
  windows: readonly TimeWindow[];
}

/** Everything that matching looks at. Plain data, read once per request. */
export interface Lab {
  items: readonly Item[];
  rigs: readonly Rig[];
  technicians: readonly Technician[];
}
