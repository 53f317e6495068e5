import type { scaleLinear } from 'd3-scale';

/** The drawing of curves: its size and the margins around its axes, in units of its view box. */
export const WIDTH = 640;
export const HEIGHT = 400;
export const LEFT = 64;
export const RIGHT = 44;
export const TOP = 40;
export const BOTTOM = 44;

export interface Box {
  x: [number, number];
  y: [number, number];
}

export type Scale = ReturnType<typeof scaleLinear<number>>;
