import { judgeFindings, writeFindings } from '../finding-import.queries.ts';
import { findingColumns } from '../rows/finding-row.ts';
import type { KindOfImport } from './kind.ts';

export const findings: KindOfImport = {
  columns: findingColumns,
  comparedBy: 'report',
  async judge(client) {
    await judgeFindings(client);
    return [];
  },
  write: writeFindings,
};
