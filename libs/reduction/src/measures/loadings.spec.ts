import { loadingsIn } from './loadings.js';

const path = (corners: readonly number[]) =>
  Float64Array.from(
    corners
      .slice(1)
      .flatMap((to, leg) =>
        Array.from({ length: 10 }, (_, step) => corners[leg]! + ((to - corners[leg]!) * (step + 1)) / 10),
      ),
  );

describe('loadingsIn', () => {
  it('finds each rise from a valley to the next top', () => {
    expect(loadingsIn(path([0, 7, 0, 7, 1, 5]))).toEqual([
      { from: 0, to: 9 },
      { from: 19, to: 29 },
      { from: 39, to: 49 },
    ]);
  });

  it('takes a small way back for noise', () => {
    expect(loadingsIn(Float64Array.of(0, 4, 3.9, 8, 7.9, 10))).toEqual([{ from: 0, to: 5 }]);
  });
});
