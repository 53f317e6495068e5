import type { Advice } from '../answer/answer.js';
import type { Ask } from '../ask/ask.js';
import type { TimeWindow } from '../register/item.js';
import type { Lab } from '../register/lab.js';
import type { Material } from '../register/material.js';
import type { Method } from '../register/method.js';
import type { Needs } from '../ask/needs.js';
import type { Search } from '../search/search.js';
import type { MatchSettings } from '../ask/settings.js';

/** A change that might open a frame; whether it does is tried out before anyone sees it. */
export type Proposal = Omit<Advice, 'opensFrames'>;

/** The request, the lab and the settings that advice is looked for. */
export interface Question {
  lab: Lab;
  ask: Ask;
  method: Method;
  material: Material | null;
  needs: Needs;
  settings: MatchSettings;
  period: TimeWindow;
  /** The search that found what refuses. */
  search: Search;
}

/** The next larger figure of the series 1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10 (R10, ISO 3). */
export function niceUp(value: number): number {
  const decade = 10 ** Math.floor(Math.log10(value));
  const steps = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8, 10];
  const step = steps.find((each) => each * decade >= value * (1 - 1e-9)) ?? 10;
  return round(step * decade);
}

/** Three significant figures, downwards or upwards, so that a limit is kept. */
export function roundTo(value: number, way: 'down' | 'up'): number {
  const step = 10 ** (Math.floor(Math.log10(value)) - 2);
  const steps = way === 'down' ? Math.floor(value / step + 1e-9) : Math.ceil(value / step - 1e-9);
  return round(steps * step);
}

/** Drops the dust of binary fractions. */
function round(value: number): number {
  return Number(value.toPrecision(12));
}
