import { fieldProblem, InvalidInput } from '#libs/errors/src/index.js';
import type { SignedIn } from '../platform/signed-in.js';

/** The teams whose requests somebody sees; undefined for people of the lab, who see all. */
export function teamsSeen(by: SignedIn): readonly string[] | undefined {
  const ofTheLab = by.roles.some((role) => role !== 'requester');
  return ofTheLab ? undefined : by.teams.map(({ id }) => id);
}

/** Who may ask in a team's name: its members, and managers for anyone. @throws InvalidInput naming `teamId` */
export function refuseOtherTeam(by: SignedIn, teamId: string): void {
  if (mayAskFor(by, teamId)) return;
  throw new InvalidInput([
    fieldProblem({ field: 'teamId', found: teamId, allowed: 'a team that you belong to', unit: '' }),
  ]);
}

export function mayAskFor(by: Pick<SignedIn, 'roles' | 'teams'>, teamId: string): boolean {
  return by.roles.includes('manager') || by.teams.some(({ id }) => id === teamId);
}
