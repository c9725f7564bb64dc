import type { z } from 'zod';
import { changedMeanwhile } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { StandardCost, saveStandardCosts } from '#contracts/master-data.ts';
import { stageNumber } from '#contracts/taxonomy.ts';
import type { Kind } from './kind.ts';
import { standardCost } from './kinds/money.ts';
import { refreshPlantFigures } from './references.queries.ts';
import { create, requireNew, retire, update } from './write.service.ts';

type Input = z.output<NonNullable<typeof saveStandardCosts.body>>;

/** Rows alone; the reports follow once, after the last cell. */
const cell: Kind = { ...standardCost, saved: async () => {} };

/** Sets the cells of a plant's table from one day on: adds, changes, or retires the row of that very day. */
export async function saveTable(unit: Unit, { plantId, validFrom, cells }: Input): Promise<{ items: StandardCost[] }> {
  await requireNew(unit, cell, { plantId });
  const items: StandardCost[] = [];
  for (const { stage, disposition, terminalMinor, version } of cells) {
    const row = await unit.tx.standardCost.findFirst({
      where: { plantId, stage: stageNumber(stage), disposition, validFrom: new Date(validFrom), retiredAt: null },
    });
    if ((row?.version ?? null) !== version) throw changedMeanwhile();
    const input = { plantId, stage, disposition, validFrom };
    if (row && terminalMinor === null)
      items.push((await retire(unit, cell, row.id, row.version, true)) as StandardCost);
    else if (row)
      items.push((await update(unit, cell, row.id, row.version, { ...input, terminalMinor })) as StandardCost);
    else if (terminalMinor !== null)
      items.push((await create(unit, cell, { ...input, terminalMinor })) as StandardCost);
  }
  await refreshPlantFigures(unit.tx, plantId, validFrom);
  return { items };
}
