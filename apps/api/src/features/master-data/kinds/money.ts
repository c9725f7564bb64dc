/** Dated money tables: hourly rates and standard costs of a plant, exchange rates of the group. */
import { costRates, exchangeRates, standardCosts } from '#contracts/master-data.ts';
import { stageNumber, stageOf } from '#contracts/taxonomy.ts';
import { kind } from '../kind.ts';
import { refreshPlantFigures } from '../references.queries.ts';

export const costRate = kind(costRates, {
  table: (tx) => tx.costRate,
  label: (row) => `${row.kind} ${row.validFrom}`,
  order: ['plantId', '-validFrom'],
  days: ['validFrom'],
});

export const standardCost = kind(standardCosts, {
  table: (tx) => tx.standardCost,
  label: (row) => `${row.stage} ${row.disposition} ${row.validFrom}`,
  order: ['plantId', 'stage', '-validFrom'],
  days: ['validFrom'],
  encode: (input) => ({ ...input, stage: stageNumber(input.stage) }),
  decode: (stored) => ({ ...stored, stage: stageOf(stored.stage as number) }),
  async saved({ tx }, { before, after }) {
    const from = before && before.validFrom < after.validFrom ? before.validFrom : after.validFrom;
    await refreshPlantFigures(tx, after.plantId, from);
  },
});

export const exchangeRate = kind(exchangeRates, {
  table: (tx) => tx.exchangeRate,
  label: (row) => `${row.base}/${row.quote} ${row.validFrom}`,
  order: ['base', 'quote', '-validFrom'],
  search: ['base', 'quote'],
  days: ['validFrom'],
  decode: (stored) => ({ ...stored, rate: (stored.rate as { toFixed(): string }).toFixed() }),
});
