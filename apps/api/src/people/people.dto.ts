import type {
  AuthorisationBody,
  ChangePersonBody,
  ClosedDay,
  NewPersonBody,
  Role,
  RosterShiftBody,
} from '#libs/contract/src/index.js';
import { Day, Id, isId, ListOf, Secret, Text, When, YesNo } from '../platform/fields.js';
import { PASSWORD } from './session.dto.js';

const ROLES: readonly Role[] = ['requester', 'technician', 'manager', 'auditor'];
const isRole = (value: unknown) => ROLES.includes(value as Role);
const ROLE_LIST = [isRole, `one of ${ROLES.join(', ')}`, { type: 'string', enum: [...ROLES] }] as const;
const EMAIL = { max: 254, pattern: /^[^\s@]+@[^\s@]+\.[^\s@]+$/, allowed: 'a mail address' };

export class NewPersonDto implements NewPersonBody {
  @Text({ max: 120 })
  name!: string;

  @Text(EMAIL)
  email!: string;

  @ListOf(...ROLE_LIST, { min: 1, max: 4 })
  roles!: Role[];

  @ListOf(isId, 'the id of a team', { type: 'string', format: 'uuid' }, { max: 50 })
  teamIds!: string[];

  @Secret({ ...PASSWORD, optional: true })
  password?: string;
}

export class ChangePersonDto implements ChangePersonBody {
  @Text({ max: 120, optional: true })
  name?: string;

  @ListOf(...ROLE_LIST, { min: 1, max: 4, optional: true })
  roles?: Role[];

  @ListOf(isId, 'the id of a team', { type: 'string', format: 'uuid' }, { max: 50, optional: true })
  teamIds?: string[];

  @YesNo({ optional: true })
  active?: boolean;

  @Secret({ ...PASSWORD, optional: true })
  password?: string;
}

export class AuthorisationDto implements AuthorisationBody {
  @Text({ max: 120, example: 'iso-527-2' })
  methodCode!: string;

  @When()
  from!: string;

  @When({ optional: true, nullable: true })
  to?: string | null;
}

export class NewTeamDto {
  @Text({ max: 120 })
  name!: string;
}

export class RosterSpanDto {
  @When({ optional: true })
  from?: string;

  @When({ optional: true })
  to?: string;
}

export class RosterShiftDto implements RosterShiftBody {
  @Id()
  personId!: string;

  @When()
  startsAt!: string;

  @When()
  endsAt!: string;
}

export class ClosedDayDto implements ClosedDay {
  @Day()
  day!: string;

  @Text({ max: 120, example: 'Works outing' })
  name!: string;
}
