import type { Verdict } from '../answer/answer.js';
import type { Calibration, Item, TimeWindow } from '../register/item.js';
import { calibrationNeedOf } from '../ask/calibration-need.js';
import { formatNumber } from '#libs/units/src/index.js';
import type { Proposal, Question } from './proposal.js';

/** A cell is not verified below this part of its capacity (verified ranges of 1/100 to 1/500: common practice, no source). */
const LOWEST_SHARE = 1 / 500;

/** What could be done with an item or a person that the lab has: repair, free, calibrate, authorise. */
export function registerProposals(verdict: Verdict, question: Question): Proposal[] {
  const items = verdict.items.flatMap((id) => question.search.index.byId.get(id) ?? []);
  switch (verdict.reason) {
    case 'faulty':
    case 'out-of-use':
      return items.map((item) => change('repair', `Put ${item.tag} back in service.`, item, { state: 'in-service' }));
    case 'held':
      return items.map((item) =>
        change('free', `Free ${item.tag}, which is promised elsewhere.`, item, { heldWindows: [] }),
      );
    case 'lapsed':
    case 'never-calibrated':
    case 'never-verified':
    case 'class-too-low':
    case 'below-verified':
    case 'above-verified':
    case 'extensometer-class':
    case 'extension-not-verified':
    case 'extension-below-verified':
      return items.flatMap((item) => calibrate(item, question));
    case 'never-together':
      return items.flatMap((item) => [
        ...(item.heldWindows.length > 0
          ? [change('free', `Free ${item.tag}, which is promised elsewhere.`, item, { heldWindows: [] })]
          : []),
        ...(item.needsCalibration ? calibrate(item, question) : []),
      ]);
    case 'nobody-authorised':
    case 'nobody-on-shift':
      return authorise(question);
    default:
      return [];
  }
}

function change(kind: Proposal['kind'], sentence: string, item: Item, set: Record<string, unknown>): Proposal {
  return { kind, sentence, apply: { change: 'item', itemId: item.id, set } };
}

function calibrate(item: Item, { needs, period }: Question): Proposal[] {
  const need = calibrationNeedOf(item, needs);
  if (!need) return [change('calibrate', `Calibrate ${item.tag}.`, item, { calibrations: renewed(item, period) })];
  if (item.kind === 'load-cell') {
    const capacity = needs.direction === 'torque' ? item.details.torqueCapacityNm : item.details.capacityN;
    if (need.from < LOWEST_SHARE * capacity || need.to > capacity) return [];
  }
  const top = item.kind === 'load-cell' ? Math.max(need.to, capacityFor(item, needs.direction)) : need.to;
  const wanted = {
    direction: need.quantity,
    standard: need.standard,
    className: need.className,
    from: need.from,
    to: top,
  };
  const unit = item.kind === 'load-cell' ? needs.loadUnit : 'mm';
  const words = `Calibrate ${item.tag} in ${need.quantity} to ${need.standard} class ${need.className} from ${formatNumber(need.from, 3)} to ${formatNumber(top, 3)} ${unit}.`;
  return [
    change('calibrate', words, item, { calibrations: [...item.calibrations, { ...wanted, ...inForce(period) }] }),
  ];
}

function capacityFor(item: Item & { kind: 'load-cell' }, direction: string): number {
  return direction === 'torque' ? item.details.torqueCapacityNm : item.details.capacityN;
}

/** Its calibrations with new dates; for an item that never had one, a calibration without a range. */
function renewed(item: Item, period: TimeWindow): Calibration[] {
  if (item.calibrations.length > 0) return item.calibrations.map((each) => ({ ...each, ...inForce(period) }));
  return [
    { direction: 'extension', standard: 'to be agreed', className: 'to be agreed', from: 0, to: 0, ...inForce(period) },
  ];
}

function inForce({ startMs, endMs }: TimeWindow): { validFromMs: number; dueMs: number } {
  return { validFromMs: startMs, dueMs: endMs };
}

/** Anyone who is on shift in the period could be authorised. */
function authorise({ lab, method, period }: Question): Proposal[] {
  return lab.technicians
    .filter(({ windows }) => windows.some(({ startMs, endMs }) => startMs < period.endMs && endMs > period.startMs))
    .filter(({ methodIds }) => !methodIds.includes(method.id))
    .map(({ id }) => ({
      kind: 'authorise',
      sentence: `Authorise a technician who is on shift for ${method.designation}.`,
      apply: { change: 'technician', technicianId: id, methodId: method.id },
    }));
}
