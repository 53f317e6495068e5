import { extensionEnd } from './extension-end.js';
import { loadedAgain } from './loaded-again.js';
import { elasticFalls, extensionJumps } from './slips.js';
import { typicalStep } from './typical-step.js';
import { withoutSpikes } from './without-spikes.js';

/** 100 rows, load 10 N a row, extension 0.01 mm a row. */
const rows = (of: (row: number) => number, count = 100) => Float64Array.from({ length: count }, (_, row) => of(row));
const load = rows((row) => 10 * row);
const extension = rows((row) => row / 100);
const travel = rows((row) => row / 50);

describe('typicalStep', () => {
  it('is the median step, or the mean where most rows repeat', () => {
    expect(typicalStep(Float64Array.of(0, 1, 2, 50), 0, 3)).toBe(1);
    expect(typicalStep(Float64Array.of(0, 0, 0, 0, 4), 0, 4)).toBe(1);
    expect(typicalStep(Float64Array.of(7), 0, 0)).toBe(0);
  });
});

describe('withoutSpikes', () => {
  it('puts a lone reading on the line between its neighbours and names its row', () => {
    const { y, doubts } = withoutSpikes(
      load.map((value, row) => (row === 40 ? 5000 : value)),
      'N',
    );
    expect(y[40]).toBe(400);
    expect(doubts).toEqual([{ code: 'spike-left-out', fromRow: 40, toRow: 40, found: 5000, allowed: 390, unit: 'N' }]);
  });

  it('leaves a fracture, a peak between large steps and a record of few rows alone', () => {
    const broken = load.map((value, row) => (row > 80 ? 0 : value));
    expect(withoutSpikes(broken, 'N').doubts).toEqual([]);
    const coarse = rows((row) => (row === 20 ? 448 : row < 20 ? 21 * row : 400), 40);
    expect(withoutSpikes(coarse, 'N').doubts).toEqual([]);
    expect(
      withoutSpikes(
        rows((row) => (row === 5 ? 900 : 1), 19),
        'N',
      ).doubts,
    ).toEqual([]);
  });

  it('takes a signal that is full of them for what it is', () => {
    const sticking = load.map((value, row) => (row % 10 === 5 ? value + 400 : value));
    expect(withoutSpikes(sticking, 'N').y).toBe(sticking);
  });
});

describe('extensionEnd', () => {
  const at = (x: Float64Array, y = load) => extensionEnd({ x, y, clock: travel }, 99, 'mm/mm')?.fromRow ?? null;

  it('is where the channel jumps back and stays, while the load goes on', () => {
    expect(at(extension.map((value, row) => (row >= 60 ? 0 : value)))).toBe(60);
    expect(at(extension.map((value, row) => (row >= 60 ? -1 : value)))).toBe(60);
  });

  it('is where the channel stands still while the crosshead goes on', () => {
    expect(at(extension.map((value, row) => (row >= 60 ? 0.59 : value)))).toBe(60);
  });

  it('is where it stands still but for its scatter', () => {
    expect(at(extension.map((value, row) => (row >= 60 ? 0.59 + (row % 3 === 0 ? 0.004 : 0) : value)))).toBe(60);
  });

  it('is nowhere on a sound record, at a fracture, or in a hold', () => {
    expect(at(extension)).toBeNull();
    const broken = load.map((value, row) => (row >= 60 ? 0 : value));
    expect(
      at(
        extension.map((value, row) => (row >= 60 ? 0 : value)),
        broken,
      ),
    ).toBeNull();
    const held = {
      x: extension.map((value) => Math.min(value, 0.59)),
      y: load,
      clock: travel.map((mm) => Math.min(mm, 1.18)),
    };
    expect(extensionEnd(held, 99, 'mm/mm')).toBeNull();
  });
});

describe('slips', () => {
  it('an extension that jumps while the line goes on as steep is an extensometer that slipped', () => {
    const slipped = extension.map((value, row) => (row >= 50 ? value + 0.3 : value));
    expect(extensionJumps({ x: slipped, y: load, clock: null }, 99, 'mm/mm').map(({ fromRow }) => fromRow)).toEqual([
      50,
    ]);
  });

  it('a jump after which the line is far softer is yielding', () => {
    const yielding = extension.map((value, row) => (row >= 50 ? value + 0.3 + (row - 50) * 0.1 : value));
    expect(extensionJumps({ x: yielding, y: load, clock: null }, 99, 'mm/mm')).toEqual([]);
  });

  it('a load that falls and climbs again as steep as before is a grip that slipped, and no yield point', () => {
    const slipping = load.map((value, row) => (row >= 50 ? value - 100 : value));
    expect(elasticFalls({ x: extension, y: slipping, clock: null }, 99)).toEqual([{ top: 49, bottom: 50, back: 60 }]);
    const yielding = rows((row) => (row < 50 ? 10 * row : 440 + (row - 50)));
    expect(elasticFalls({ x: extension, y: yielding, clock: null }, 99)).toEqual([]);
  });
});

describe('loadedAgain', () => {
  const path = (corners: readonly number[]) =>
    Float64Array.from(
      corners
        .slice(1)
        .flatMap((to, leg) =>
          Array.from({ length: 10 }, (_, step) => corners[leg]! + ((to - corners[leg]!) * (step + 1)) / 10),
        ),
    );

  it('counts the loadings of a record with cycles between a third and the whole', () => {
    expect(loadedAgain(path([0, 300, 100, 300, 100, 300, 0]), 300)).toEqual({
      ...{ code: 'loaded-again', found: 3, allowed: 1, unit: '1' },
      ...{ fromRow: 9, toRow: 46 },
    });
  });

  it('is silent at one ramp, a small loop, seating, and a break after which little is carried', () => {
    expect(loadedAgain(path([0, 300, 0]), 300)).toBeNull();
    expect(loadedAgain(path([0, 300, 181, 400]), 400)).toBeNull();
    expect(loadedAgain(path([0, 29, 2, 300]), 300)).toBeNull();
    expect(loadedAgain(path([0, 300, 50, 239, 0]), 300)).toBeNull();
  });

  it('tells a loop of unloading from a way back that stops short of it', () => {
    expect(loadedAgain(path([0, 300, 179, 400]), 400)?.found).toBe(2);
    expect(loadedAgain(path([0, 300, 100, 240]), 300)?.found).toBe(2);
  });
});
