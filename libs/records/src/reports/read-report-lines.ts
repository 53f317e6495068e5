import type { ReportLine } from '#libs/contract/src/index.js';
import type { EntityManager } from 'typeorm';
import { likeOf } from '../platform/like.js';

export interface ReportFilter {
  id?: string;
  /** Part of the report's number, or of reference or title of its request. */
  words?: string | undefined;
  /** Only reports of these teams; undefined for all. */
  teamIds?: readonly string[] | undefined;
  limit: number;
}

interface Row extends Pick<ReportLine, 'id' | 'number' | 'revision' | 'state' | 'team'> {
  issuedAt: Date | null;
  requestId: string;
  reference: string;
  title: string;
  authorisedById: string | null;
  authorisedBy: string | null;
}

/** Reports for a list, newest first, in one query and without their documents. */
export async function readReportLines(
  manager: EntityManager,
  { id, words, teamIds, limit }: ReportFilter,
): Promise<ReportLine[]> {
  const given = [id ?? null, words ? likeOf(words) : null, teamIds ?? null, limit];
  return (await manager.query<Row[]>(LINES, given)).map(lineOf);
}

const LINES = `
  select report.id, report.number, report.revision, report.state, report.issued_at as "issuedAt", team.name as team,
    request.id as "requestId", request.reference, request.title, person.id as "authorisedById", person.name as "authorisedBy"
  from report join request on request.id = report.request_id join team on team.id = request.team_id
    left join person on person.id = report.authorised_by
  where ($1::uuid is null or report.id = $1) and ($3::uuid[] is null or request.team_id = any($3))
    and ($2::text is null or report.number ilike $2 or request.reference ilike $2 or request.title ilike $2)
  order by report.prepared_at desc limit $4`;

function lineOf({ requestId, reference, title, authorisedById, authorisedBy, issuedAt, ...row }: Row): ReportLine {
  return {
    ...row,
    request: { id: requestId, reference, title },
    issuedAt: issuedAt?.toISOString() ?? null,
    authorisedBy: authorisedById === null ? null : { id: authorisedById, name: authorisedBy ?? '' },
  };
}
