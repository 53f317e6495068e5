import { DEFAULT_SETTINGS, isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Item, Lab, Method, RuleCode } from '#libs/matching/src/index.js';
import type { Parts } from '#libs/matching/src/rules/parts.js';
import { FullReport, QuickReport } from '#libs/matching/src/rules/report.js';
import { RULES } from '#libs/matching/src/rules/rules.js';
import { RequestContext } from '#libs/matching/src/search/request-context.js';
import { METHODS } from '#seed/library/methods.js';
import { Chance } from './chance.js';
import { PERIOD, randomAsk, randomLab } from './random-lab.js';

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));
const LABS = 3000;
const WORDS = ['pass', 'caution', 'fail'] as const;

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

/** The fields of `target` that somebody reads are added to `read`; those of a nested one as well where it is given. */
function watched<T extends object>(target: T, read: Set<string>, inner: Record<string, unknown> = {}): T {
  return new Proxy(target, {
    get(of, field) {
      read.add(String(field));
      return field in inner ? inner[String(field)] : (Reflect.get(of, field) as unknown);
    },
  });
}

describe('what the checks say of themselves, on any train of 3000 labs', () => {
  const unseen = new Set<string>();
  const unreadFields = new Set<string>();
  const differ: unknown[] = [];
  const twoCautions = new Set<RuleCode>();
  const lighterFails: unknown[] = [];
  const outcomes = new Map<string, Set<number>>();

  beforeAll(() => {
    for (let seed = 1; seed <= LABS; seed += 1) {
      const lab = randomLab(seed);
      const ask = randomAsk(seed);
      const needs = needsOf(ask, methods.get(ask.methodId)!, null);
      if (!isNeeds(needs)) throw new Error(`lab ${seed}`);
      const context = new RequestContext(needs, DEFAULT_SETTINGS, PERIOD, lab.technicians);
      const parts = anyTrain(lab, new Chance(seed));
      if (!parts) continue;
      for (const rule of RULES) {
        let cautions = 0;
        let failsAlone = false;
        rule.checks.forEach((check, n) => {
          const name = `${rule.code} ${n + 1}`;
          const [partsRead, frameRead, fieldsRead] = [new Set<string>(), new Set<string>(), new Set<string>()];
          const frame = watched(parts.frame, frameRead, { details: watched(parts.frame.details, fieldsRead) });
          const full = new FullReport();
          const outcome = check.judge(watched(parts, partsRead, { frame }), context, full);
          const quick = check.judge(parts, context, new QuickReport());
          outcomes.set(name, (outcomes.get(name) ?? new Set()).add(outcome));
          if (outcome === 1) cautions += 1;
          if (outcome === 2 && check.sees.length === 1) failsAlone = true;
          if (quick !== outcome || (full.found?.outcome ?? 'pass') !== WORDS[outcome])
            differ.push({ seed, name, quick, outcome, found: full.found?.outcome });
          for (const part of partsRead) if (!check.sees.includes(part as keyof Parts)) unseen.add(`${name}: ${part}`);
          // A check of a frame with one other part: what it reads of the frame decides which frames share its answer.
          const others = check.sees.filter((part) => part !== 'frame' && part !== 'cellAt');
          if (check.sees.includes('frame') && others.length === 1) {
            const allowed: readonly string[] = check.frameFields ?? [];
            for (const field of fieldsRead) if (!allowed.includes(field)) unreadFields.add(`${name}: ${field}`);
            for (const field of frameRead)
              if (field !== 'details' && field !== 'id') unreadFields.add(`${name}: frame.${field}`);
          }
          // The search asks it only of cells that carry the force by themselves.
          if (check.heavierFailsToo && outcome === 2 && !failsAlone) {
            const { upper, lower } = parts.ends;
            const heavier = {
              upper: { ...upper, massKg: upper.massKg + 5 },
              lower: { ...lower, massKg: lower.massKg + 5 },
            };
            if (check.judge({ ...parts, ends: heavier }, context, new QuickReport()) !== 2)
              lighterFails.push({ seed, name });
          }
        });
        if (rule.cautionsByOnePart && cautions > 1 && isSound(parts)) twoCautions.add(rule.code);
      }
    }
  });

  /** Grips of one train have the same seat for faces, and separate faces only where there is one. */
  function isSound({ ends, faces }: Parts): boolean {
    const seats = [ends.upper, ends.lower].flatMap((end) => (end.kind === 'grip' ? [end.details.faceSlot] : []));
    return new Set(seats).size <= 1 && (faces === null) === ((seats[0] ?? null) === null);
  }

  it('they look at no part that they do not name', () => expect([...unseen]).toEqual([]));
  it('they read no field of the frame that they do not name', () => expect([...unreadFields]).toEqual([]));
  it('the quick report and the full one agree, and the finding is as bad as the outcome', () => {
    expect(differ).toEqual([]);
  });
  it('what fails with a weight fails with a greater one', () => expect(lighterFails).toEqual([]));
  it('cautions that are priced with their part come from one part only', () => expect([...twoCautions]).toEqual([]));
  it('most of them pass some trains and not others', () => {
    const plain = [...outcomes].filter(([, seen]) => seen.size < 2).map(([name]) => name);
    expect(outcomes.size - plain.length).toBeGreaterThan(40);
  });
});
