import type { PlantScope } from '#api/platform/actor.ts';
import { type WhatIf, WhatIfInput, WhatIfResult, type WhatIfSummary } from '#contracts/what-if.ts';
import type { Database, Tx } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';

type Row = Prisma.WhatIfGetPayload<object>;

const within = (scope: PlantScope) => (scope === 'all' ? {} : { plantId: { in: [...scope] } });

export async function findWhatIfs(
  db: Pick<Database, 'prisma'>,
  scope: PlantScope,
  { retired, after, limit }: { retired: boolean; after?: string | undefined; limit: number },
): Promise<WhatIfSummary[]> {
  const rows = await db.prisma.whatIf.findMany({
    where: { ...within(scope), retiredAt: retired ? { not: null } : null, ...(after && { id: { lt: after } }) },
    orderBy: { id: 'desc' },
    take: limit,
  });
  const codes = await plantCodes(db.prisma, rows);
  return rows.map((row) => summaryOf(row, codes));
}

export async function findWhatIf(tx: Tx | Database['prisma'], id: string): Promise<WhatIf | null> {
  const row = await tx.whatIf.findUnique({ where: { id } });
  return row && wholeOf(row, await plantCodes(tx, [row]));
}

async function plantCodes(tx: Tx | Database['prisma'], rows: readonly Row[]): Promise<Map<string, string>> {
  const ids = [...new Set(rows.map(({ plantId }) => plantId))];
  const plants = await tx.plant.findMany({ where: { id: { in: ids } }, select: { id: true, code: true } });
  return new Map(plants.map(({ id, code }) => [id, code]));
}

function summaryOf(row: Row, codes: ReadonlyMap<string, string>): WhatIfSummary {
  const { currency, together, best } = WhatIfResult.parse(row.result);
  const { id, plantId, name, note, createdBy, createdAt, computedAt, retiredAt, version } = row;
  return {
    id,
    plantId,
    plantCode: codes.get(plantId)!,
    name,
    note,
    createdBy,
    createdAt: createdAt.toISOString(),
    computedAt: computedAt.toISOString(),
    currency,
    horizonYears: WhatIfInput.parse(row.input).horizonYears,
    together,
    best,
    retiredAt: retiredAt?.toISOString() ?? null,
    version,
  };
}

const wholeOf = (row: Row, codes: ReadonlyMap<string, string>): WhatIf => ({
  ...summaryOf(row, codes),
  query: row.query,
  input: WhatIfInput.parse(row.input),
  result: WhatIfResult.parse(row.result),
});
