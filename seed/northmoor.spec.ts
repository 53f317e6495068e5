import { MS_PER_DAY, shiftsBetween } from '#libs/calendar/src/index.js';
import { checkAsk, checkItem, checkTrain, isNeeds, matchTrains, needsOf } from '#libs/matching/src/index.js';
import type { Ask, Item, Lab, Material, Method, Needs } from '#libs/matching/src/index.js';
import { MATERIALS } from './library/materials.js';
import { METHODS } from './library/methods.js';
import { ALL_REQUESTS } from './northmoor/all-requests.js';
import type { NumberedRequest } from './northmoor/all-requests.js';
import { HOUSE_METHODS } from './northmoor/house-methods.js';
import { calibrationsAt, generationsOf } from './northmoor/calibrations.js';
import { itemId, ITEMS } from './northmoor/items.js';
import { LabTime } from './northmoor/lab-time.js';
import { PEOPLE, ZONE } from './northmoor/people.js';
import type { DemoBatch } from './northmoor/demo-request.js';
import { SETTINGS } from './northmoor/settings.js';
import { RIGS, TRAINS } from './northmoor/trains.js';
import { WINDOWS } from './northmoor/trouble.js';
import { workOf } from './northmoor/work.js';

const tagOf = (id: string) => ITEMS.find(({ tag }) => itemId(tag) === id)?.tag ?? id;
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

  it('gives every certificate a number of its own, on whatever day of the year it is loaded', () => {
    // An item is due within 350 days, so that this covers every day of a year for each of them.
    const doubled = Array.from({ length: 366 + 350 }, (_, day) => WEDNESDAY + day * MS_PER_DAY).filter((nowMs) => {
      const numbers = generationsOf(ITEMS[0]!, nowMs).map(({ certificateNumber }) => certificateNumber);
      return new Set(numbers).size < numbers.length;
    });
    expect(doubled).toEqual([]);
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

function needsOfBatch(batch: DemoBatch): Needs {
  const needs = needsOf(
    askOf(batch),
    methods.get(batch.method)!,
    batch.material ? materials.get(batch.material)! : null,
  );
  if (!isNeeds(needs)) throw new Error(JSON.stringify(needs));
  return needs;
}

const WEDNESDAY = Date.parse('2026-11-25T10:30:00Z');
const PERIOD = { startMs: WEDNESDAY, endMs: WEDNESDAY + 28 * MS_PER_DAY };
const time = new LabTime(WEDNESDAY);
const CALIBRATIONS = calibrationsAt(WEDNESDAY);

/** The lab as matching sees it, every item in its best state: trouble is the business of other specs. */
const LAB: Lab = {
  items: ITEMS.map(
    (item) => ({ ...item, id: itemId(item.tag), state: 'in-service', ...standing(item.tag) }) as unknown as Item,
  ),
  rigs: RIGS.map(({ frame, links }) => ({
    frameId: itemId(frame),
    itemIds: links.map(({ tag }) => itemId(tag)),
    chamberC: null,
  })),
  technicians: PEOPLE.filter(({ shift }) => shift).map(({ key, work }) => ({
    id: key,
    methodIds: [...methods.values()].filter((method) => work!.includes(workOf(method))).map(({ id }) => id),
    windows: shiftsBetween({ zone: ZONE, shifts: SETTINGS.shifts!, exceptions: [] }, PERIOD.startMs, PERIOD.endMs),
  })),
};

function standing(tag: string): Pick<Item, 'calibrations' | 'heldWindows'> {
  const calibrations = CALIBRATIONS.filter((each) => each.tag === tag).flatMap(
    ({ standard, ranges, performedAt, dueAt }) =>
      ranges.map(({ direction, className, from, to }) => ({
        ...{ direction, standard, className, from, to },
        validFromMs: performedAt.getTime(),
        dueMs: dueAt.getTime(),
      })),
  );
  const heldWindows = WINDOWS.filter((window) => window.tag === tag).map(({ from, to }) => ({
    startMs: time.at(...from).getTime(),
    endMs: time.at(...to).getTime(),
  }));
  return { calibrations, heldWindows };
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
    expect(checkAsk(methods.get(batch.method)!, askOf(batch))).toEqual([]);
    expect([request.state, needsOfBatch(batch).toConfirm]).toEqual([request.state, []]);
  });

  it.each(BATCHES.filter(([, request]) => current(request) && request.state !== 'declined'))(
    'find a load train, or are meant not to: %s',
    (_name, request, batch) => {
      const { candidates, refusals } = matchTrains(LAB, needsOfBatch(batch), PERIOD);
      const why = refusals.map(({ frameId, failing }) => [tagOf(frameId), ...failing.map(({ sentence }) => sentence)]);
      expect({
        impossible: candidates.length === 0,
        why: candidates.length === 0 && !request.impossible ? why : [],
      }).toEqual({
        impossible: request.impossible ?? false,
        why: [],
      });
    },
  );

  it('keep every frame of the lab in work', () => {
    const frames = BATCHES.flatMap(([, , batch]) =>
      matchTrains(LAB, needsOfBatch(batch), PERIOD).candidates.map(({ frameId }) => tagOf(frameId)),
    );
    expect([...new Set(frames)].sort()).toEqual(
      ITEMS.filter(({ kind }) => kind === 'frame')
        .map(({ tag }) => tag)
        .sort(),
    );
  });

  it('want one scarce pair of grips for several of them', () => {
    const wanting = BATCHES.filter(([, request, batch]) => {
      const { candidates } = matchTrains(LAB, needsOfBatch(batch), PERIOD);
      const only =
        candidates.length > 0 &&
        candidates.every(({ links }) => links.some(({ itemId: id }) => tagOf(id) === 'GB-CORD5-1'));
      return request.state === 'accepted' && only;
    });
    expect(wanting.length).toBeGreaterThanOrEqual(4);
  });

  it.each(BATCHES.flatMap(([name, , batch]) => (batch.job ? [[name, batch.job, batch] as const] : [])))(
    'ran on a train that passes every rule: %s',
    (_name, job, batch) => {
      const { frame, links } = TRAINS[job.train];
      const train = { frameId: itemId(frame), links: links.map(({ role, tag }) => ({ role, itemId: itemId(tag) })) };
      const check = checkTrain(LAB, train, needsOfBatch(batch), PERIOD);
      expect(check?.verdicts.filter(({ outcome }) => outcome === 'fail').map(({ sentence }) => sentence)).toEqual([]);
    },
  );
});
