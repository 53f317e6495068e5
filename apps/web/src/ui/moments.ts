/** Calendar parts of an instant by the lab's clock. */
export interface Parts {
  year: number;
  /** 1 to 12. */
  month: number;
  day: number;
  hour: number;
  minute: number;
}

/** How instants are shown and read by the clock of one lab. */
export interface Moments {
  /** `Thu 26 Nov 14:00`, with the year when it is not this one; `–` for none. */
  moment(instant: string | number | null | undefined): string;
  /** `Thu 26 Nov`, with the year when it is not this one; `–` for none. */
  day(instant: string | number | null | undefined): string;
  /** `14:00`. */
  clock(instant: string | number): string;
  /** What time it is in the lab, UTC ms. */
  nowMs(): number;
  partsOf(instant: number): Parts;
  /** The instant at which the lab's clock shows these parts; in a skipped hour, the one an hour later. */
  instantOf(parts: Parts): number;
  /** Midnight in the lab at the start of the day of an instant, `plus` days on. */
  startOfDay(instant: number, plus?: number): number;
  /** For an input of type `datetime-local`; empty for none. */
  toLocalInput(instant: string | number | null | undefined): string;
  /** Reads such an input, or one of type `date`, which is taken at `hour`. Null when it is empty. */
  fromLocalInput(text: string, hour?: number): string | null;
}

/**
 * @param timeZone IANA name of the lab's time zone, such as `Europe/London`
 * @param aheadMs how far the clock of the lab is ahead of this device's
 */
export function momentsIn(timeZone: string, aheadMs = 0): Moments {
  const shown = formatter(timeZone);
  const partsOf = partsReader(timeZone);
  const instantOf = instantReader(partsOf);

  const clock = (instant: string | number) => shown(instant, { hour: '2-digit', minute: '2-digit', hourCycle: 'h23' });

  const nowMs = () => Date.now() + aheadMs;

  function day(instant: string | number | null | undefined): string {
    if (instant === null || instant === undefined) return '–';
    const base = shown(instant, { weekday: 'short', day: 'numeric', month: 'short' });
    const year = shown(instant, { year: 'numeric' });
    return year === shown(nowMs(), { year: 'numeric' }) ? base : `${base} ${year}`;
  }

  function startOfDay(instant: number, plus = 0): number {
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

  return {
    moment: (instant) => (instant === null || instant === undefined ? '–' : `${day(instant)} ${clock(instant)}`),
    day,
    clock,
    nowMs,
    partsOf,
    instantOf,
    startOfDay,
    toLocalInput: (instant) =>
      instant === null || instant === undefined || instant === ''
        ? ''
        : localInput(partsOf(new Date(instant).getTime())),
    fromLocalInput(text, hour = 0) {
      const parts = partsOfInput(text, hour);
      return parts && new Date(instantOf(parts)).toISOString();
    },
  };
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

/** Formats instants in a time zone; a format is made once for each set of options. */
function formatter(timeZone: string) {
  const formats = new Map<string, Intl.DateTimeFormat>();
  return (instant: string | number, options: Intl.DateTimeFormatOptions): string => {
    const key = JSON.stringify(options);
    const format = formats.get(key) ?? new Intl.DateTimeFormat('en-GB', { timeZone, ...options });
    formats.set(key, format);
    return format.format(new Date(instant)).replace(',', '');
  };
}

function partsReader(timeZone: string) {
  const format = new Intl.DateTimeFormat('en-GB', {
    timeZone,
    year: 'numeric',
    month: 'numeric',
    day: 'numeric',
    hour: 'numeric',
    minute: 'numeric',
    hourCycle: 'h23',
  });
  return (instant: number): Parts => {
    const parts = Object.fromEntries(format.formatToParts(instant).map(({ type, value }) => [type, Number(value)]));
    return {
      year: parts['year'] ?? 0,
      month: parts['month'] ?? 0,
      day: parts['day'] ?? 0,
      hour: parts['hour'] ?? 0,
      minute: parts['minute'] ?? 0,
    };
  };
}

function instantReader(partsOf: (instant: number) => Parts) {
  /** How far the lab's clock is ahead of UTC, ms. */
  const offsetAt = (instant: number) => utcOf(partsOf(instant)) - Math.floor(instant / 60_000) * 60_000;
  return (parts: Parts): number => {
    const wanted = utcOf(parts);
    const first = wanted - offsetAt(wanted);
    const second = wanted - offsetAt(first);
    // Both agree but around a clock change; in a skipped hour neither fits, and the later one is an hour on.
    return first === second || first + offsetAt(first) === wanted ? first : Math.max(first, second);
  };
}

/** The instant at which a clock at UTC shows these parts. */
function utcOf({ year, month, day, hour, minute }: Parts): number {
  return Date.UTC(year, month - 1, day, hour, minute);
}

function localInput({ year, month, day, hour, minute }: Parts): string {
  const two = (value: number) => String(value).padStart(2, '0');
  return `${year}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}

function partsOfInput(text: string, hourOfDay: number): Parts | null {
  const found = /^(\d{4})-(\d{2})-(\d{2})(?:T(\d{2}):(\d{2}))?/.exec(text);
  if (!found) return null;
  const [, year, month, day, hour, minute] = found;
  return {
    year: Number(year),
    month: Number(month),
    day: Number(day),
    hour: hour ? Number(hour) : hourOfDay,
    minute: Number(minute ?? 0),
  };
}
