import { getPerson, NoticeRepository } from '#libs/records/src/index.js';
import type { LabRecords } from '#libs/records/src/index.js';
import { MailTrouble } from './mail.js';
import type { Mail } from './mail.js';
import { noticeText } from './notice-text.js';

/** How mail leaves the lab. */
export interface Post {
  send: (mail: Mail) => Promise<void>;
  /** Where people reach the page. */
  publicUrl: string;
}

/**
 * Mails one notice, unless it has been read or mailed meanwhile. The notice is held while the server is spoken to, so that two
 * runs do not both send it; a worker that dies in between may send it again, under the same Message-ID.
 *
 * @param first only if it was never tried: another try is announced by itself
 * @returns what became of it
 */
export function mailNotice(
  records: LabRecords,
  { send, publicUrl }: Post,
  noticeId: string,
  first = false,
): Promise<Record<string, unknown>> {
  return records.quietly(async (manager) => {
    const notices = new NoticeRepository(manager);
    const notice = await notices.holdForMail(noticeId);
    if (!notice) return { mailed: false, because: 'it was read or mailed already' };
    if (first && notice.mailTries > 0) return { mailed: false, because: 'it is tried again later' };
    const person = await getPerson(manager, notice.personId);
    const wanted = (await notices.mailWay(person.id)) === 'at-once';
    if (!wanted || !person.active) return { mailed: false, because: 'it is not wanted any more' };
    try {
      const text = noticeText(notice, publicUrl);
      await send({ to: person.email, subject: notice.subject, text, key: `notice-${notice.id}` });
      await notices.mailed([notice.id]);
      return { mailed: true };
    } catch (error) {
      if (!(error instanceof MailTrouble)) throw error;
      const againInMs = await notices.mailFailed(notice, error.message, error.final);
      return { mailed: false, because: error.message, againInMs };
    }
  });
}
