/** Numbers in [0, 1) that follow from a seed (Lehmer's generator, 48271 modulo 2³¹ − 1). */
export function sequence(seed: number): () => number {
  let state = (seed % 2_147_483_646) + 1;
  return () => (state = (state * 48_271) % 2_147_483_647) / 2_147_483_647;
}
