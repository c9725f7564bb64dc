import type { FastifyInstance } from 'fastify';
import type { Transporter } from 'nodemailer';
import { z } from 'zod';
import { execute, queryRows, sql } from '#db/sql.ts';
import { letterText } from './text.ts';
import { openTransport } from './transport.ts';

/** Mail that did not get out for this long is given up, in milliseconds. */
const patience = 3 * 24 * 3_600_000;
const keptDays = 90;
const waits = [1, 2, 5, 15, 30, 60].map((minutes) => minutes * 60_000);
const waitAfter = (tries: number): number => waits[Math.min(tries, waits.length) - 1]!;

const Waiting = z.object({
  id: z.string(),
  recipient: z.string(),
  subject: z.string(),
  body: z.string(),
  link: z.string().nullable(),
  locale: z.string(),
  queued_at: z.date(),
  tries: z.int(),
  reason: z.enum(['account', 'subscription']),
  file_name: z.string().nullable(),
  file: z.instanceof(Buffer).nullable(),
});
type Waiting = z.infer<typeof Waiting>;

/** Sends what waits, oldest first. Without a mail server it only gives up what is too old. */
export async function sendMail(app: FastifyInstance, at: Date): Promise<{ sent: number }> {
  const { db, config } = app;
  await execute(
    db.pool,
    sql`update mail set state = 'given_up', settled_at = ${at}, last_error = coalesce(last_error, 'No mail server is set.')
      where state = 'waiting' and queued_at < ${new Date(at.getTime() - patience)}`,
  );
  await execute(
    db.pool,
    sql`delete from mail where settled_at < ${new Date(at.getTime() - keptDays * 24 * 3_600_000)}`,
  );
  if (!config.mail) return { sent: 0 };
  const transport = openTransport(config.mail);
  try {
    let sent = 0;
    for (;;) {
      const outcome = await sendOne(app, transport, at);
      if (outcome === 'none' || outcome === 'down') return { sent };
      if (outcome === 'sent') sent += 1;
    }
  } finally {
    transport.close();
  }
}

/**
 * One mail, its row locked while it is under way, so that no other server takes it and a server that dies leaves it to the
 * next. Should a server die between the mail server's yes and the note of it, the mail goes out again under the same
 * Message-ID, by which mail programs know it for the same.
 */
async function sendOne(app: FastifyInstance, transport: Transporter, at: Date) {
  const client = await app.db.pool.connect();
  try {
    await client.query('begin');
    const [mail] = await queryRows(
      client,
      sql`select id, recipient, subject, body, link, locale, queued_at, tries, reason, file_name, file from mail where state = 'waiting' and next_try_at <= ${at}
        order by next_try_at, id limit 1 for update skip locked`,
      Waiting,
    );
    const outcome = mail ? await attempt(app, mail, transport) : null;
    if (mail && outcome) await execute(client, noteOf(mail, outcome, at));
    await client.query('commit');
    return outcome ? outcome.state : 'none';
  } catch (error) {
    await client.query('rollback').catch(() => {});
    throw error;
  } finally {
    client.release();
  }
}

/** `refused`: this mail never gets through; `later`: not now; `down`: none gets through now. */
type Outcome = { state: 'sent' } | { state: 'refused' | 'later' | 'down'; error: string };

/** Replies about signing in or encryption, which concern the settings and not the mail. */
const aboutSettings = [530, 534, 535, 538];

async function attempt({ config }: FastifyInstance, mail: Waiting, transport: Transporter): Promise<Outcome> {
  try {
    await transport.sendMail({
      from: config.mail?.from,
      to: mail.recipient,
      subject: mail.subject,
      text: letterText(mail, config.publicUrl),
      date: mail.queued_at,
      messageId: `<${mail.id}@escape-ledger>`,
      headers: { 'Auto-Submitted': 'auto-generated' },
      ...(mail.file && { attachments: [{ filename: mail.file_name ?? 'file', content: mail.file }] }),
    });
    return { state: 'sent' };
  } catch (error) {
    const { responseCode, message } = error as { responseCode?: number; message: string };
    const about = message.slice(0, 500);
    if (responseCode === undefined || aboutSettings.includes(responseCode)) return { state: 'down', error: about };
    return { state: responseCode >= 500 ? 'refused' : 'later', error: about };
  }
}

function noteOf({ id, tries }: Waiting, outcome: Outcome, at: Date) {
  if (outcome.state === 'sent')
    return sql`update mail set state = 'sent', tries = tries + 1, settled_at = ${at}, last_error = null where id = ${id}::uuid`;
  const next = new Date(at.getTime() + waitAfter(tries + 1));
  return outcome.state === 'refused'
    ? sql`update mail set state = 'given_up', tries = tries + 1, settled_at = ${at}, last_error = ${outcome.error} where id = ${id}::uuid`
    : sql`update mail set tries = tries + 1, next_try_at = ${next}, last_error = ${outcome.error} where id = ${id}::uuid`;
}
