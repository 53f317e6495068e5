let zone = 'UTC';

/** Sets the lab's time zone, in which every instant is shown and read. */
export function setZone(timeZone: string): void {
  zone = timeZone;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function shown(instant: string | number, options: Intl.DateTimeFormatOptions): string {
  const key = zone + JSON.stringify(options);
  const format = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone: zone, ...options });
  formats.set(key, format);
  return format.format(new Date(instant)).replace(',', '');
}

/** `Thu 26 Nov 14:00`, with the year when it is not this one. */
export function moment(instant: string | number | null | undefined): string {
  if (instant === null || instant === undefined) return '–';
  return `${day(instant)} ${clock(instant)}`;
}

/** `Thu 26 Nov`, with the year when it is not this one. */
export function day(instant: string | number | null | undefined): string {
  if (instant === null || instant === undefined) return '–';
  const base = shown(instant, { weekday: 'short', day: 'numeric', month: 'short' });
  const year = shown(instant, { year: 'numeric' });
  return year === shown(Date.now(), { year: 'numeric' }) ? base : `${base} ${year}`;
}

/** `14:00`. */
export function clock(instant: string | number): string {
  return shown(instant, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });
}

/** `25 minutes`, `3 h`, `2.5 days`: how long, for people. */
export function span(minutes: number): string {
  const size = Math.abs(minutes);
  if (size < 60) return `${Math.round(size)} min`;
  if (size < 48 * 60) return `${trim(size / 60)} h`;
  return `${trim(size / 1440)} days`;
}

function trim(value: number): string {
  return value.toFixed(value < 10 ? 1 : 0).replace(/\.0$/, '');
}

interface Parts {
  year: number;
  month: number;
  day: number;
  hour: number;
  minute: number;
}

/** Calendar parts of an instant in the lab's zone. */
export function partsOf(instant: number): Parts {
  const format =
    formats.get(`parts${zone}`) ??
    new Intl.DateTimeFormat('en-GB', {
      timeZone: zone,
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      hourCycle: 'h23',
    });
  formats.set(`parts${zone}`, format);
  const parts = Object.fromEntries(format.formatToParts(instant).map(({ type, value }) => [type, Number(value)]));
  return {
    year: parts['year'] ?? 0,
    month: parts['month'] ?? 0,
    day: parts['day'] ?? 0,
    hour: parts['hour'] ?? 0,
    minute: parts['minute'] ?? 0,
  };
}

/** The instant at which the lab's clock shows these parts; in a skipped hour, the one an hour later. */
export function instantOf({ year, month, day: dayOfMonth, hour, minute }: Parts): number {
  const wanted = Date.UTC(year, month - 1, dayOfMonth, hour, minute);
  const first = wanted - offsetAt(wanted);
  const second = wanted - offsetAt(first);
  // Both agree but around a clock change; in a skipped hour neither fits, and the later one is an hour on.
  return first === second || first + offsetAt(first) === wanted ? first : Math.max(first, second);
}

/** How far the lab's clock is ahead of UTC, ms. */
function offsetAt(instant: number): number {
  const seen = partsOf(instant);
  const whole = Math.floor(instant / 60_000) * 60_000;
  return Date.UTC(seen.year, seen.month - 1, seen.day, seen.hour, seen.minute) - whole;
}

/** Midnight in the lab at the start of the day of an instant, `plus` days on. */
export function startOfDay(instant: number, plus = 0): number {
  const { year, month, day: dayOfMonth } = partsOf(instant);
  const moved = new Date(Date.UTC(year, month - 1, dayOfMonth + plus));
  return instantOf({
    year: moved.getUTCFullYear(),
    month: moved.getUTCMonth() + 1,
    day: moved.getUTCDate(),
    hour: 0,
    minute: 0,
  });
}

/** For an input of type `datetime-local`, by the lab's clock. */
export function toLocalInput(instant: string | number | null | undefined): string {
  if (instant === null || instant === undefined || instant === '') return '';
  const { year, month, day: dayOfMonth, hour, minute } = partsOf(new Date(instant).getTime());
  const two = (value: number) => String(value).padStart(2, '0');
  return `${year}-${two(month)}-${two(dayOfMonth)}T${two(hour)}:${two(minute)}`;
}

/** Reads such an input; a date alone is taken at `hour`. Null when it is empty. */
export function fromLocalInput(text: string, hour = 0): string | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/.exec(text);
  if (!found) return null;
  const [, year, month, dayOfMonth, hours, minutes] = found;
  return new Date(
    instantOf({
      year: Number(year),
      month: Number(month),
      day: Number(dayOfMonth),
      hour: hours ? Number(hours) : hour,
      minute: Number(minutes ?? 0),
    }),
  ).toISOString();
}
