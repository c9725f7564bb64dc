import type { z } from 'zod';
import { newId } from '#api/platform/ids.ts';
import { notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import type { CostItemInput, Report } from '#contracts/failures.ts';
import { type Sql, sql, txExecute } from '#db/sql.ts';
import { finish } from './finish.ts';
import { openReport } from './open-report.service.ts';
import { convertOn, hourlyRateOn } from './rates.repository.ts';

type Input = z.output<typeof CostItemInput>;
interface Plant {
  id: string;
  code: string;
  currency: string;
}
const largest = 1_000_000_000_000n;

/** Minutes at the plant's rate of the day, rounded half up to whole minor units of the plant's currency. */
async function amountOf(unit: Unit, plant: Plant, item: Input): Promise<bigint> {
  if (item.minutes === undefined) return BigInt(item.amountMinor ?? 0);
  if (item.currency !== plant.currency)
    throw problem('not_consistent', `Minutes are valued at the plant’s rate, in ${plant.currency}.`, [
      { path: 'body/currency', message: `must be ${plant.currency} where minutes are given` },
    ]);
  const hourly = await hourlyRateOn(
    unit.tx,
    plant,
    item.category === 'line_stop' ? 'line_stop' : 'labour',
    item.incurredOn,
  );
  return (BigInt(item.minutes) * hourly + 30n) / 60n;
}

function requireHoldable(amount: bigint): void {
  if (amount > largest || amount < -largest)
    throw problem('not_consistent', 'The amount is too large to be kept. Check the amount and its currency.', [
      { path: 'body/amountMinor', message: 'is too large in the plant’s currency' },
    ]);
}

/** Sums the cost items of the reports that `where` selects (alias `f`) into their totals. */
export const refreshCosts = (unit: Pick<Unit, 'tx'>, where: Sql): Promise<number> =>
  txExecute(
    unit.tx,
    sql`update failure f set cost_items = t.items, booked_minor = t.booked, estimated_minor = t.estimated
      from (select f.id, f.plant_id, count(c.id) as items,
          coalesce(sum(c.plant_minor) filter (where c.basis = 'booked'), 0) as booked,
          coalesce(sum(c.plant_minor) filter (where c.basis = 'estimated'), 0) as estimated
        from failure f left join cost_item c
          on c.plant_id = f.plant_id and c.failure_id = f.id and c.removed_at is null
        where ${where} group by f.id, f.plant_id) t
      where t.id = f.id and t.plant_id = f.plant_id`,
  );

/** Waits for anybody who is changing the costs of the same report, so that no sum misses an item. */
const lockReport = ({ tx }: Unit, { id, plantId }: Report) =>
  txExecute(tx, sql`select from failure where id = ${id}::uuid and plant_id = ${plantId}::uuid for update`);

const thisReport = ({ id, plantId }: Report) => sql`f.id = ${id}::uuid and f.plant_id = ${plantId}::uuid`;

export async function addCost(unit: Unit, id: string, item: Input): Promise<Report> {
  const before = await openReport(unit, 'failures.write', id);
  const plant = await unit.tx.plant.findUniqueOrThrow({ where: { id: before.plantId } });
  const amount = await amountOf(unit, plant, item);
  requireHoldable(amount);
  const { minor, rateOn } = await convertOn(unit.tx, item.incurredOn, Number(amount), item.currency, plant.currency);
  requireHoldable(minor);
  await lockReport(unit, before);
  await unit.tx.costItem.create({
    data: {
      id: newId(),
      plantId: before.plantId,
      failureId: id,
      category: item.category,
      basis: item.basis,
      incurredOn: new Date(item.incurredOn),
      amountMinor: amount,
      currency: item.currency,
      plantMinor: minor,
      rateOn: rateOn === null ? null : new Date(rateOn),
      minutes: item.minutes ?? null,
      note: item.note,
    },
  });
  await refreshCosts(unit, thisReport(before));
  return finish(unit, 'cost added', before, before);
}

export async function removeCost(unit: Unit, id: string, costId: string): Promise<Report> {
  const before = await openReport(unit, 'failures.write', id);
  await lockReport(unit, before);
  const { count } = await unit.tx.costItem.updateMany({
    where: { id: costId, plantId: before.plantId, failureId: id, removedAt: null },
    data: { removedAt: unit.at },
  });
  if (count === 0) throw notFound('cost item');
  await refreshCosts(unit, thisReport(before));
  return finish(unit, 'cost removed', before, before);
}
