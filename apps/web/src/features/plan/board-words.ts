import type { BookingView } from '#libs/contract/src/index.js';
import { span } from '../../ui/moments.js';
import type { Moments } from '../../ui/moments.js';
import type { DownTime, Stop } from './board-stops.js';

/** A box in words. */
export function stopWords(stop: Stop, moments: Moments): string {
  return stop.booking ? describe(stop.booking, moments) : downWords(stop.down, moments);
}

/** A time in which a frame is down in words, for titles and screen readers; what the box shows comes first. */
export function downWords({ kind, why, startsAt, endsAt }: DownTime, { moment }: Moments): string {
  const shown = kind === 'calibration-visit' ? ['calibration', why] : [why];
  return [...shown, `${moment(startsAt)} to ${moment(endsAt)}`].filter(Boolean).join(', ');
}

/** A booking in words, for titles and screen readers; what the box shows comes first, so that one can also say it aloud. */
export function describe(booking: BookingView, { moment }: Moments): string {
  const late = booking.lateHours > 0;
  const shown = `${booking.jobReference ?? 'calibration'} ${late ? `${span(booking.lateHours * 60)} late` : booking.title}`;
  return [
    shown,
    late ? booking.title : '',
    booking.state,
    `${moment(booking.startsAt)} to ${moment(booking.endsAt)}`,
    booking.changeoverMin > 0 ? `changeover ${span(booking.changeoverMin)}` : '',
    booking.dueAt ? `due ${moment(booking.dueAt)}` : '',
    booking.pinned ? 'pinned' : '',
  ]
    .filter(Boolean)
    .join(', ');
}
