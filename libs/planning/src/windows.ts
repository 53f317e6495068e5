import type { Frame, Window } from './problem.js';

/** [startMin, endMin) that covers every whole minute there is. */
export const ALWAYS: Window = { startMin: -0x40000000, endMin: 0x40000000 };

/** What is left of sorted windows when others are cut out. */
export function cutOut(windows: readonly Window[], holes: readonly Window[]): Window[] {
  let left = [...windows];
  for (const hole of holes) left = left.flatMap((window) => without(window, hole));
  return left;
}

function without(window: Window, hole: Window): Window[] {
  if (hole.endMin <= window.startMin || hole.startMin >= window.endMin) return [window];
  const before = { startMin: window.startMin, endMin: Math.max(window.startMin, hole.startMin) };
  const after = { startMin: Math.min(window.endMin, hole.endMin), endMin: window.endMin };
  return [before, after].filter(({ startMin, endMin }) => startMin < endMin);
}

/**
 * When people can set up or test on a frame: its open windows less down windows, each without its first `warmUpMin` minutes
 * where the frame stood closed for `warmUpAfterMin` before. A frame that is open at minute 0 counts as warm.
 */
export function workingWindows(frame: Frame): Window[] {
  const open = cutOut(frame.open ?? [ALWAYS], frame.down ?? []);
  return open
    .map((window, at) => {
      const idleMin = window.startMin - (open[at - 1]?.endMin ?? -Infinity);
      const cold = window.startMin > 0 && idleMin >= frame.warmUpAfterMin;
      return { startMin: window.startMin + (cold ? frame.warmUpMin : 0), endMin: window.endMin };
    })
    .filter(({ startMin, endMin }) => startMin < endMin);
}

/** When a run that needs nobody may be on a frame. */
export const runningWindows = (frame: Frame): Window[] => cutOut([ALWAYS], frame.down ?? []);

/** The window that holds all of [startMin, endMin), if one does. */
export function windowAround(windows: readonly Window[], startMin: number, endMin: number): Window | undefined {
  return windows.find((window) => window.startMin <= startMin && endMin <= window.endMin);
}
