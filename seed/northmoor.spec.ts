import { checkAsk, checkItem, isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Ask, Material, Method } from '#libs/matching/src/index.js';
import { MATERIALS } from './library/materials.js';
import { METHODS } from './library/methods.js';
import { ALL_REQUESTS } from './northmoor/all-requests.js';
import type { NumberedRequest } from './northmoor/all-requests.js';
import { HOUSE_METHODS } from './northmoor/house-methods.js';
import { ITEMS } from './northmoor/items.js';
import type { DemoBatch } from './northmoor/requests.js';

const count = (kind: string) => ITEMS.filter((item) => item.kind === kind).length;

describe('the demo lab', () => {
  it('has the size of a believable lab', () => {
    expect(count('frame')).toBe(9);
    expect(count('load-cell')).toBeGreaterThanOrEqual(20);
    expect(count('grip')).toBeGreaterThanOrEqual(50);
    expect(count('adapter')).toBeGreaterThanOrEqual(20);
    expect(count('extensometer')).toBeGreaterThanOrEqual(6);
  });

  it('gives every item a tag of its own', () => {
    expect(new Set(ITEMS.map(({ tag }) => tag)).size).toBe(ITEMS.length);
  });

  it.each(ITEMS.map((item) => [item.tag, item] as const))('registers %s without a wrong field', (_tag, item) => {
    const { serialNumber, intervalMonths, ...registered } = item;
    expect(serialNumber.length).toBeGreaterThan(3);
    expect(intervalMonths ?? 12).toBe(12);
    expect(checkItem({ ...registered, state: 'in-service' })).toEqual([]);
  });
});

const methods = new Map<string, Method>([...METHODS, ...HOUSE_METHODS].map((method) => [method.id, method]));
const materials = new Map<string, Material>(MATERIALS.map((material) => [material.id, material]));

function askOf({ method, material, count: specimens, ask }: DemoBatch): Ask {
  const version = methods.get(method)!.version;
  return {
    ...ask,
    methodId: method,
    methodVersion: version,
    materialId: material ?? null,
    modulusMPa: null,
    specimens,
  };
}

const BATCHES = ALL_REQUESTS.flatMap((request) =>
  request.batches.map(
    (batch) => [`${request.reference} ${request.title} ${batch.label ?? ''}`, request, batch] as const,
  ),
);

describe('the requests of the demo lab', () => {
  const current = (request: NumberedRequest) => request.state !== 'closed';

  it('are about forty that somebody still cares for, and more than thirty that are over', () => {
    expect(ALL_REQUESTS.filter(current).length).toBeGreaterThanOrEqual(38);
    expect(ALL_REQUESTS.filter((request) => !current(request)).length).toBeGreaterThanOrEqual(30);
  });

  it.each(BATCHES)('ask for what their method can give: %s', (_name, request, batch) => {
    const method = methods.get(batch.method)!;
    const needs = needsOf(askOf(batch), method, batch.material ? materials.get(batch.material)! : null);
    expect(checkAsk(method, askOf(batch))).toEqual([]);
    if (!isNeeds(needs)) throw new Error(JSON.stringify(needs));
    expect([request.state, needs.toConfirm]).toEqual([request.state, []]);
  });
});
