import type { FastifyInstance, FastifyRequest } from 'fastify';
import { requireGroup, requirePlant } from '#api/platform/actor.ts';
import { problem } from '#api/platform/problems.ts';
import { bind } from '#api/platform/route.ts';
import { sessionCookie, sessionSeconds } from '#api/platform/session.ts';
import * as contract from '#contracts/people.ts';
import { listColleagues } from './colleagues.service.ts';
import * as service from './people.service.ts';
import * as sessions from './session.service.ts';
import * as tokens from './tokens.service.ts';

/** In a quarter of an hour: ten tries for one account from one address, and for one address whatever the account. */
const timeWindow = '15 minutes';
const tries = { account: 10, address: 100 };

export function people(app: FastifyInstance): void {
  const limits = [
    app.createRateLimit({ max: tries.address, timeWindow, keyGenerator: ({ ip }) => ip }),
    app.createRateLimit({
      max: tries.account,
      timeWindow,
      keyGenerator: ({ ip, actor, body }) => `${ip} ${actor?.id ?? (body as { email: string }).email}`,
    }),
  ];
  const countTry = async (request: FastifyRequest): Promise<void> => {
    for (const count of limits) {
      const limit = await count(request);
      if (!limit.isAllowed && limit.isExceeded)
        throw problem(
          'too_many_requests',
          `Wait ${Math.ceil(limit.ttlInSeconds / 60)} minutes and try again, or ask an administrator for a new password.`,
        );
    }
  };

  bind(app, contract.signIn, async ({ body, at, request, reply }) => {
    await countTry(request);
    const { secret, actor } = await sessions.openSession(app.db, body, at);
    reply.setCookie(sessionCookie, secret, {
      path: '/',
      httpOnly: true,
      sameSite: 'lax',
      secure: request.protocol === 'https',
      maxAge: sessionSeconds,
    });
    return sessions.describeMe(app.db.prisma, actor);
  });
  bind(app, contract.signOut, async ({ request, reply }) => {
    const secret = request.cookies[sessionCookie];
    if (secret) await sessions.closeSession(app.db, secret);
    reply.clearCookie(sessionCookie, { path: '/' });
  });
  bind(app, contract.me, ({ actor }) => sessions.describeMe(app.db.prisma, actor));
  bind(app, contract.changePassword, async ({ body, write, request }) => {
    await countTry(request);
    await write((unit) => sessions.changeOwnPassword(unit, body, request.cookies[sessionCookie]));
  });
  bind(app, contract.changePreferences, ({ body, write }) =>
    write((unit) => sessions.changeOwnPreferences(unit, body)),
  );

  bind(app, contract.listPeople, ({ actor, query }) => {
    requireGroup(actor, 'people.read');
    return service.listPeople(app.db, query);
  });
  bind(app, contract.createPerson, ({ actor, body, write }) => {
    requireGroup(actor, 'people.write');
    return write((unit) => service.createPerson(unit, body));
  });
  bind(app, contract.updatePerson, ({ actor, params, body, version, write }) => {
    requireGroup(actor, 'people.write');
    return write((unit) => service.updatePerson(unit, params.id, version, body));
  });
  bind(app, contract.resetPassword, ({ actor, params, body, version, write }) => {
    requireGroup(actor, 'people.write');
    return write((unit) => service.resetPassword(unit, params.id, version, body.password));
  });
  bind(app, contract.retirePerson, ({ actor, params, body, version, write }) => {
    requireGroup(actor, 'people.write');
    return write((unit) => service.retirePerson(unit, params.id, version, body.retired));
  });

  bind(app, contract.listColleagues, async ({ actor, params, query }) => {
    requirePlant(actor, 'masterData.read', params.id);
    return { items: await listColleagues(app.db.prisma, params.id, query.permission) };
  });

  bind(app, contract.listTokens, ({ actor, query }) => {
    requireGroup(actor, 'tokens.write');
    return tokens.listTokens(app.db, query);
  });
  bind(app, contract.createToken, ({ actor, body, write }) => {
    requireGroup(actor, 'tokens.write');
    return write((unit) => tokens.createToken(unit, body));
  });
  bind(app, contract.revokeToken, ({ actor, params, write }) => {
    requireGroup(actor, 'tokens.write');
    return write((unit) => tokens.revokeToken(unit, params.id));
  });
}
