/** An instant on the wall clock of a zone as people say it, e.g. `Fri 27 Nov, 14:00`. */
export function sayInstant(instantMs: number, zone: string): string {
  const parts = formatOf(zone).formatToParts(instantMs);
  const part = (type: Intl.DateTimeFormatPartTypes) => parts.find((each) => each.type === type)?.value ?? '';
  return `${part('weekday')} ${part('day')} ${part('month')}, ${part('hour')}:${part('minute')}`;
}

const FORMATS = new Map<string, Intl.DateTimeFormat>();

/** Formats are dear to make and cheap to use. */
function formatOf(timeZone: string): Intl.DateTimeFormat {
  const known = FORMATS.get(timeZone);
  if (known) return known;
  const fields = { weekday: 'short', day: 'numeric', month: 'short', hour: '2-digit', minute: '2-digit' } as const;
  const made = new Intl.DateTimeFormat('en-GB', { ...fields, hourCycle: 'h23', timeZone });
  FORMATS.set(timeZone, made);
  return made;
}
