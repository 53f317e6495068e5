import { useRef, useState } from 'react';
import type { PointerEvent } from 'react';
import { HEIGHT, WIDTH } from './plot-frame.js';

interface Spot {
  x: number;
  y: number;
}

const LEAST_PX = 8;
/** Takes the part of the drawing over which the pointer is dragged. */
export function useZoom(onZoom: (from: Spot, to: Spot) => void) {
  const from = useRef<Spot | null>(null);
  const [to, setTo] = useState<Spot | null>(null);
  const spot = (event: PointerEvent<SVGSVGElement>): Spot => {
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    return { x: ((event.clientX - left) / width) * WIDTH, y: ((event.clientY - top) / height) * HEIGHT };
  };
  const start = from.current;
  return {
    down: (event: PointerEvent<SVGSVGElement>) => {
      from.current = spot(event);
    },
    move: (event: PointerEvent<SVGSVGElement>) => from.current && setTo(spot(event)),
    up: () => {
      if (
        from.current &&
        to &&
        Math.abs(to.x - from.current.x) > LEAST_PX &&
        Math.abs(to.y - from.current.y) > LEAST_PX
      )
        onZoom(from.current, to);
      from.current = null;
      setTo(null);
    },
    box:
      start && to
        ? {
            x: Math.min(start.x, to.x),
            y: Math.min(start.y, to.y),
            width: Math.abs(to.x - start.x),
            height: Math.abs(to.y - start.y),
          }
        : null,
  };
}
