import type { Booking } from '../../plan.js';
import type { Candidate, Problem } from '../../problem.js';
import { breach, planned } from '../breach.js';
import type { Breach, Case } from '../breach.js';

/** Air of the lab, °C (ISO 291, atmosphere 23/50). */
const AMBIENT_C = 23;

/**
 * Each setup lasts exactly as long as the changeover from what is on the frame by then, and is done before the work begins.
 * Rigs are followed from minute 0 through all bookings and visits in order of time.
 */
export function changeoverTime(one: Case): Breach[] {
  const rigs = new Rigs(one.problem);
  const events = [
    ...planned(one).map(({ booking, candidate }) => ({ at: booking.setupStartMin, booking, candidate, itemId: null })),
    ...one.plan.visits.map(({ startMin, itemId }) => ({ at: startMin, booking: null, candidate: null, itemId })),
  ].sort((a, b) => a.at - b.at);
  return events.flatMap((event) => {
    if (!event.booking) {
      rigs.takeAway(event.itemId);
      return [];
    }
    const { booking, candidate } = event;
    const needMin = rigs.changeoverMin(booking, candidate);
    rigs.fit(booking, candidate);
    return [...wrongLength(booking, needMin), ...wrongStints(booking)];
  });
}

function wrongLength({ jobId, setupMin, setupStartMin, startMin }: Booking, needMin: number): Breach[] {
  const off =
    setupMin === needMin
      ? []
      : [breach('changeover-time', [jobId], Math.abs(needMin - setupMin), { needMin, setupMin })];
  const over = setupStartMin + setupMin - startMin;
  return over > 0 ? [...off, breach('work-before-setup-done', [jobId], over)] : off;
}

/** The setup is one stint, without a break. */
function wrongStints({ jobId, setupMin, setupStartMin, stints }: Booking): Breach[] {
  const setups = stints.filter(({ kind }) => kind === 'setup');
  const whole =
    setups.length === 1 && setups[0]!.startMin === setupStartMin && setups[0]!.endMin === setupStartMin + setupMin;
  return (setupMin === 0 && setups.length === 0) || whole ? [] : [breach('setup-in-one-piece', [jobId], 0)];
}

class Rigs {
  /** By frame and link, the unit last fitted; by unit, the frame that it is on. */
  private readonly fitted = new Map<string, string>();
  private readonly place = new Map<string, string>();
  private readonly family = new Map<string, string | null>();
  private readonly temperatureC = new Map<string, number>();

  constructor(private readonly problem: Problem) {
    for (const { id, rig } of problem.frames) {
      this.put(id, rig.items);
      this.family.set(id, rig.family);
      this.temperatureC.set(id, rig.temperatureC ?? AMBIENT_C);
    }
    for (const { running } of problem.jobs) if (running) this.put(running.frameId, running.items);
  }

  fit({ frameId, items }: Booking, candidate: Candidate): void {
    this.put(frameId, items);
    this.family.set(frameId, candidate.family);
    this.temperatureC.set(frameId, candidate.temperatureC ?? AMBIENT_C);
  }

  takeAway(itemId: string): void {
    this.place.delete(itemId);
  }

  changeoverMin({ frameId, items }: Booking, candidate: Candidate): number {
    const { byLinkMin, checkedLinks, checkMin, rampCPerMin, soakMin } = this.problem.changeover;
    const fresh = Object.entries(items).filter(
      ([link, unit]) => this.fitted.get(`${frameId}/${link}`) !== unit || this.place.get(unit) !== frameId,
    );
    const links = fresh.reduce((sum, [link]) => sum + (byLinkMin[link] ?? 0), 0);
    const check = fresh.some(([link]) => checkedLinks.includes(link)) ? checkMin : 0;
    const differenceC = Math.abs((candidate.temperatureC ?? AMBIENT_C) - (this.temperatureC.get(frameId) ?? AMBIENT_C));
    const chamber = differenceC > 0 ? Math.ceil(differenceC / rampCPerMin) + soakMin : 0;
    return links + check + chamber + this.familyMin(frameId, candidate.family);
  }

  private familyMin(frameId: string, to: string | null): number {
    const { families } = this.problem.changeover;
    const from = this.family.get(frameId) ?? null;
    if (!families || from === null || to === null) return 0;
    return families.byFrame[frameId]?.[families.families.indexOf(from)]?.[families.families.indexOf(to)] ?? 0;
  }

  private put(frameId: string, items: Readonly<Record<string, string>>): void {
    for (const [link, unit] of Object.entries(items)) {
      this.fitted.set(`${frameId}/${link}`, unit);
      this.place.set(unit, frameId);
    }
  }
}
