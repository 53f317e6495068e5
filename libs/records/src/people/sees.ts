/**
 * SQL: whether the `person` of a statement sees what belongs to a team. People of the lab see all, requesters what is of their teams.
 *
 * @param team an SQL expression for the id of the team
 */
export function seesTeamSql(team: string): string {
  return `(${OF_THE_LAB_SQL} or exists (select 1 from team_member where person_id = person.id and team_id = ${team}))`;
}

/** SQL: whether the `person` of a statement has a role within the lab. */
export const OF_THE_LAB_SQL = `person.roles && array['technician', 'manager', 'auditor']`;
