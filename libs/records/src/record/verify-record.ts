import { createHash } from 'node:crypto';
import type { EntityManager } from 'typeorm';

/** Whatever can ask the database. */
type Records = Pick<EntityManager, 'query'>;

export interface RecordCheck {
  events: number;
  /** What does not fit, in words; empty when the record is whole. */
  faults: string[];
}

interface Link {
  seq: string;
  body: string;
  prev_hash: string | null;
  hash: string | null;
}

const AT_A_TIME = 5_000;

/**
 * Recomputes the chain of the whole record from its contents alone, outside of the database.
 * A changed, missing, added or reordered event shows; so does a cut-off end, by the head that the database keeps.
 * While the lab is at work, hand over a manager whose transaction sees one moment (repeatable read): what is added meanwhile
 * would look like a cut-off end.
 */
export async function verifyRecord(records: Records): Promise<RecordCheck> {
  const faults: string[] = [];
  let last = { seq: 0, hash: '' };
  for (let links = await linksAfter(records, 0); links.length > 0; links = await linksAfter(records, last.seq)) {
    for (const link of links) {
      faults.push(...faultsOf(link, last));
      last = { seq: Number(link.seq), hash: link.hash ?? '' };
    }
  }
  faults.push(...(await faultsOfHead(records, last)));
  return { events: last.seq, faults };
}

/** How a link is hashed; the trigger `record_event_seal` does the same in the database. */
export function linkHash(prevHash: string, body: string): string {
  return createHash('sha256').update(`${prevHash}\n${body}`, 'utf8').digest('hex');
}

function faultsOf(link: Link, last: { seq: number; hash: string }): string[] {
  const faults: string[] = [];
  if (Number(link.seq) !== last.seq + 1)
    faults.push(`Between event ${last.seq} and event ${link.seq} something is missing.`);
  else if (link.prev_hash !== last.hash) faults.push(`Event ${link.seq} does not follow from the event before it.`);
  if (link.hash !== linkHash(link.prev_hash ?? '', link.body))
    faults.push(`Event ${link.seq} was changed after it was written.`);
  return faults;
}

async function linksAfter(records: Records, seq: number): Promise<Link[]> {
  return records.query(
    'select seq, record_event_body(record_event) as body, prev_hash, hash from record_event where seq > $1 order by seq limit $2',
    [seq, AT_A_TIME],
  );
}

async function faultsOfHead(records: Records, last: { seq: number; hash: string }): Promise<string[]> {
  const [head] = await records.query<{ seq: string; hash: string }[]>('select seq, hash from record_head');
  const [loose] = await records.query<
    {
      n: number;
    }[]
  >('select count(*)::int as n from record_event where seq is null');
  const faults: string[] = [];
  if (!head || Number(head.seq) !== last.seq || head.hash !== last.hash)
    faults.push(`The record should end with event ${head?.seq ?? 'unknown'}, it ends with ${last.seq}.`);
  if (loose!.n > 0) faults.push(`${loose!.n} events have no place in the chain.`);
  return faults;
}
