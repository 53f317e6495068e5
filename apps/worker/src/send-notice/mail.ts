import { createTransport } from 'nodemailer';
import type { WorkerConfig } from '../config.js';

/** A mail of plain text: nothing in it can run, and nothing has to be escaped. */
export interface Mail {
  to: string;
  subject: string;
  text: string;
  /** The same for the same mail, so that one that is sent again is recognised as the same. */
  key: string;
}

/** Why a mail did not go out, in words without addresses, and whether another try could help. */
export class MailTrouble extends Error {
  constructor(
    sentence: string,
    readonly final: boolean,
    cause: unknown,
  ) {
    super(sentence, { cause });
  }
}

const PATIENCE_MS = 10_000;

/**
 * Sends mails, one connection each: there are few, and a server that was away is found again by itself.
 *
 * @returns null when the lab has no mail server
 */
export function mailer({ smtpUrl, mailFrom, publicUrl }: WorkerConfig): ((mail: Mail) => Promise<void>) | null {
  if (!smtpUrl) return null;
  const host = new URL(publicUrl).hostname;
  const from = mailFrom ?? `Loadtrain <lab@${host}>`;
  const patience = { connectionTimeout: PATIENCE_MS, greetingTimeout: PATIENCE_MS, socketTimeout: PATIENCE_MS };
  const transport = createTransport({ url: smtpUrl, ...patience, disableFileAccess: true, disableUrlAccess: true });
  return async ({ to, subject, text, key }) => {
    const head = { 'Auto-Submitted': 'auto-generated' }; // RFC 3834: no automatic answers, please
    const mail = { from, to, subject, text, messageId: `<${key}@${host}>`, headers: head };
    await transport.sendMail(mail).catch((error: unknown) => {
      throw troubleOf(error);
    });
  };
}

const REFUSED_FOR_GOOD = 500; // RFC 5321 4.2.1: 5yz is a permanent refusal, 4yz a passing one

function troubleOf(error: unknown): MailTrouble {
  const { code = 'unknown', responseCode } = error as { code?: string; responseCode?: number };
  if (responseCode === undefined) return new MailTrouble(`The mail server was not reached (${code}).`, false, error);
  // A refused sign-in is the lab's fault and can be put right; a refused address cannot.
  const final = responseCode >= REFUSED_FOR_GOOD && code === 'EENVELOPE';
  return new MailTrouble(`The mail server refused with ${responseCode}.`, final, error);
}
