import { sameKeyAnswers } from '#contracts/imports.ts';
import { countRepeatedKeys, judgeProduction, writeProduction } from '../production-import.queries.ts';
import { productionColumns } from '../rows/production-row.ts';
import type { KindOfImport } from './kind.ts';

export const production: KindOfImport = {
  columns: productionColumns,
  comparedBy: 'day',
  async judge(client, { sameKey }) {
    const rows = sameKey ? 0 : await countRepeatedKeys(client);
    if (rows > 0) return [{ about: 'sameKey', choices: [...sameKeyAnswers], rows }];
    await judgeProduction(client, sameKey ?? 'refuse');
    return [];
  },
  write: writeProduction,
};
