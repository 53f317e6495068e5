import { checkItem } from './check-item.js';
import { ITEM_KINDS } from './item-choices.js';
import { ITEM_FIELDS } from './item-fields.js';
import { SAMPLE_LAB, sampleItem } from '#test/support/matching/sample-lab.js';

const fieldsOf = (value: unknown) => checkItem(value).map(({ field }) => field);
const frame = sampleItem('frame', 'F');
const grip = sampleItem('grip', 'G');

describe('checkItem', () => {
  it.each(SAMPLE_LAB.items.map((item) => [item.id, item] as const))('accepts the sample item %s', (_id, item) => {
    expect(checkItem(item)).toEqual([]);
  });

  it('names every kind', () => {
    expect(Object.keys(ITEM_FIELDS).sort()).toEqual([...ITEM_KINDS].sort());
    expect(fieldsOf({ kind: 'kettle' })).toEqual(['kind']);
  });

  it('names each field that is missing or out of bounds, with the allowed range and unit', () => {
    const [problem] = checkItem({ ...frame, details: { ...frame.details, openingMaxMm: -1 } });
    expect(problem).toMatchObject({ field: 'details.openingMaxMm', found: -1, unit: 'mm' });
    expect(problem!.allowed).toContain('at least 0.001');
    expect(fieldsOf({ ...frame, tag: '', massKg: Number.NaN })).toEqual(['tag', 'massKg']);
  });

  it('refuses a field that the kind does not have', () => {
    const strange = { ...frame, colour: 'blue', details: { ...frame.details, oppeningMaxMm: 5 } };
    expect(fieldsOf(strange).sort()).toEqual(['colour', 'details.oppeningMaxMm']);
  });

  it('refuses bounds in the wrong order, and a grip with neither seat nor surface', () => {
    expect(fieldsOf({ ...grip, temperatureMinC: 50 })).toEqual(['temperatureMinC']);
    expect(fieldsOf({ ...grip, details: { ...grip.details, faceSlot: null } })).toEqual(['details.fixedFaceSurface']);
    expect(fieldsOf({ ...grip, ratings: {} })).toEqual(['ratings.tension']);
  });

  it('checks inside lists', () => {
    const channels = [
      { kind: 'force', count: 1 },
      { kind: 'smell', count: -1 },
    ];
    expect(fieldsOf({ ...frame, details: { ...frame.details, channels } })).toEqual([
      'details.channels.1.kind',
      'details.channels.1.count',
    ]);
    const ratings = { tension: [{ temperatureC: 23, rating: 'much' }] };
    expect(fieldsOf({ ...grip, ratings })).toEqual(['ratings.tension.0.rating']);
  });
});
