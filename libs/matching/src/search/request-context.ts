import { intersectWindows, unionWindows } from '#libs/calendar/src/index.js';
import type { Item, ItemKind, TimeWindow } from '../register/item.js';
import type { Technician } from '../register/lab.js';
import { cellNeedOf, extensometerNeedOf } from '../ask/calibration-need.js';
import type { CalibrationNeed } from '../ask/calibration-need.js';
import type { Needs } from '../ask/needs.js';
import { staffedWindows } from '../rules/qualification.js';
import type { Context } from '../rules/rule.js';
import type { MatchSettings } from '../ask/settings.js';
import { windowsFor } from '../rules/usable-windows.js';

/** The context of one request; windows are worked out once an item. */
export class RequestContext implements Context {
  /** All of the period: most items are always usable. */
  private readonly whole: readonly [TimeWindow];
  private readonly common = new Map<string, readonly TimeWindow[]>();
  readonly cellNeed: CalibrationNeed;
  readonly extensometerNeed: CalibrationNeed | null;
  private readonly windows = new Map<Item, readonly TimeWindow[]>();

  constructor(
    readonly needs: Needs,
    readonly settings: MatchSettings,
    readonly period: TimeWindow,
    readonly technicians: readonly Technician[],
    /** When somebody who may run the method is on shift. */
    readonly staffed: readonly TimeWindow[] = staffedWindows(technicians, needs.methodId, period),
  ) {
    this.whole = [period];
    this.cellNeed = cellNeedOf(needs);
    this.extensometerNeed = extensometerNeedOf(needs);
  }

  /** A context that knows the same windows, but for those of these units. */
  apartFrom(units: readonly Item[]): RequestContext {
    const { needs, settings, period, technicians, staffed } = this;
    const apart = new RequestContext(needs, settings, period, technicians, staffed);
    for (const [item, windows] of this.windows) apart.windows.set(item, windows);
    for (const unit of units) apart.windows.delete(unit);
    return apart;
  }

  /** What the test asks of the calibration of a kind of item; null when any calibration in force will do. */
  calibrationNeed(kind: ItemKind): CalibrationNeed | null {
    if (kind === 'load-cell') return this.cellNeed;
    return kind === 'extensometer' ? this.extensometerNeed : null;
  }

  windowsOf(item: Item): readonly TimeWindow[] {
    if (!item.needsCalibration && item.heldWindows.length === 0 && item.state === 'in-service') return this.whole;
    const found = this.windows.get(item);
    if (found) return found;
    const windows = windowsFor(item, this.calibrationNeed(item.kind), this.whole);
    this.windows.set(item, windows);
    return windows;
  }

  commonWindows(items: readonly Item[]): readonly TimeWindow[] {
    const start = this.staffed.length > 0 ? this.staffed : [this.period];
    if (items.length === 0) return start;
    const key = items.map(({ id }) => id).join('\n');
    const found = this.common.get(key);
    if (found) return found;
    const windows = items.reduce<readonly TimeWindow[]>(
      (common, item) => intersectWindows(common, this.windowsOf(item)),
      start,
    );
    this.common.set(key, windows);
    return windows;
  }

  /** From now on each of these units counts as usable whenever any of them is. */
  shareWindows(units: readonly Item[]): void {
    if (units.length < 2) return;
    const lists = units.map((unit) => this.windowsOf(unit));
    if (lists.every((list) => list === this.whole)) return;
    const { startMs, endMs } = this.period;
    const whole = lists.find(([first]) => first && first.startMs <= startMs && first.endMs >= endMs);
    const common = whole ?? unionWindows(...lists);
    for (const unit of units) this.windows.set(unit, common);
  }
}
