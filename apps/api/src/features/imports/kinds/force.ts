import { judgeForce, writeForce } from '../force-import.queries.ts';
import { forceColumns } from '../rows/force-row.ts';
import type { KindOfImport } from './kind.ts';

export const force: KindOfImport = {
  columns: forceColumns,
  comparedBy: 'externalRef',
  async judge(client) {
    await judgeForce(client);
    return [];
  },
  write: writeForce,
};
