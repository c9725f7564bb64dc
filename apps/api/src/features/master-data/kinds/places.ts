/** Plants and what belongs to one of them: lines, stages, tools. */
import { problem } from '#api/platform/problems.ts';
import { lines, plantStages, plants, tools } from '#contracts/master-data.ts';
import { stageNumber, stageOf, stages } from '#contracts/taxonomy.ts';
import { terms as german } from '#contracts/terms.de.ts';
import { terms as english } from '#contracts/terms.en.ts';
import { kind } from '../kind.ts';
import { isStageReported, plantHasMoney, refreshPlantFigures } from '../references.queries.ts';
import { create } from '../write.service.ts';

const coded = {
  label: (row: { code: string }) => row.code,
  order: ['code'],
  search: ['code', 'name'],
};

export const line = kind(lines, { ...coded, table: (tx) => tx.line });
export const tool = kind(tools, {
  ...coded,
  table: (tx) => tx.tool,
  search: ['code', 'name', 'type'],
  days: ['servicedOn'],
});

export const stage = kind(plantStages, {
  ...coded,
  table: (tx) => tx.stage,
  order: ['plantId', 'position'],
  encode: (input) => ({ ...input, common: stageNumber(input.common) }),
  decode: (stored) => ({ ...stored, common: stageOf(stored.common as number) }),
  async check({ tx }, input, before) {
    if (before === null || before.common === input.common || !(await isStageReported(tx, before.plantId, before.id)))
      return;
    throw problem(
      'conflict',
      'Reports name this stage, so what it stands for stays. Retire it and add another for the other common stage.',
      [{ path: 'body/common', message: 'cannot change' }],
    );
  },
  async saved({ tx }, { before, after }) {
    const moved = before?.common !== after.common || before?.retiredAt !== after.retiredAt;
    if (moved) await refreshPlantFigures(tx, after.plantId);
  },
});

const names = { en: english.stage, de: german.stage };

export const plant = kind(plants, {
  ...coded,
  table: (tx) => tx.plant,
  async check({ tx }, input, before) {
    if (before === null || before.currency === input.currency || !(await plantHasMoney(tx, before.id))) return;
    throw problem(
      'conflict',
      `Amounts are on file in ${before.currency}, so the plant's currency stays. Add the plant anew if it changed its books.`,
      [{ path: 'body/currency', message: `must stay ${before.currency}` }],
    );
  },
  async saved(unit, { before, after, input }) {
    if (before !== null || input === null) return;
    for (const [index, common] of stages.entries()) {
      const place = { plantId: after.id, code: String(10 * (index + 1)), name: names[input.locale][common] };
      await create(unit, stage, { ...place, common, position: index + 1 });
    }
  },
});
