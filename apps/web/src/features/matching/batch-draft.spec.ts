import type { BatchView, MethodView } from '#libs/contract/src/index.js';
import { askFields } from '#libs/matching/src/index.js';
import type { Method } from '#libs/matching/src/index.js';
import { METHODS } from '#seed/library/methods.js';
import { bodyOf, draftOf, emptyBatch, readDraft, withEnd, withMethod } from './batch-draft.js';
import type { BatchDraft } from './batch-draft.js';

const DATA: Method = METHODS.find(({ id }) => id === 'iso-178')!;
const METHOD: MethodView = {
  id: 'row',
  code: DATA.id,
  version: 1,
  designation: DATA.designation,
  title: DATA.title,
  testType: DATA.testType,
  state: 'offered',
  data: DATA,
};

function draft(change: (draft: BatchDraft) => void = () => undefined): BatchDraft {
  const made = { ...withMethod(emptyBatch('first'), METHOD), materialId: 'pa66' };
  change(made);
  return made;
}

describe('a batch as it is typed', () => {
  it('begins with what the method proposes and lacks nothing that the method asks', () => {
    const { wrong, missing } = readDraft(METHOD, draft());
    expect({ wrong, missing }).toEqual({ wrong: {}, missing: [] });
  });

  it('turns figures into internal units: half an inch is 12.7 mm', () => {
    const { ask } = readDraft(
      METHOD,
      draft((made) => (made.typed['geometry.widthMm'] = { value: '0.5', unit: 'in' })),
    );
    expect((ask['geometry'] as Record<string, number>)['widthMm']).toBeCloseTo(12.7, 12);
  });

  it('says what is out of bounds in the unit that was typed', () => {
    const { wrong } = readDraft(
      METHOD,
      draft((made) => (made.typed['geometry.widthMm'] = { value: '900', unit: 'in' })),
    );
    expect(wrong['geometry.widthMm']).toMatch(/^Width may be .* to .* in\.$/);
  });

  it('names a figure that is needed and empty', () => {
    const { missing } = readDraft(
      METHOD,
      draft((made) => (made.typed['geometry.thicknessMm'] = { value: ' ', unit: 'mm' })),
    );
    expect(missing).toEqual(['geometry.thicknessMm']);
  });

  it('lacks the material as long as nothing else says how strong it is', () => {
    expect(readDraft(METHOD, { ...draft(), materialId: '' }).missing).toEqual(['materialId']);
    const strong = draft((made) => (made.typed['strength.low'] = { value: '80', unit: 'MPa' }));
    expect(readDraft(METHOD, { ...strong, materialId: '' }).missing).toEqual([]);
  });

  it('takes along to another method what a person typed, and nothing that the first method proposed', () => {
    const peel = { ...METHOD, id: 'other', data: METHODS.find(({ id }) => id === 'iso-8510-2')! };
    const proposed = withMethod(emptyBatch('second'), peel).typed['geometry.widthMm'];
    expect(withMethod(draft(), peel, METHOD).typed['geometry.widthMm']).toEqual(proposed);
    const typed = { value: '22', unit: 'mm' };
    const own = withMethod(
      draft((made) => (made.typed['geometry.widthMm'] = typed)),
      peel,
      METHOD,
    );
    expect(own.typed['geometry.widthMm']).toEqual(typed);
    expect(Object.keys(bodyOf(peel, own).asTyped ?? {})).not.toContain('geometry.spanMm');
  });

  it('takes nothing along that a method proposed over one that does not ask for it', () => {
    const other = (id: string): MethodView => ({ ...METHOD, id, data: METHODS.find((method) => method.id === id)! });
    const asks = (id: string) => askFields(other(id).data).some(({ field }) => field === 'geometry.widthMm');
    const without = METHODS.find(({ id }) => !asks(id))!.id;
    const peel = other('iso-8510-2');
    const over = withMethod(withMethod(draft(), other(without), METHOD), peel, other(without));
    expect(over.typed['geometry.widthMm']).toEqual(withMethod(emptyBatch('new'), peel).typed['geometry.widthMm']);
    const own = draft((made) => (made.typed['geometry.widthMm'] = { value: '22', unit: 'mm' }));
    const ownOver = withMethod(withMethod(own, other(without), METHOD), peel, other(without));
    expect(ownOver.typed['geometry.widthMm']).toEqual({ value: '22', unit: 'mm' });
  });

  it.each(METHODS.map(({ id }) => id))('shows for %s what it proposes, whatever method stood there before', (id) => {
    const method = { ...METHOD, id, data: METHODS.find((each) => each.id === id)! };
    const fresh = withMethod(emptyBatch('first'), method);
    const shown = ({ typed, picked }: BatchDraft) =>
      askFields(method.data).map(({ field }) => [field, typed[field]?.value, picked[field]]);
    const others = METHODS.filter((data) => {
      const before = { ...METHOD, id: data.id, data };
      const after = withMethod(withMethod(emptyBatch('first'), before), method, before);
      return JSON.stringify(shown(after)) !== JSON.stringify(shown(fresh));
    });
    expect(others.map((data) => data.id)).toEqual([]);
  });

  it('gives a round bar round ends, and leaves ends that a person chose', () => {
    const metal = { ...METHOD, id: 'metal', data: METHODS.find(({ id }) => id === 'iso-6892-1')! };
    const made = withMethod(emptyBatch('bar'), metal);
    const shaped = (from: BatchDraft, shape: string): BatchDraft =>
      withEnd(metal, from, { ...from, picked: { ...from.picked, 'geometry.shape': shape } });
    expect(shaped(shaped(made, 'rectangle'), 'round').picked['endShape']).toBe('round');
    const flat = shaped(made, 'rectangle');
    expect(flat.picked['endShape']).toBe('flat');
    const own = { ...flat, picked: { ...flat.picked, endShape: 'threaded' } };
    expect(shaped(own, 'round').picked['endShape']).toBe('threaded');
  });

  it('takes one figure of a band for both ends, and refuses a band upside down', () => {
    const one = readDraft(
      METHOD,
      draft((made) => (made.typed['strength.high'] = { value: '80', unit: 'MPa' })),
    );
    expect(one.ask['strength']).toEqual({ low: 80, high: 80 });
    const upside = draft((made) => {
      made.typed['strength.low'] = { value: '120', unit: 'MPa' };
      made.typed['strength.high'] = { value: '80', unit: 'MPa' };
    });
    expect(readDraft(METHOD, upside).wrong['strength.low']).toContain('lower figure comes first');
  });

  it('comes back from the server as it was typed', () => {
    const typed = draft((made) => (made.typed['geometry.widthMm'] = { value: '0.5', unit: 'in' }));
    const { ask, asTyped } = bodyOf(METHOD, typed);
    const kept = { id: 'batch', label: '', material: null, ask, asTyped } as unknown as BatchView;
    expect(draftOf(kept, METHOD).typed['geometry.widthMm']).toEqual({ value: '0.5', unit: 'in' });
  });
});
