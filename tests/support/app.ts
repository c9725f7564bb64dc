/** The whole service on a database of its own, for integration tests: asked through HTTP, without a port. */
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { FastifyInstance, InjectOptions } from 'fastify';
import { buildApp } from '#api/app.ts';
import { readConfig } from '#api/config.ts';
import { newId } from '#api/platform/ids.ts';
import { hashSecret, newSecret } from '#api/platform/passwords.ts';
import { sessionCookie } from '#api/platform/session.ts';
import type { Role } from '#contracts/permissions.ts';
import { type Database, openDatabase } from '#db/client.ts';
import { createTestDatabase } from '#db/testing.ts';

export interface Answer {
  status: number;
  // biome-ignore lint/suspicious/noExplicitAny: a test states what it expects of the body
  body: any;
  headers: Record<string, unknown>;
  raw: Buffer;
}
type Extra = { headers?: Record<string, string>; payload?: InjectOptions['payload'] };

export interface Asker {
  id: string;
  name: string;
  cookie: string;
  get(url: string, extra?: Extra): Promise<Answer>;
  post(url: string, body: unknown, extra?: Extra): Promise<Answer>;
  put(url: string, body: unknown, version: number, extra?: Extra): Promise<Answer>;
  delete(url: string, extra?: Extra): Promise<Answer>;
}

export interface TestApp {
  app: FastifyInstance;
  db: Database;
  dataDir: string;
  /** The service's clock; a test may set it. */
  time: { now: Date };
  /** Signs in a new person who holds the role for the plants (ids), or for all when none are given. */
  as(role: Role, plants?: readonly string[], locale?: 'en' | 'de'): Promise<Asker>;
  close(): Promise<void>;
}

export async function createTestApp({ now = '2026-06-15T10:00:00Z' } = {}): Promise<TestApp> {
  const database = await createTestDatabase();
  const dataDir = await mkdtemp(join(tmpdir(), 'escape-ledger-data-'));
  const db = await openDatabase(database.url);
  const time = { now: new Date(now) };
  const config = readConfig({ DATA_DIR: dataDir, DATABASE_URL: database.url, LOG_LEVEL: 'error' });
  const app = await buildApp({ config, db, clock: () => time.now });
  await app.ready();
  return {
    app,
    db,
    dataDir,
    time,
    as: async (role, plants, locale = 'en') => {
      const session = await signIn(db, time.now, role, plants ?? [null], locale);
      return asker(app, session);
    },
    async close() {
      await app.close();
      await db.close();
      await database.drop();
      await rm(dataDir, { recursive: true, force: true });
    },
  };
}

async function signIn(db: Database, at: Date, role: Role, plants: readonly (string | null)[], locale: string) {
  const id = newId();
  const name = `Test ${role}`;
  const secret = newSecret();
  await db.prisma.person.create({
    data: { id, name, email: `${id}@test.invalid`, passwordHash: '-', mustChangePassword: false, locale },
  });
  await db.prisma.roleGrant.createMany({
    data: plants.map((plantId) => ({ id: newId(), personId: id, role, plantId })),
  });
  await db.prisma.session.create({
    data: {
      secretHash: hashSecret(secret),
      personId: id,
      createdAt: at,
      lastSeenAt: at,
      expiresAt: new Date(at.getTime() + 365 * 86_400_000),
    },
  });
  return { id, name, cookie: `${sessionCookie}=${secret}` };
}

function asker(app: FastifyInstance, session: { id: string; name: string; cookie: string }): Asker {
  const ask = async (options: InjectOptions, { headers, payload }: Extra = {}): Promise<Answer> => {
    const given = payload === undefined ? {} : { payload };
    const response = await app.inject({
      ...options,
      ...given,
      headers: { cookie: session.cookie, ...options.headers, ...headers },
    });
    const json = String(response.headers['content-type'] ?? '').includes('json');
    return {
      status: response.statusCode,
      body: json && response.body ? response.json() : response.body,
      headers: response.headers,
      raw: response.rawPayload,
    };
  };
  const json = (body: unknown) => ({
    payload: typeof body === 'string' ? body : JSON.stringify(body),
    headers: { 'content-type': 'application/json' },
  });
  return {
    ...session,
    get: (url, extra) => ask({ method: 'GET', url }, extra),
    post: (url, body, extra) => ask({ method: 'POST', url, ...json(body) }, extra),
    put: (url, body, version, extra) => {
      const { payload, headers } = json(body);
      return ask({ method: 'PUT', url, payload, headers: { ...headers, 'if-match': `"${version}"` } }, extra);
    },
    delete: (url, extra) => ask({ method: 'DELETE', url }, extra),
  };
}
