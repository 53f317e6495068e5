import { DEFAULT_SETTINGS, isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Item, Lab, Method } from '#libs/matching/src/index.js';
import type { Parts } from '#libs/matching/src/parts.js';
import { RULES } from '#libs/matching/src/rules/rules.js';
import { RequestContext } from '#libs/matching/src/search/request-context.js';
import { METHODS } from '#seed/library/methods.js';
import { Chance } from './chance.js';
import { PERIOD, randomAsk, randomLab } from './random-lab.js';

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));
const LABS = 3000;

/** Any train of a lab, whether or not its parts have anything to do with each other; null where the lab has too little. */
function anyTrain({ items }: Lab, chance: Chance): Parts | null {
  const of = <K extends Item['kind']>(kind: K) =>
    items.filter((item): item is Extract<Item, { kind: K }> => item.kind === kind);
  const maybe = <T>(list: readonly T[]): T | null => (list.length > 0 && chance.often(60) ? chance.one(list) : null);
  const holding = [...of('grip'), ...of('fixture'), ...of('platen')];
  const [frame, cell] = [maybe(of('frame')), maybe(of('load-cell'))];
  if (!frame || !cell) return null;
  const upper = chance.one(holding);
  const adapters = of('adapter');
  return {
    frame,
    cell,
    cellAt: chance.one(['crosshead', 'base']),
    adapters: { upper: adapters.filter(() => chance.often(20)), lower: adapters.filter(() => chance.often(20)) },
    ends: { upper, lower: chance.often(70) ? upper : chance.one(holding) },
    faces: maybe(of('jaw-face')),
    extensometer: maybe(of('extensometer')),
    chamber: maybe(of('chamber')),
    guard: maybe(of('guard')),
    thermocouple: maybe(of('transducer')),
  };
}

describe('the quick answer of a check', () => {
  const checks = RULES.flatMap(({ code, checks: all }) => all.map((check, n) => ({ name: `${code} ${n + 1}`, check })));
  const said = new Map(checks.map(({ name }) => [name, new Set<boolean>()]));
  const wrong: unknown[] = [];

  beforeAll(() => {
    for (let seed = 1; seed <= LABS; seed += 1) {
      const lab = randomLab(seed);
      const ask = randomAsk(seed);
      const needs = needsOf(ask, methods.get(ask.methodId)!, null);
      if (!isNeeds(needs)) throw new Error(`lab ${seed}`);
      const context = new RequestContext(needs, DEFAULT_SETTINGS, PERIOD, lab.technicians);
      const parts = anyTrain(lab, new Chance(seed));
      if (!parts) continue;
      for (const { name, check } of checks) {
        if (!check.passes) continue;
        const quick = check.passes(parts, context);
        const outcome = check.judge(parts, context)?.outcome ?? 'pass';
        said.get(name)!.add(quick);
        if (quick ? outcome !== 'pass' : check.otherwise && outcome !== check.otherwise)
          wrong.push({ seed, name, quick, outcome });
      }
    }
  });

  it('is the outcome of its finding, on any train of 3000 labs', () => {
    expect(wrong).toEqual([]);
  });

  it.each(checks.filter(({ check }) => check.otherwise).map(({ name }) => name))('is yes and no for %s', (name) => {
    expect([...said.get(name)!].sort()).toEqual([false, true]);
  });
});
