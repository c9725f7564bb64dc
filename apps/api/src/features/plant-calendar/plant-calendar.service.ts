import type { z } from 'zod';
import { reckonPlantClocks } from '#api/features/complaints/reckoning.service.ts';
import { type Actor, holds, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { changedMeanwhile, notFound } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import {
  type PlantCalendar,
  type saveCalendar as saveContract,
  usualHours,
  WorkingHours,
} from '#contracts/plant-calendar.ts';
import type { Tx } from '#db/client.ts';

type Input = z.output<NonNullable<typeof saveContract.body>>;

export async function requireReadable(tx: Tx, actor: Actor, plantId: string): Promise<{ code: string }> {
  const plant = await tx.plant.findUnique({ where: { id: plantId }, select: { code: true } });
  if (!plant || !holds(actor, 'masterData.read', plantId)) throw notFound('plant');
  return plant;
}

export async function readCalendar(tx: Tx, actor: Actor, plantId: string): Promise<PlantCalendar> {
  await requireReadable(tx, actor, plantId);
  const stated = await tx.plantCalendar.findUnique({ where: { plantId } });
  const holidays = await tx.plantHoliday.findMany({ where: { plantId }, orderBy: { day: 'asc' } });
  return {
    plantId,
    hours: stated ? WorkingHours.parse(stated.hours) : usualHours,
    holidays: holidays.map(({ day, name }) => ({ day: day.toISOString().slice(0, 10), name })),
    usual: stated === null,
    version: stated?.version ?? 1,
  };
}

/** Version 1 is the usual calendar that nobody stated; the first save makes it 2. */
async function writeHours({ tx }: Unit, plantId: string, version: number, hours: WorkingHours): Promise<void> {
  if (version === 1) {
    const { count } = await tx.plantCalendar.createMany({
      data: [{ plantId, hours, version: 2 }],
      skipDuplicates: true,
    });
    if (count === 1) return;
  }
  const { count } = await tx.plantCalendar.updateMany({
    where: { plantId, version },
    data: { hours, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
}

export async function saveCalendar(
  unit: Unit,
  plantId: string,
  version: number,
  { hours, holidays }: Input,
): Promise<PlantCalendar> {
  const { tx, actor } = unit;
  const { code } = await requireReadable(tx, actor, plantId);
  requirePlant(actor, 'plantData.write', plantId);
  const before = await readCalendar(tx, actor, plantId);
  await writeHours(unit, plantId, version, hours);
  await tx.plantHoliday.deleteMany({ where: { plantId } });
  await tx.plantHoliday.createMany({
    data: holidays.map(({ day, name }) => ({ plantId, day: new Date(day), name })),
  });
  await reckonPlantClocks(unit, plantId);
  const after = await readCalendar(tx, actor, plantId);
  await recordChange(unit, {
    action: 'updated',
    entity: 'plant_calendar',
    entityId: plantId,
    label: code,
    plantId,
    before,
    after,
  });
  return after;
}
