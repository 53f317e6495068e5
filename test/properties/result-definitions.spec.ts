import { resultDefinition } from '#libs/contract/src/index.js';
import { METHODS } from '#seed/library/methods.js';

describe('every result of every method of the library', () => {
  const all = METHODS.flatMap((method) => method.results.map((key) => ({ method, key, name: `${method.id} ${key}` })));

  it.each(all)('has a definition without a gap: $name', ({ method, key }) => {
    const usual = Object.fromEntries(method.geometry.map((need) => [need.key, need.usual ?? 10]));
    const words = resultDefinition(key, { method, geometry: usual });
    expect(words).toMatch(/^.{10,}$/);
    expect(words).not.toMatch(/undefined|NaN|null|by the method|of the method/);
  });
});
