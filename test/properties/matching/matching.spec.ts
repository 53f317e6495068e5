import { checkTrain, DEFAULT_SETTINGS, isNeeds, matchTrains, needsOf } from '#libs/matching/src/index.js';
import type { Adapter, Candidate, Item, Lab, LinkRole, Method, Needs } from '#libs/matching/src/index.js';
import { fromInternal, toInternal } from '#libs/units/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { Chance } from './chance.js';
import { brokenRules, plainUsable } from './plain-rules.js';
import type { PlainEnd, PlainTrain } from './plain-rules.js';
import { plainAnswer } from './plain-walk.js';
import { PERIOD, randomAsk, randomLab } from './random-lab.js';

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));

function randomNeeds(seed: number): Needs {
  const ask = randomAsk(seed);
  const needs = needsOf(ask, methods.get(ask.methodId)!, null);
  if (!isNeeds(needs)) throw new Error(needs.map(({ sentence }) => sentence).join(' '));
  return needs;
}

function asPlain({ frameId, cellAt, links }: Candidate, lab: Lab): PlainTrain {
  const at = (role: LinkRole): Item | null =>
    lab.items.find(({ id }) => id === links.find((link) => link.role === role)?.itemId) ?? null;
  const adapters = (...roles: LinkRole[]) => roles.map(at).filter((item) => item !== null) as Adapter[];
  return {
    frame: lab.items.find(({ id }) => id === frameId) as PlainTrain['frame'],
    cell: at('load-cell') as PlainTrain['cell'],
    cellAt,
    upperAdapters: adapters('upper-adapter', 'upper-adapter-2'),
    lowerAdapters: adapters('lower-adapter', 'lower-adapter-2'),
    upper: (at('ends') ?? at('upper')) as PlainEnd,
    lower: (at('ends') ?? at('lower')) as PlainEnd,
    faces: at('faces') as PlainTrain['faces'],
    extensometer: at('extensometer') as PlainTrain['extensometer'],
    chamber: at('chamber') as PlainTrain['chamber'],
    guard: at('guard') as PlainTrain['guard'],
    thermocouple: at('thermocouple') as PlainTrain['thermocouple'],
  };
}

const framesOf = (candidates: readonly Candidate[]) => [...new Set(candidates.map(({ frameId }) => frameId))].sort();
const answers = (lab: Lab, needs: Needs) => matchTrains(lab, needs, PERIOD);

describe('matching on random labs', () => {
  it('offers no train that breaks a rule of the plain checker, in 10 000 labs', () => {
    let seen = 0;
    for (let seed = 1; seed <= 10_000; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      for (const candidate of answers(lab, needs).candidates) {
        seen += 1;
        const broken = brokenRules(asPlain(candidate, lab), needs, lab, DEFAULT_SETTINGS, PERIOD);
        if (broken.length > 0)
          expect({ seed, candidate: candidate.links, broken }).toEqual({
            seed,
            candidate: candidate.links,
            broken: [],
          });
      }
    }
    expect(seen).toBeGreaterThan(500);
  });

  it('finds a train wherever the plain walk of all lists finds one, and names as few rules as can be where it does not', () => {
    const found = { candidates: 0, refusals: 0 };
    for (let seed = 20_001; seed <= 20_100; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      const answer = answers(lab, needs);
      for (const frame of lab.items.filter((item) => item.kind === 'frame')) {
        const plain = plainAnswer(lab, frame, needs, DEFAULT_SETTINGS, PERIOD);
        const refusal = answer.refusals.find(({ frameId }) => frameId === frame.id);
        expect({ seed, frame: frame.id, passes: !refusal }).toEqual({ seed, frame: frame.id, passes: plain.passes });
        if (!refusal) found.candidates += 1;
        else if (refusal.nearest) {
          found.refusals += 1;
          expect({ seed, frame: frame.id, count: refusal.failing.length }).toEqual({
            seed,
            frame: frame.id,
            count: plain.fewest!.length,
          });
        }
      }
    }
    expect(found.candidates).toBeGreaterThan(5);
    expect(found.refusals).toBeGreaterThan(50);
  });

  it('has a usable unit in every pool at every moment of the windows that it offers', () => {
    for (let seed = 30_001; seed <= 30_500; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      const byId = new Map(lab.items.map((item) => [item.id, item]));
      for (const { windows, links } of answers(lab, needs).candidates) {
        expect(windows.length).toBeGreaterThan(0);
        for (const { startMs, endMs } of windows) {
          for (const at of [startMs, endMs - 1]) {
            const idle = links.filter(
              ({ pool }) =>
                !pool.some((id) =>
                  plainUsable(byId.get(id)!, needs, PERIOD).some((w) => w.startMs <= at && at < w.endMs),
                ),
            );
            expect({ seed, idle }).toEqual({ seed, idle: [] });
          }
        }
      }
    }
  });

  it('keeps every frame when any rating grows', () => {
    let kept = 0;
    for (let seed = 40_001; seed <= 40_800; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      const before = framesOf(answers(lab, needs).candidates);
      if (before.length === 0) continue;
      const after = framesOf(answers(stronger(lab, new Chance(seed)), needs).candidates);
      expect({ seed, lost: before.filter((id) => !after.includes(id)) }).toEqual({ seed, lost: [] });
      kept += 1;
    }
    expect(kept).toBeGreaterThan(20);
  });

  it('answers the same whatever the order of the items', () => {
    for (let seed = 50_001; seed <= 50_400; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      const chance = new Chance(seed);
      const mixed = {
        ...lab,
        items: chance.shuffled(lab.items),
        technicians: chance.shuffled(lab.technicians),
        rigs: chance.shuffled(lab.rigs),
      };
      const [a, b] = [answers(lab, needs), answers(mixed, needs)];
      if (JSON.stringify(a) !== JSON.stringify(b)) expect({ seed, answer: b }).toEqual({ seed, answer: a });
    }
  });

  it('answers the same whatever unit a length or load was typed in', () => {
    for (let seed = 60_001; seed <= 60_300; seed += 1) {
      const ask = randomAsk(seed);
      const inch = (mm: number) => toInternal(fromInternal(mm, 'in'), 'in');
      const pound = (n: number) => toInternal(fromInternal(n, 'lbf'), 'lbf');
      const { shape, ...figures } = ask.geometry;
      const typed = {
        ...ask,
        geometry: { shape, ...Object.fromEntries(Object.entries(figures).map(([key, mm]) => [key, inch(mm)])) },
        peak: ask.peak && { low: pound(ask.peak.low), high: pound(ask.peak.high) },
      };
      const method = methods.get(ask.methodId)!;
      const [a, b] = [needsOf(ask, method, null), needsOf(typed, method, null)];
      if (!isNeeds(a) || !isNeeds(b)) throw new Error(`lab ${seed}`);
      const lab = randomLab(seed);
      const trains = (needs: Needs) =>
        answers(lab, needs).candidates.map(({ frameId, links }) => [frameId, links.map(({ itemId }) => itemId)]);
      expect({ seed, trains: trains(b) }).toEqual({ seed, trains: trains(a) });
    }
  });

  it('judges each candidate as passing when it is checked alone', () => {
    for (let seed = 70_001; seed <= 70_500; seed += 1) {
      const lab = randomLab(seed);
      const needs = randomNeeds(seed);
      for (const candidate of answers(lab, needs).candidates) {
        const alone = checkTrain(lab, candidate, needs, PERIOD);
        expect({ seed, fails: alone?.verdicts.filter(({ outcome }) => outcome === 'fail') }).toEqual({
          seed,
          fails: [],
        });
      }
    }
  });
});

/** Any rating of any link, the frames' capacities and guards, larger by chance. Cells stand apart: one may outgrow its frame. */
function stronger(lab: Lab, chance: Chance): Lab {
  const grow = () => 1 + (chance.often(50) ? chance.next() * 3 : 0);
  const items = lab.items.map((item): Item => {
    if (item.kind === 'frame') {
      const { tensionCapacityN, compressionCapacityN, torqueCapacityNm, guardEnergyJ } = item.details;
      const details = {
        ...item.details,
        tensionCapacityN: tensionCapacityN * grow(),
        compressionCapacityN: compressionCapacityN * grow(),
        torqueCapacityNm: torqueCapacityNm * grow(),
        guardEnergyJ: guardEnergyJ * grow(),
      };
      return { ...item, details };
    }
    const by = grow();
    const ratings = Object.fromEntries(
      Object.entries(item.ratings).map(([direction, curve]) => [
        direction,
        curve.map((point) => ({ ...point, rating: point.rating * by })),
      ]),
    );
    return { ...item, ratings };
  });
  return { ...lab, items };
}
