/** What the whole group shares: housings, terminals, wires, customers. */
import { problem } from '#api/platform/problems.ts';
import { faceCavities } from '#contracts/cavities.ts';
import { customers, housings, terminals, wires } from '#contracts/master-data.ts';
import { kind } from '../kind.ts';
import { reportedCavities } from '../references.queries.ts';

const coded = {
  label: (row: { code: string }) => row.code,
  order: ['code'],
  search: ['code', 'name'],
};

export const housing = kind(housings, {
  ...coded,
  table: (tx) => tx.housing,
  async check({ tx }, input, before) {
    if (before === null) return;
    const kept = new Set(faceCavities(input));
    const dropped = faceCavities(before).filter((cavity) => !kept.has(cavity));
    const reported = await reportedCavities(tx, before.id, dropped);
    if (reported.length === 0) return;
    throw problem(
      'conflict',
      `Reports name cavities that the new face would not have: ${reported.slice(0, 10).join(', ')}. Keep them, or add the new face as another housing.`,
      [{ path: 'body/missingCavities', message: `must keep ${reported.slice(0, 10).join(', ')}` }],
    );
  },
});

export const terminal = kind(terminals, {
  ...coded,
  table: (tx) => tx.terminal,
  encode: ({ approvedToolTypes: _, ...fields }) => fields,
  async complete(tx, rows) {
    const approvals = await tx.terminalToolType.findMany({
      where: { terminalId: { in: rows.map(({ id }) => id as string) } },
      orderBy: { toolType: 'asc' },
    });
    const types = Map.groupBy(approvals, ({ terminalId }) => terminalId);
    return rows.map((row) => ({
      ...row,
      approvedToolTypes: (types.get(row.id as string) ?? []).map(({ toolType }) => toolType),
    }));
  },
  async saved({ tx }, { after, input }) {
    if (input === null) return;
    await tx.terminalToolType.deleteMany({ where: { terminalId: after.id } });
    await tx.terminalToolType.createMany({
      data: [...new Set(input.approvedToolTypes)].map((toolType) => ({ terminalId: after.id, toolType })),
    });
  },
});

export const wire = kind(wires, { ...coded, table: (tx) => tx.wire });
export const customer = kind(customers, { ...coded, table: (tx) => tx.customer });
