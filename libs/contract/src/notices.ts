import type { Instant } from './platform.js';

/** How a person hears by mail of what the page tells anyway: of each thing at once, once a day of all together, or never. */
export const MAIL_WAYS = ['at-once', 'daily', 'off'] as const;
export type MailWay = (typeof MAIL_WAYS)[number];

/** One thing that one person is told. */
export interface NoticeView {
  id: string;
  /** What happened, as in the record, e.g. `request/returned`. */
  kind: string;
  /** Where to look, below the address of the page, e.g. `/requests/…`. */
  path: string;
  /** E.g. `R-2031 was returned`. */
  subject: string;
  sentence: string;
  at: Instant;
  readAt: Instant | null;
}

export interface NoticesView {
  rows: NoticeView[];
  /** The cursor of the page after this one, null at the end. */
  next: string | null;
  /** How many in all are not read yet. */
  unread: number;
}

export interface NoticePreferences {
  mail: MailWay;
}

/** What other programs can be told of: kinds of events of the record. */
export const WEBHOOK_KINDS = [
  'request/submitted',
  'request/returned',
  'request/accepted',
  'request/declined',
  'request/withdrawn',
  'request/promise-moved',
  'request/in-work',
  'request/in-review',
  'request/reported',
  'request/closed',
  'job/taken',
  'job/running',
  'job/blocked',
  'job/done',
  'job/aborted',
  'plan/published',
  'report/issued',
  'item/calibrated',
  'item/fault-opened',
  'item/fault-closed',
  'nonconformity/opened',
] as const;
export type WebhookKind = (typeof WEBHOOK_KINDS)[number];

/** The body of a delivery: what happened, to what and when. What is behind the id is asked for with a token. */
export interface WebhookMessage {
  /** Of the event; the same when it is delivered again. */
  id: string;
  kind: WebhookKind | 'webhook/tried';
  at: Instant;
  subject: { kind: string; id: string };
}

export interface NewWebhookBody {
  url: string;
  kinds: WebhookKind[];
}

export interface WebhookView extends NewWebhookBody {
  id: string;
  addedAt: Instant;
  /** Of the last delivery that was tried; null while there is none. */
  lastState: DeliveryState | null;
  /** What deliveries are signed with; only in the answer that added it. */
  secret?: string;
}

export type DeliveryState = 'waiting' | 'delivered' | 'failed';

export interface DeliveryView {
  id: string;
  eventId: string;
  kind: string;
  state: DeliveryState;
  tries: number;
  announcedAt: Instant;
  /** The receiver's last answer; null when there was none. */
  lastStatus: number | null;
  /** Why the last try failed, in words. */
  trouble: string | null;
  /** When it is tried again; null when it is not. */
  nextTryAt: Instant | null;
  deliveredAt: Instant | null;
}

/** A key for calendar feeds. */
export interface FeedKeyView {
  id: string;
  name: string;
  madeAt: Instant;
  usedAt: Instant | null;
  /** Only in the answer that made it. */
  key?: string;
}

export interface NewFeedKeyBody {
  /** Where it is used, e.g. `Phone`. */
  name: string;
}

/** A table that can be exported. */
export interface ExportTable {
  name: string;
  columns: string[];
  rows: number;
}
