/** Reports, cost items and production written straight to the database, with the figures the service would have derived. */
import { newId } from '#api/platform/ids.ts';
import type { Database } from '#db/client.ts';
import type { Prisma } from '#db/generated/client.ts';
import { execute, sql } from '#db/sql.ts';

export interface CostFact {
  category?: Prisma.CostItemCreateManyInput['category'];
  basis?: Prisma.CostItemCreateManyInput['basis'];
  minor: number;
}
export type ReportFact = Omit<Partial<Prisma.FailureCreateManyInput>, 'plantId' | 'foundOn' | 'cavities'> & {
  plantId: string;
  foundOn: string;
  cavities?: string[];
  costs?: CostFact[];
};

const total = (costs: readonly CostFact[], basis: string) =>
  costs.filter((cost) => (cost.basis ?? 'booked') === basis).reduce((sum, cost) => sum + cost.minor, 0);

export async function addReports(db: Database, facts: readonly ReportFact[]): Promise<string[]> {
  const ids = facts.map(({ id }) => id ?? newId());
  await db.prisma.failure.createMany({
    data: facts.map(({ foundOn, costs = [], ...fields }, place) => ({
      number: `T-${ids[place]}`,
      reportedAt: new Date(`${foundOn}T12:00:00Z`),
      found: 6,
      source: 'line' as const,
      quantityFound: 1,
      costItems: costs.length,
      bookedMinor: total(costs, 'booked'),
      estimatedMinor: total(costs, 'estimated'),
      ...fields,
      id: ids[place]!,
      foundOn: new Date(foundOn),
    })),
  });
  await db.prisma.costItem.createMany({
    data: facts.flatMap(({ plantId, foundOn, costs = [] }, place) =>
      costs.map(({ category = 'rework_labour', basis = 'booked', minor }) => ({
        id: newId(),
        plantId,
        failureId: ids[place]!,
        category,
        basis,
        incurredOn: new Date(foundOn),
        amountMinor: minor,
        currency: 'EUR',
        plantMinor: minor,
      })),
    ),
  });
  await execute(
    db.pool,
    sql`update failure f set standard_minor = g.standard_minor, gate = g.gate, gate_minor = g.gate_minor, gates_passed = g.gates_passed
      from failure_figures g where g.id = f.id and g.plant_id = f.plant_id and f.id = any(${ids}::uuid[])`,
  );
  return ids;
}

export type ProductionFact = Omit<Prisma.ProductionCreateManyInput, 'id' | 'day'> & { day: string };

export const addProduction = (db: Database, facts: readonly ProductionFact[]) =>
  db.prisma.production.createMany({ data: facts.map((fact) => ({ id: newId(), ...fact, day: new Date(fact.day) })) });
