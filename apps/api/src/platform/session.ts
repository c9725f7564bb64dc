import type { FastifyInstance, FastifyRequest } from 'fastify';
import { z } from 'zod';
import { Grant } from '#contracts/people.ts';
import type { Database } from '#db/client.ts';
import { queryOne, sql } from '#db/sql.ts';
import type { Actor } from './actor.ts';
import { inFlight } from './in-flight.ts';
import { hashSecret } from './passwords.ts';
import { problem } from './problems.ts';

export const sessionCookie = 'escape_ledger_session';
/** A session ends twelve hours after it was last used, and a week after it was opened. */
const idleMs = 12 * 3_600_000;
export const sessionSeconds = 7 * 24 * 3600;
export const sessionEnd = (openedAt: Date, usedAt: Date): Date =>
  new Date(Math.min(usedAt.getTime() + idleMs, openedAt.getTime() + sessionSeconds * 1000));
const touchAfterMs = 5 * 60_000;

const Holder = z.object({
  id: z.string(),
  name: z.string(),
  locale: z.string(),
  must_change_password: z.boolean(),
  grants: z.array(Grant),
  seen_at: z.date().nullable(),
  opened_at: z.date().nullable(),
});

const grantsOf = (column: 'person_id' | 'token_id') =>
  column === 'person_id'
    ? sql`coalesce((select json_agg(json_build_object('role', g.role, 'plantId', g.plant_id)) from role_grant g where g.person_id = p.id), '[]')`
    : sql`coalesce((select json_agg(json_build_object('role', g.role, 'plantId', g.plant_id)) from role_grant g where g.token_id = t.id), '[]')`;

const toActor = (row: z.infer<typeof Holder>, kind: Actor['kind']): Actor => ({
  id: row.id,
  kind,
  name: row.name,
  locale: row.locale,
  mustChangePassword: row.must_change_password,
  grants: row.grants,
});

async function personOf(db: Database, secret: string, at: Date): Promise<Actor | null> {
  const hash = hashSecret(secret);
  const row = await queryOne(
    db.pool,
    sql`select p.id, p.name, p.locale, p.must_change_password, ${grantsOf('person_id')} as grants, s.last_seen_at as seen_at, s.created_at as opened_at
      from session s join person p on p.id = s.person_id
      where s.secret_hash = ${hash} and s.expires_at > ${at} and p.retired_at is null`,
    Holder,
    { name: 'session' },
  );
  if (!row) return null;
  if (row.seen_at && at.getTime() - row.seen_at.getTime() > touchAfterMs) {
    const expiresAt = sessionEnd(row.opened_at ?? at, at);
    await db.prisma.session.updateMany({ where: { secretHash: hash }, data: { lastSeenAt: at, expiresAt } });
    await db.prisma.person.update({ where: { id: row.id }, data: { lastSeenAt: at } });
  }
  return toActor(row, 'person');
}

async function tokenOf(db: Database, secret: string, at: Date): Promise<Actor | null> {
  const hash = hashSecret(secret);
  const row = await queryOne(
    db.pool,
    sql`select t.id, t.name, 'en' as locale, false as must_change_password, ${grantsOf('token_id')} as grants, t.last_used_at as seen_at,
        null::timestamptz as opened_at
      from api_token t where t.secret_hash = ${hash} and t.revoked_at is null and (t.expires_at is null or t.expires_at > ${at})`,
    Holder,
    { name: 'token' },
  );
  if (!row) return null;
  if (!row.seen_at || at.getTime() - row.seen_at.getTime() > touchAfterMs)
    await db.prisma.apiToken.update({ where: { id: row.id }, data: { lastUsedAt: at } });
  return toActor(row, 'token');
}

/** A browser sends Origin with a write; without a token it is honoured only from our own pages, signing in included. */
function refuseForeignOrigin(request: FastifyRequest): void {
  const { origin } = request.headers;
  if (['GET', 'HEAD'].includes(request.method) || !origin) return;
  if (!URL.canParse(origin) || new URL(origin).host !== request.host)
    throw problem('foreign_origin', 'Use the dashboard at its own address, or a token.');
}

/** Finds out who asks, before anything else of a request is read. */
export function identify(app: FastifyInstance): void {
  const share = inFlight<Actor | null>();
  app.decorateRequest('actor', null);
  app.addHook('onRequest', async (request) => {
    const bearer = /^Bearer (\S{20,100})$/.exec(request.headers.authorization ?? '')?.[1];
    if (request.headers.authorization) {
      request.actor = bearer ? await share(`token ${bearer}`, () => tokenOf(app.db, bearer, app.clock())) : null;
      if (!request.actor)
        throw problem('token_invalid', 'It is unknown, revoked or expired. Ask an administrator for a new one.');
      return;
    }
    refuseForeignOrigin(request);
    const secret = request.cookies[sessionCookie];
    if (!secret) return;
    request.actor = await share(`session ${secret}`, () => personOf(app.db, secret, app.clock()));
  });
}
