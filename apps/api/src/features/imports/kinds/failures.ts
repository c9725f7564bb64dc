import { withdrawOutdated } from '#api/features/evidence/withdraw.service.ts';
import * as queries from '../failure-import.queries.ts';
import { failureColumns } from '../rows/failure-row.ts';
import type { KindOfImport } from './kind.ts';

export const failures: KindOfImport = {
  columns: [...failureColumns, ['row_key', 'uuid'], ['content', 'uuid']],
  comparedBy: 'externalRef',
  async judge(client) {
    await queries.judgeFailures(client);
    return [];
  },
  async write(client, doer) {
    await queries.addFailures(client, doer);
    await queries.changeFailures(client, doer);
    await withdrawOutdated(client, queries.changedReports, doer);
    await queries.keepCauses(client, doer);
    await queries.writeCosts(client);
    await queries.writeFindings(client, doer);
    await queries.refreshChanged(client);
  },
};
