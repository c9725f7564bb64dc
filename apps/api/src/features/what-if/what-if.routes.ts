import type { FastifyInstance } from 'fastify';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/what-if.ts';
import * as service from './what-if.service.ts';

export function whatIf(app: FastifyInstance): void {
  const { db } = app;
  bind(app, contract.computeWhatIf, ({ actor, query, body, at }) =>
    service.computeWhatIf(db, actor, { query, input: body, at }),
  );
  bind(app, contract.listWhatIfs, ({ actor, query }) => service.listWhatIfs(db, actor, query));
  bind(app, contract.readWhatIf, ({ actor, params }) => service.readWhatIf(db, actor, params.id));
  bind(app, contract.createWhatIf, ({ body, write }) => write((unit) => service.createWhatIf(db, unit, body)));
  bind(app, contract.updateWhatIf, ({ params, version, body, write }) =>
    write((unit) => service.updateWhatIf(db, unit, { id: params.id, version }, body)),
  );
  bind(app, contract.retireWhatIf, ({ params, version, body, write }) =>
    write((unit) => service.retireWhatIf(unit, { id: params.id, version }, body.retired)),
  );
}
