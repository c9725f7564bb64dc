import type { FastifyInstance } from 'fastify';
import { choosePlants, plantsWith } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/review.ts';
import { countReview } from './content/content.service.ts';
import { addDecision } from './decisions.service.ts';
import { documentOf } from './document/document.service.ts';
import * as kept from './keep.service.ts';
import { listKept } from './review.queries.ts';
import { readReview, reviewOfWeek } from './review.service.ts';
import { changeSubscriptions, readSubscriptions } from './subscriptions.service.ts';

export function review(app: FastifyInstance): void {
  const { db } = app;
  bind(app, contract.readWeekReview, ({ actor, query, at }) => reviewOfWeek(db, actor, query, at));
  bind(app, contract.listReviews, ({ actor, query }) => {
    choosePlants(actor, 'reviews.read', query.plant);
    return listKept(db, plantsWith(actor, 'reviews.read'), query);
  });
  bind(app, contract.readReview, ({ actor, params }) => readReview(db, actor, params.id));
  bind(app, contract.openReview, async ({ actor, body, at, write }) => {
    const chosen = await kept.chooseToOpen(db, actor, body, at);
    const counted = await countReview(db, { ...chosen, at });
    return write((unit) => kept.openReview(unit, chosen, counted));
  });
  bind(app, contract.renewReview, async ({ actor, params, version, at, write }) => {
    const counted = await kept.countAgain(db, actor, params.id, at);
    return write((unit) => kept.renewReview(unit, params.id, version, counted));
  });
  bind(app, contract.decide, ({ params, body, write }) => write((unit) => addDecision(unit, params.id, body)));
  bind(app, contract.closeReview, ({ params, version, write }) =>
    write((unit) => kept.closeReview(unit, params.id, version)),
  );
  bind(app, contract.correctReview, async ({ actor, params, body, at, write }) => {
    const counted = await kept.countAgain(db, actor, params.id, at);
    return write((unit) => kept.correctReview(unit, params.id, body.reason, counted));
  });

  bind(app, contract.printReview, async ({ actor, params, query, reply }) =>
    documentOf(db, actor, await readReview(db, actor, params.id), query, reply),
  );
  bind(app, contract.printWeekReview, async ({ actor, query, at, reply }) =>
    documentOf(db, actor, await reviewOfWeek(db, actor, query, at), query, reply),
  );

  bind(app, contract.readSubscriptions, ({ actor }) => readSubscriptions(db.prisma, actor));
  bind(app, contract.changeSubscriptions, ({ body, write }) => write((unit) => changeSubscriptions(unit, body)));
}
