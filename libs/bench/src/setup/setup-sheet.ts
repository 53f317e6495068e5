import type { TrainProblem } from './train-problem.js';

/** From crosshead to base, then what stands beside the specimen: so a train is fitted, and the other way round it comes off. */
const WORKING_ORDER: readonly string[] = [
  ...['load-cell', 'upper-adapter', 'upper-adapter-2', 'upper', 'ends'],
  ...['lower-adapter', 'lower-adapter-2', 'lower', 'faces'],
  ...['chamber', 'thermocouple', 'extensometer', 'guard'],
];

export type SetupAction = 'take-off' | 'keep' | 'put-on';

/** A link of the train as it was taken. */
export interface SetupLink {
  role: string;
  itemId: string;
  confirmedAt?: string;
}

/** A step of the work from the rig on the frame to the train. */
export interface ChangeoverStep {
  action: SetupAction;
  item: { id: string; tag: string; kind: string; place: string };
  minutes: number;
}

/** What the sheet is made from. */
export interface Sheet {
  steps: readonly ChangeoverStep[];
  train: readonly SetupLink[];
  /** What hangs on the frame now. */
  rig: readonly { itemId: string; role: string }[];
  /** What was done on the job so far, by key; see {@link takenOffKey}. */
  checks: Readonly<Record<string, { at: string }>>;
  /** What speaks against the train, item by item. */
  problems: readonly TrainProblem[];
}

/** A line of the setup sheet. */
export interface SheetLine extends ChangeoverStep {
  role: string;
  /** Its tag was confirmed, and nothing speaks against it now. */
  confirmed: boolean;
  confirmedAt: string | null;
  /** Why this item of the train must not be used any more; null while nothing is against it. */
  problem: string | null;
}

/** The setup sheet: what is on the frame against what has to be there, in working order. */
export function setupSheet(sheet: Sheet): SheetLine[] {
  const lines = sheet.steps.map((step) => lineOf(step, sheet));
  return [...sorted(lines, 'take-off').reverse(), ...sorted(lines, 'keep'), ...sorted(lines, 'put-on')];
}

/** Name under which a job keeps that an item was taken off. */
export function takenOffKey(itemId: string): string {
  return `off-${itemId}`;
}

function lineOf(step: ChangeoverStep, { train, rig, checks, problems }: Sheet): SheetLine {
  const { item, action } = step;
  const link = train.find(({ itemId }) => itemId === item.id);
  const role = link?.role ?? rig.find(({ itemId }) => itemId === item.id)?.role ?? item.kind;
  const confirmedAt = (link ? link.confirmedAt : checks[takenOffKey(item.id)]?.at) ?? null;
  // What only stays aside needs no confirmation.
  const isAside = action === 'keep' && !link;
  const problem = link ? problemOf(item.id, problems) : null;
  return { ...step, role, confirmed: (isAside || confirmedAt !== null) && problem === null, confirmedAt, problem };
}

/** What speaks against one item of the train, in words. */
export function problemOf(itemId: string, problems: readonly TrainProblem[]): string | null {
  const own = problems.filter(({ items }) => items.includes(itemId));
  return own.length === 0 ? null : own.map(({ sentence }) => sentence).join(' ');
}

function sorted(lines: readonly SheetLine[], action: SetupAction): SheetLine[] {
  return lines
    .filter((line) => line.action === action)
    .sort((a, b) => WORKING_ORDER.indexOf(a.role) - WORKING_ORDER.indexOf(b.role));
}
