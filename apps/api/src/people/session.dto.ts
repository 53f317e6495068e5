import type { NewTokenBody, OwnPasswordBody, SignInBody } from '#libs/contract/src/index.js';
import { Figure, ListOf, Secret, Text, YesNo } from '../platform/fields.js';
import { Transform } from 'class-transformer';
import { PERMISSIONS } from '../platform/permissions.js';

/** Long enough to resist guessing, short enough not to keep the server busy with hashing. */
export const PASSWORD = { min: 12, max: 128 };

export class SignInDto implements SignInBody {
  @Text({ max: 254, example: 'somebody@northmoor.example' })
  email!: string;

  @Secret({ max: PASSWORD.max })
  password!: string;
}

export class SignOutDto {
  /** Every session of the person, not only this one. */
  @YesNo({ optional: true })
  @Transform(({ value }: { value: unknown }) => (value === 'true' ? true : value === 'false' ? false : value))
  all?: boolean;
}

export class OwnPasswordDto implements OwnPasswordBody {
  @Secret({ max: PASSWORD.max })
  current!: string;

  @Secret(PASSWORD)
  next!: string;
}

const isPermission = (value: unknown) => typeof value === 'string' && value in PERMISSIONS;

export class NewTokenDto implements NewTokenBody {
  @Text({ max: 80 })
  name!: string;

  @ListOf(isPermission, `one of ${Object.keys(PERMISSIONS).join(', ')}`, { type: 'string' }, { min: 1, max: 60 })
  permissions!: string[];

  @Figure({ min: 1, max: 365, whole: true, unit: 'd' })
  days!: number;
}
