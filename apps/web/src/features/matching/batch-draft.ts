import type { BatchBody, BatchView, MethodView } from '#libs/contract/src/index.js';
import { askFields, hasStrength } from '#libs/matching/src/index.js';
import type { AskField, Hazard } from '#libs/matching/src/index.js';
import { formatNumber, fromInternal, isUnit, parseNumber, toInternal } from '#libs/units/src/index.js';
import type { Typed } from '../../ui/fields/quantity-field.js';

/** One batch as it stands in the form: figures as typed, with the unit they were typed in. */
export interface BatchDraft {
  key: string;
  label: string;
  methodId: string;
  materialId: string;
  typed: Record<string, Typed>;
  picked: Record<string, string>;
  many: Record<string, string[]>;
  flags: Record<string, boolean>;
  hazards: Hazard[];
  confirmed: string[];
}

export function emptyBatch(key: string): BatchDraft {
  return {
    key,
    label: '',
    methodId: '',
    materialId: '',
    typed: {},
    picked: {},
    many: {},
    flags: {},
    hazards: [],
    confirmed: [],
  };
}

/** The questions of a method that apply to this draft; the material has its own place in the form. */
export function questionsOf(method: MethodView, draft: BatchDraft): AskField[] {
  const shape = draft.picked['geometry.shape'];
  return askFields(method.data).filter(
    (field) => field.field !== 'materialId' && (!field.shapes || !shape || field.shapes.some((each) => each === shape)),
  );
}

/**
 * A draft with what the method itself proposes. What a person typed or chose before and is asked again stays; what a method before
 * proposed goes, also where methods in between did not ask for it.
 */
export function withMethod(draft: BatchDraft, method: MethodView, before?: MethodView): BatchDraft {
  const next: BatchDraft = {
    ...(before
      ? withoutProposals(draft, before)
      : { ...draft, typed: { ...draft.typed }, picked: { ...draft.picked } }),
    methodId: method.id,
    many: { ...draft.many },
    flags: { ...draft.flags },
    confirmed: [],
  };
  for (const field of askFields(method.data)) propose(next, field, method);
  return next;
}

/** What a person typed and chose, without what the method itself proposed and nobody changed. */
function withoutProposals(draft: BatchDraft, method: MethodView): BatchDraft {
  const fields = new Map(askFields(method.data).map((field) => [field.field, field]));
  const isTyped = ([path, { value, unit }]: [string, Typed]) => {
    const proposed = fields.get(path);
    return !proposed || value !== usualOf(proposed).value || unit !== usualOf(proposed).unit;
  };
  const isPicked = ([path, value]: [string, string]) => {
    const field = fields.get(path);
    return !field || value !== usualChoice(field, draft);
  };
  return {
    ...draft,
    typed: Object.fromEntries(Object.entries(draft.typed).filter(isTyped)),
    picked: Object.fromEntries(Object.entries(draft.picked).filter(isPicked)),
  };
}

/** Fills in what the method proposes for one of its fields, where a person has said nothing. */
function propose(draft: BatchDraft, field: AskField, { data }: MethodView): void {
  const { field: path, type, unit = '', choices = [] } = field;
  const { typed, picked, many, flags } = draft;
  if (type === 'number' && !typed[path]?.value) typed[path] = usualOf(field);
  if (type === 'band') for (const end of ['low', 'high']) typed[`${path}.${end}`] ??= { value: '', unit };
  if (type === 'choice' && !choices.some(({ value }) => value === picked[path]))
    picked[path] = usualChoice(field, draft);
  if (type === 'choices') many[path] = [...data.usualResults];
  if (type === 'flag') flags[path] ??= path === 'options.contactExtensometer';
}

/** What is chosen until a person chooses: the first, and for the ends of a specimen what goes with its section. */
function usualChoice(field: AskField, draft: BatchDraft): string {
  const first = field.choices?.[0]?.value ?? '';
  return field.field === 'endShape' ? (endOf(field, draft) ?? first) : first;
}

/** The end that goes with the chosen section: round bars have round ends; null where the method takes none such. */
function endOf({ choices = [] }: AskField, { picked }: BatchDraft): string | null {
  return (
    choices.find(({ value }) => value === (picked['geometry.shape'] === 'round' ? 'round' : 'flat'))?.value ?? null
  );
}

/** The next draft, with the end of the specimen following its section where a person has not chosen another. */
export function withEnd(method: MethodView, before: BatchDraft, next: BatchDraft): BatchDraft {
  const field = askFields(method.data).find((each) => each.field === 'endShape');
  if (!field || before.picked['geometry.shape'] === next.picked['geometry.shape']) return next;
  if (before.picked['endShape'] !== endOf(field, before)) return next;
  return { ...next, picked: { ...next.picked, endShape: endOf(field, next) ?? next.picked['endShape']! } };
}

function usualOf({ usual, unit = '' }: AskField): Typed {
  return { value: usual === undefined ? '' : formatNumber(usual, 6).replace(/\s/g, ''), unit };
}

export interface ReadDraft {
  /** What the server is asked, in internal units; figures that cannot be read are left out. */
  ask: Record<string, unknown>;
  /** What cannot be read or lies outside its bounds, by field, in the unit that was typed. */
  wrong: Record<string, string>;
  /** Required fields that are still empty. */
  missing: string[];
}

/** Reads a draft: text to figures, typed units to internal ones. */
export function readDraft(method: MethodView, draft: BatchDraft): ReadDraft {
  const read: ReadDraft = { ask: {}, wrong: {}, missing: [] };
  for (const field of questionsOf(method, draft)) {
    if (field.type === 'number')
      put(read.ask, field.field, readFigure(read, field, draft.typed[field.field], field.field));
    if (field.type === 'band') put(read.ask, field.field, readBand(read, field, draft));
    if (field.type === 'choice') put(read.ask, field.field, draft.picked[field.field] || null);
    if (field.type === 'choices') put(read.ask, field.field, draft.many[field.field] ?? []);
    if (field.type === 'flag') put(read.ask, field.field, draft.flags[field.field] ?? false);
  }
  if (lacksStrength(method, draft, read)) read.missing.push('materialId');
  read.ask['endShape'] ??= method.data.ends.by === 'grips' ? method.data.ends.ends[0] : 'flat';
  read.ask['hazards'] = draft.hazards;
  read.ask['confirmed'] = draft.confirmed;
  return read;
}

/** Whether nothing says how strong the material is, and so nothing which load to expect. */
function lacksStrength({ data }: MethodView, { materialId }: BatchDraft, { ask, missing }: ReadDraft): boolean {
  return hasStrength(data) && !materialId && !ask['strength'] && !ask['peak'] && !missing.includes('peak');
}

function readBand(read: ReadDraft, field: AskField, draft: BatchDraft): { low: number; high: number } | null {
  const [low, high] = [draft.typed[`${field.field}.low`], draft.typed[`${field.field}.high`]];
  if (!low?.value && !high?.value) {
    if (field.required) read.missing.push(field.field);
    return null;
  }
  const from = readFigure(read, field, low?.value ? low : high, `${field.field}.low`);
  const to = readFigure(read, field, high?.value ? high : low, `${field.field}.high`);
  if (from === null || to === null) return null;
  if (from > to) read.wrong[`${field.field}.low`] = `${field.label}: the lower figure comes first.`;
  return { low: from, high: to };
}

function readFigure(read: ReadDraft, field: AskField, typed: Typed | undefined, path: string): number | null {
  if (!typed || typed.value.trim() === '') {
    if (field.required) read.missing.push(path);
    return null;
  }
  const number = parseNumber(typed.value);
  if ('reason' in number) {
    read.wrong[path] = number.reason;
    return null;
  }
  const value = isUnit(typed.unit) ? toInternal(number.value, typed.unit) : number.value;
  const outside = outOfBounds(field, value, typed.unit);
  if (outside) read.wrong[path] = outside;
  return value;
}

function outOfBounds(field: AskField, value: number, unit: string): string | null {
  const { min = -Infinity, max = Infinity } = field;
  if (value >= min && value <= max) return null;
  const shown = (internal: number) => formatNumber(isUnit(unit) ? fromInternal(internal, unit) : internal);
  return `${field.label} may be ${shown(min)} to ${shown(max)}${unit ? ` ${unit}` : ''}.`;
}

/** Nothing said is nothing sent. */
function put(target: Record<string, unknown>, path: string, value: unknown): void {
  if (value === null) return;
  const keys = path.split('.');
  const last = keys.pop()!;
  let place = target;
  for (const key of keys) place = (place[key] ??= {}) as Record<string, unknown>;
  place[last] = value;
}

/** What the server keeps: the ask, and every figure as it was typed. */
export function bodyOf(method: MethodView, draft: BatchDraft): BatchBody {
  const { ask } = readDraft(method, draft);
  const asked = new Set(
    questionsOf(method, draft).flatMap(({ field, type }) =>
      type === 'band' ? [`${field}.low`, `${field}.high`] : field,
    ),
  );
  return {
    label: draft.label,
    methodId: draft.methodId,
    materialId: draft.materialId || null,
    specimenCount: Number(ask['specimens'] ?? 0),
    ask,
    asTyped: Object.fromEntries(
      Object.entries(draft.typed).filter(([field, typed]) => typed.value !== '' && asked.has(field)),
    ),
  };
}

/** A kept batch back in the form. */
export function draftOf(batch: BatchView, method: MethodView): BatchDraft {
  const draft = withMethod(
    { ...emptyBatch(batch.id), label: batch.label, materialId: batch.material?.id ?? '' },
    method,
  );
  for (const field of askFields(method.data)) {
    const value = find(batch.ask, field.field);
    if (field.type === 'choice' && typeof value === 'string') draft.picked[field.field] = value;
    if (field.type === 'choices' && Array.isArray(value)) draft.many[field.field] = value.map(String);
    if (field.type === 'flag') draft.flags[field.field] = value === true;
    if (field.type === 'number') draft.typed[field.field] = typedOf(value, field);
  }
  draft.hazards = Array.isArray(batch.ask['hazards']) ? (batch.ask['hazards'] as Hazard[]) : [];
  draft.confirmed = Array.isArray(batch.ask['confirmed']) ? batch.ask['confirmed'].map(String) : [];
  return { ...draft, typed: { ...draft.typed, ...batch.asTyped } };
}

function typedOf(value: unknown, field: AskField): Typed {
  return { value: typeof value === 'number' ? String(value) : '', unit: field.unit ?? '' };
}

function find(from: Record<string, unknown>, path: string): unknown {
  return path.split('.').reduce<unknown>((place, key) => (place as Record<string, unknown> | undefined)?.[key], from);
}
