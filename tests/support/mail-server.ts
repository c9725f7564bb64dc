/** A real SMTP server on this machine that keeps what it is sent, and can be out of order. */
import type { AddressInfo } from 'node:net';
import { SMTPServer } from 'smtp-server';

export interface Received {
  to: string[];
  messageId: string;
  subject: string;
  /** the mail as it came over the wire, broken lines joined */
  text: string;
}

export interface MailServer {
  url: string;
  received: Received[];
  /** What to answer instead of taking the mail; null takes it. */
  refuse: (to: string) => { code: number; message: string } | null;
  /** Takes the mail and breaks the connection before saying so, once. */
  breakOff: boolean;
  stop(): Promise<void>;
}

const header = (text: string, name: string) =>
  new RegExp(`^${name}: (.*(?:\\r?\\n[ \\t].*)*)`, 'im').exec(text)?.[1] ?? '';

export async function startMailServer(port = 0): Promise<MailServer> {
  const mail: MailServer = { url: '', received: [], refuse: () => null, breakOff: false, stop: async () => {} };
  const server = new SMTPServer({
    authOptional: true,
    disabledCommands: ['AUTH', 'STARTTLS'],
    logger: false,
    onRcptTo({ address }, _session, done) {
      const answer = mail.refuse(address);
      done(answer ? Object.assign(new Error(answer.message), { responseCode: answer.code }) : null);
    },
    onData(stream, session, done) {
      const parts: Buffer[] = [];
      stream.on('data', (part: Buffer) => parts.push(part));
      stream.on('end', () => {
        const text = Buffer.concat(parts).toString();
        mail.received.push({
          to: session.envelope.rcptTo.map(({ address }) => address),
          messageId: header(text, 'Message-ID'),
          subject: header(text, 'Subject'),
          text: text.replaceAll('=\r\n', ''),
        });
        if (!mail.breakOff) return done();
        mail.breakOff = false;
        for (const connection of server.connections) (connection as unknown as { close(): void }).close();
      });
    },
  });
  server.on('error', () => {});
  await new Promise<void>((resolve) => server.listen(port, '127.0.0.1', resolve));
  mail.url = `smtp://127.0.0.1:${(server.server.address() as AddressInfo).port}`;
  mail.stop = () => new Promise((resolve) => server.close(() => resolve()));
  return mail;
}
