import type { InUse } from './in-use.js';

/** A job of the plan that might be taken. */
export interface Takeable {
  reference: string;
  /** From when on its specimens are here and conditioned, UTC ms; null while they are not. */
  releasedAtMs: number | null;
  /** Why the manager holds it; null when he does not. */
  holdWhy: string | null;
  method: { code: string; designation: string };
  /** Frame and items of its booking, in that order. */
  items: readonly { id: string; tag: string }[];
}

/** What decides whether a job may be taken now. */
export interface TakingMoment {
  nowMs: number;
  busy: InUse;
  /** Codes of the methods that the technician may run now. */
  methods: ReadonlySet<string>;
  /** What the rules say against its train; asked last, since it costs most. */
  problemsOf: () => readonly string[];
}

type Reason = (job: Takeable, moment: TakingMoment) => string | null;

const released: Reason = ({ releasedAtMs }, { nowMs }) =>
  releasedAtMs === null || releasedAtMs > nowMs ? 'its specimens are not here or not conditioned' : null;

const notHeld: Reason = ({ holdWhy }) => (holdWhy === null ? null : `the manager holds it: ${holdWhy}`);

const authorised: Reason = ({ method }, { methods }) =>
  methods.has(method.code) ? null : `you are not authorised for ${method.designation}`;

const itemsFree: Reason = ({ items }, { busy }) => {
  const used = items.find(({ id }) => busy.has(id));
  return used ? `${used.tag} is in use by ${busy.get(used.id)}` : null;
};

const trainFit: Reason = (_, { problemsOf }) => problemsOf().join(' ') || null;

/** Cheap questions first: most jobs of a plan lie in the future or need somebody else. */
const REASONS: readonly Reason[] = [released, notHeld, authorised, itemsFree, trainFit];

/** Why a job cannot be taken now, in words that follow its name; null when it can. */
export function whyNotNow(job: Takeable, moment: TakingMoment): string | null {
  for (const reason of REASONS) {
    const why = reason(job, moment);
    if (why !== null) return why;
  }
  return null;
}

/** A job that was not taken, and why. */
export interface PassedOver {
  reference: string;
  why: string;
}

const NAMED = 3;

/** Why there is nothing to take, in words. */
export function nothingWhy(passedOver: readonly PassedOver[]): string {
  if (passedOver.length === 0)
    return 'No job that is ready stands in the plan. When specimens come in or the plan changes, this page shows it.';
  const named = passedOver.slice(0, NAMED).map(({ reference, why }) => `${reference}: ${why.replace(/\.$/, '')}.`);
  const rest = passedOver.length > NAMED ? [`${passedOver.length - NAMED} more wait likewise.`] : [];
  return [...named, ...rest].join(' ');
}
