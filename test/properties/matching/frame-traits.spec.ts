import { DEFAULT_SETTINGS, isNeeds, needsOf } from '#libs/matching/src/index.js';
import type { Frame, Item, Method } from '#libs/matching/src/index.js';
import { RULES } from '#libs/matching/src/rules/rules.js';
import type { Parts } from '#libs/matching/src/parts.js';
import { FRAME_FIELDS } from '#libs/matching/src/search/frame-traits.js';
import type { FramePart } from '#libs/matching/src/search/frame-traits.js';
import { RequestContext } from '#libs/matching/src/search/request-context.js';
import { METHODS } from '#seed/library/methods.js';
import { PERIOD, randomAsk, randomLab } from './random-lab.js';

const methods = new Map<string, Method>(METHODS.map((method) => [method.id, method]));

const KIND: Record<FramePart, Item['kind'][]> = {
  cells: ['load-cell'],
  ends: ['grip', 'fixture', 'platen'],
  faces: ['jaw-face'],
  extensometers: ['extensometer'],
  chambers: ['chamber'],
  guards: ['guard'],
  thermocouples: ['transducer'],
};

const PLACE: Record<FramePart, keyof Parts> = {
  cells: 'cell',
  ends: 'ends',
  faces: 'faces',
  extensometers: 'extensometer',
  chambers: 'chamber',
  guards: 'guard',
  thermocouples: 'thermocouple',
};

/** A frame that tells which of its fields were read; its name may be, since findings carry it. */
function watched(frame: Frame, read: Set<string>): Frame {
  const details = new Proxy(frame.details, {
    get: (target, field) => {
      read.add(String(field));
      return Reflect.get(target, field) as unknown;
    },
  });
  return new Proxy(frame, {
    get: (target, field) => {
      if (field === 'details') return details;
      if (field !== 'id') read.add(`frame.${String(field)}`);
      return Reflect.get(target, field) as unknown;
    },
  });
}

describe('the fields of a frame by which choices are shared between frames', () => {
  const read = Object.fromEntries(Object.keys(FRAME_FIELDS).map((part) => [part, new Set<string>()])) as Record<
    FramePart,
    Set<string>
  >;

  beforeAll(() => {
    for (let seed = 1; seed <= 300; seed += 1) {
      const lab = randomLab(seed);
      const ask = randomAsk(seed);
      const needs = needsOf(ask, methods.get(ask.methodId)!, null);
      if (!isNeeds(needs)) throw new Error(`lab ${seed}`);
      const context = new RequestContext(needs, DEFAULT_SETTINGS, PERIOD, lab.technicians);
      const frames = lab.items.filter((item) => item.kind === 'frame');
      for (const part of Object.keys(FRAME_FIELDS) as FramePart[]) {
        const place = PLACE[part];
        const checks = RULES.flatMap((rule) => rule.checks).filter(
          ({ sees }) =>
            sees.includes('frame') &&
            sees.includes(place) &&
            sees.every((each) => each === 'frame' || each === place || each === 'cellAt'),
        );
        const items: (Item | null)[] = [...lab.items.filter(({ kind }) => KIND[part].includes(kind)), null];
        for (const frame of frames)
          for (const item of items) {
            if (item === null && (part === 'cells' || part === 'ends')) continue;
            const parts = {
              frame: watched(frame, read[part]),
              cellAt: frame.details.cellPositions[0],
              [place]: part === 'ends' ? { upper: item, lower: item } : item,
            } as Partial<Parts> as Parts;
            for (const { judge } of checks) judge(parts, context);
          }
      }
    }
  });

  it.each(Object.keys(FRAME_FIELDS) as FramePart[])('are all that the rules read of it for %s', (part) => {
    expect([...read[part]].filter((field) => !(FRAME_FIELDS[part] as readonly string[]).includes(field))).toEqual([]);
    expect(read[part].size).toBeGreaterThan(0);
  });
});
