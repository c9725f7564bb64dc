import type { FastifyInstance } from 'fastify';
import { readReport } from '#api/features/failures/open-report.service.ts';
import { choosePlants } from '#api/platform/actor.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/evidence.ts';
import { queryRows } from '#db/sql.ts';
import { AlikeRow, alikeSql } from './alike.queries.ts';
import { confirmBatch } from './batch.service.ts';
import { confirmCause } from './confirmation.service.ts';
import { readEvidence } from './evidence.service.ts';
import { takeFindings } from './findings.service.ts';
import { listJudgedCases } from './judged-cases.service.ts';
import * as opinions from './opinions.service.ts';
import { readRecord } from './record.service.ts';

export function evidence(app: FastifyInstance): void {
  const { db } = app;

  bind(app, contract.readEvidence, ({ actor, params }) => readEvidence(db, actor, params.id));
  bind(app, contract.takeFindings, async ({ actor, params, body, write }) => {
    await write((unit) => takeFindings(unit, params.id, body));
    return readEvidence(db, actor, params.id);
  });
  bind(app, contract.confirmCause, async ({ actor, params, body, version, write }) => {
    await write((unit) => confirmCause(unit, params.id, version, body));
    return readEvidence(db, actor, params.id);
  });
  bind(app, contract.similarUnsorted, async ({ actor, params }) => {
    const { plantId } = await readReport(db, actor, params.id);
    return { items: await queryRows(db.pool, alikeSql(plantId, params.id), AlikeRow) };
  });
  bind(app, contract.confirmBatch, ({ body, write }) => write((unit) => confirmBatch(unit, body.ids, body.decision)));

  bind(app, contract.askOpinions, ({ body, write }) => write((unit) => opinions.askOpinions(unit, body)));
  bind(app, contract.listOpinions, async ({ actor }) => ({ items: await opinions.waitingFor(db, actor) }));
  bind(app, contract.readOpinion, ({ actor, params }) => opinions.readBlind(db, actor, params.id));
  bind(app, contract.takeOpinion, ({ params, write }) => write((unit) => opinions.takeOpinion(unit, params.id)));
  bind(app, contract.giveOpinion, ({ params, body, write }) =>
    write((unit) => opinions.giveOpinion(unit, params.id, body.cause)),
  );

  bind(app, contract.judgedCases, ({ actor, query }) =>
    listJudgedCases(db, choosePlants(actor, 'analyses.read', query.plant), query),
  );
  bind(app, contract.readRecord, ({ actor, query }) =>
    readRecord(db, choosePlants(actor, 'analyses.read', query.plant), query),
  );
}
