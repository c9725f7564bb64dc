import { createTransport, type Transporter } from 'nodemailer';

export interface MailSettings {
  server: string;
  from: string;
}

const seconds = 1000;

/** A connection to the mail server that several mails share; a server that does not answer is not waited for. */
export function openTransport({ server }: MailSettings): Transporter {
  const url = new URL(server);
  const name = decodeURIComponent(url.username);
  const secure = url.protocol === 'smtps:';
  return createTransport({
    host: url.hostname.replace(/^\[|\]$/g, ''),
    port: Number(url.port) || (secure ? 465 : 587),
    secure,
    pool: true,
    maxConnections: 1,
    connectionTimeout: 10 * seconds,
    greetingTimeout: 10 * seconds,
    socketTimeout: 30 * seconds,
    ...(name && { auth: { user: name, pass: decodeURIComponent(url.password) } }),
  });
}
