import type { FastifyInstance } from 'fastify';
import { requireGroup } from '#api/platform/actor.ts';
import { notFound } from '#api/platform/problems.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/notices.ts';
import { retryMail } from './mail.service.ts';
import * as queries from './notices.queries.ts';
import { changePreferences, readPreferences } from './preferences.service.ts';

export function notices(app: FastifyInstance): void {
  const { db, config } = app;
  const isMailSetUp = () => config.mail !== null;

  bind(app, contract.listNotices, ({ actor, query }) => queries.listNotices(db, actor, query));
  bind(app, contract.countNotices, ({ actor }) => queries.countUnread(db, actor));
  bind(app, contract.readNotice, async ({ actor, params, at }) => {
    if ((await queries.markRead(db, actor, at, params.id)) === 0) throw notFound('notice');
  });
  bind(app, contract.readAllNotices, async ({ actor, at }) => void (await queries.markRead(db, actor, at)));

  bind(app, contract.noticePreferences, ({ actor }) => readPreferences(db, actor, isMailSetUp()));
  bind(app, contract.changeNoticePreferences, ({ body, write }) => write((unit) => changePreferences(unit, body)));

  bind(app, contract.mailSummary, async ({ actor }) => {
    requireGroup(actor, 'people.read');
    return { ...(await queries.mailSummary(db)), mailSetUp: isMailSetUp() };
  });
  bind(app, contract.retryMail, ({ write }) => write(retryMail));
}
