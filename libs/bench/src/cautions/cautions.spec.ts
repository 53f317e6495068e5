import { cautionsFor, LAST_CAUTION } from './cautions.js';
import type { CautionFacts, CautionItem } from './cautions.js';

const needs = (over: Partial<CautionFacts> = {}): CautionFacts => ({
  ...{ hazards: [], brittle: false, chamber: false, storedEnergy: { value: 1 }, temperature: { value: 23 } },
  ...over,
});
const item = (over: Partial<CautionItem>): CautionItem => ({ tag: 'AD-1', massKg: 1, isPowered: false, ...over });

describe('the cautions of a job', () => {
  it('always begin with the crosshead and end with what goes before this sheet', () => {
    const said = cautionsFor(needs(), [], []);
    expect([said.length, said[0], said[1]]).toEqual([2, expect.stringContaining('crosshead'), LAST_CAUTION]);
  });

  it.each<[string, Partial<CautionFacts>, CautionItem[], RegExp]>([
    ['what is heavy', {}, [item({ tag: 'GW-1', massKg: 10 })], /GW-1 \(10 kg\)/],
    ['fragments of what is brittle', { brittle: true }, [], /Fragments/],
    ['powered grips', {}, [item({ isPowered: true })], /fingers/],
    ['a hot chamber', { chamber: true, temperature: { value: 80 } }, [], /80 °C.*burn/],
    ['a cold chamber', { chamber: true, temperature: { value: -40 } }, [], /-40 °C.*Cold/],
    ['stored energy', { storedEnergy: { value: 5 } }, [], /holds 5.J/],
    ['dust', { hazards: ['dust'] }, [], /lungs/],
  ])('name %s', (_, over, train, words) => {
    expect(cautionsFor(needs(over), train, []).join('\n')).toMatch(words);
  });

  it('say fragments once, and leave out what is not there', () => {
    expect(cautionsFor(needs({ brittle: true, hazards: ['fragments'] }), [item({ massKg: 9.9 })], [])).toHaveLength(3);
  });
});
