import type { AddressInfo } from 'node:net';
import { simpleParser } from 'mailparser';
import { SMTPServer } from 'smtp-server';

export interface Mailed {
  to: string;
  subject: string;
  text: string;
  id: string;
}

/** A mail server of another make that keeps what it gets; it refuses one address for good. */
export class PostOffice {
  readonly mails: Mailed[] = [];
  private readonly server = new SMTPServer({
    disabledCommands: ['AUTH', 'STARTTLS'],
    onRcptTo: ({ address }, _session, done) => {
      if (!address.startsWith('gone')) return done();
      done(Object.assign(new Error('no such mailbox'), { responseCode: 550 }));
    },
    onData: (stream, session, done) => {
      void simpleParser(stream).then(({ subject = '', text = '', messageId = '' }) => {
        this.mails.push({ to: session.envelope.rcptTo[0]!.address, subject, text, id: messageId });
        done();
      });
    },
  });

  async open(): Promise<string> {
    this.server.on('error', () => {}); // a client that leaves is its own affair
    await new Promise<void>((resolve) => this.server.listen(0, '127.0.0.1', resolve));
    return `smtp://127.0.0.1:${(this.server.server.address() as AddressInfo).port}`;
  }

  to(who: string): Mailed[] {
    return this.mails.filter(({ to }) => to.startsWith(who));
  }

  close(): Promise<void> {
    return new Promise((resolve) => this.server.close(resolve));
  }
}
