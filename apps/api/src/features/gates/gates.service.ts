import { escapeCells, productionByMonth } from '#api/features/analyses/analyses.service.ts';
import { type Asked, prepare } from '#api/features/analyses/asked.service.ts';
import { fieldPattern } from '#api/features/maturity/maturity.service.ts';
import { reportedUntil } from '#api/features/maturity/window.rules.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { GateMoney, Gates } from '#contracts/gates.ts';
import type { AnalysisFilter } from '#contracts/shared/filter.ts';
import { Stage } from '#contracts/taxonomy.ts';
import type { Database } from '#db/client.ts';
import { fieldMaturity } from './field-maturity.ts';
import { presentGates } from './gates.present.ts';
import { fieldByOrigin, standardCosts } from './gates.queries.ts';
import { stageCosts } from './stage-costs.ts';

type Options = { money: GateMoney; pointCost?: string[] | undefined };

const pointCosts = (given: readonly string[]): Map<Stage, number> =>
  new Map(
    given.map((text) => {
      const [stage, minor] = text.split(':');
      return [Stage.parse(stage), Number(minor)];
    }),
  );

/** How much each gate finds and what one more point there would be worth, of a question already prepared. */
export async function gatesOf(asked: Asked, at: Date, { money, pointCost = [] }: Options): Promise<Gates> {
  const until = reportedUntil(undefined, at, asked.own);
  const [cells, field, standards, units, pattern] = await Promise.all([
    escapeCells(asked),
    fieldByOrigin(asked, until),
    standardCosts(asked),
    productionByMonth(asked),
    fieldPattern(asked, until),
  ]);
  const counted = {
    cells,
    field,
    found: stageCosts(cells, standards, asked.money),
    maturity: fieldMaturity(asked, pattern, { units, field, until }),
  };
  return presentGates(asked, counted, { money, pointCost: pointCosts(pointCost) });
}

export const gatesAsked = async (
  db: Database,
  actor: Actor,
  query: AnalysisFilter & Options,
  at: Date,
): Promise<Gates> => gatesOf(await prepare(db, actor, query, at), at, query);
