import { Injectable } from '@nestjs/common';

import { LabError } from '#libs/errors/src/index.js';
import { countTries, forgetTries, forgetTriesOf, LabRecords } from '#libs/records/src/index.js';

const WITHIN_MIN = 15;
const MOST_FAILURES = { person: 10, place: 100 }; // a place may be a whole office behind one address

/** Whose password is tried, and from where; without a place for somebody who is signed in. */
export interface Tried {
  person: string;
  place?: string;
}

/** How often a password may be tried: for one person, and from one network address, whatever process is asked. */
@Injectable()
export class SignInLimit {
  constructor(private readonly records: LabRecords) {}

  /**
   * Tries a password. It counts before it is looked at, so that of many tries at once no more are looked at than of many in turn;
   * one that fits does not count, and earlier slips of that person no longer do.
   *
   * @throws {LabError} `sign-in/too-many`
   */
  async try({ person, place }: Tried, fits: () => Promise<boolean>): Promise<boolean> {
    const { manager } = this.records;
    const subjects = [`person ${person.trim().toLowerCase()}`, ...(place === undefined ? [] : [`place ${place}`])];
    const counted = await countTries(manager, subjects, WITHIN_MIN);
    const ids = counted.map(({ id }) => id);
    const most = [MOST_FAILURES.person, MOST_FAILURES.place];
    if (counted.some(({ tries }, at) => tries > most[at]!)) {
      await forgetTries(manager, ids);
      throw new LabError('sign-in/too-many', `Too many tries to sign in. Wait ${WITHIN_MIN} minutes.`, {
        waitMin: WITHIN_MIN,
      });
    }
    if (!(await fits())) return false;
    await forgetTries(manager, ids);
    await forgetTriesOf(manager, subjects[0]!);
    return true;
  }
}
