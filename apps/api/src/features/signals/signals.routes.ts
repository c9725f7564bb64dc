import type { FastifyInstance } from 'fastify';
import { prepare } from '#api/features/analyses/asked.service.ts';
import { bind } from '#api/platform/route.ts';
import * as contract from '#contracts/signals.ts';
import { signalsOf } from './signals.service.ts';
import { endSilence, silence } from './silences.service.ts';

export function signals(app: FastifyInstance): void {
  bind(app, contract.findSignals, async ({ actor, query, at }) =>
    signalsOf(await prepare(app.db, actor, query, at), at),
  );
  bind(app, contract.silenceSignal, async ({ actor, query, body, at, write }) => {
    const asked = await prepare(app.db, actor, query, at);
    return write((unit) => silence(unit, asked, body));
  });
  bind(app, contract.endSilence, ({ params, version, write }) => write((unit) => endSilence(unit, params.id, version)));
}
