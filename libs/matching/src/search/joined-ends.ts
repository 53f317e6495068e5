import { couplingId } from '../register/couplings.js';
import type { Frame } from '../register/item.js';
import type { Ends } from '../rules/parts.js';
import type { CellChoice } from './class-choices.js';
import type { Options } from './options.js';
import type { Joinings, Routes } from './routes.js';

/** How ends are joined with a cell on a frame. Most ends have the same couplings, so that few answers serve hundreds of ends. */
export class JoinedEnds {
  private group: readonly number[] | null = null;
  private samples: Ends[] = [];

  constructor(
    private readonly options: Options,
    private readonly routes: Routes,
  ) {}

  /** The answers for one cell on one frame, by the place of the ends in the list of all. */
  to(frame: Frame, { part: cell, cellAt }: CellChoice): { with(place: number): Joinings } {
    const groups = (this.group ??= this.grouped());
    const known: Joinings[] = [];
    return {
      with: (place) => {
        const group = groups[place]!;
        return (known[group] ??= this.routes.joinSomehow({ frame, cell, cellAt, ends: this.samples[group]! }));
      },
    };
  }

  private grouped(): number[] {
    const groups = new Map<number, number>();
    return this.options.ends.all.map(({ part }) => {
      const key = couplingId(part.upper.details.coupling) * 4096 + couplingId(part.lower.details.coupling);
      const found = groups.get(key);
      if (found !== undefined) return found;
      groups.set(key, this.samples.length);
      return this.samples.push(part) - 1;
    });
  }
}
