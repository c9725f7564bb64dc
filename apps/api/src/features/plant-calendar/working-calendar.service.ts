import type { WorkingCalendar } from '#analysis/calendar/working-time.ts';
import { usualHours, WorkingHours } from '#contracts/plant-calendar.ts';
import type { Tx } from '#db/client.ts';

/** The working time of plants, by their id: as stated, else the usual hours without holidays. */
export async function workingCalendars(tx: Tx, plantIds: readonly string[]): Promise<Map<string, WorkingCalendar>> {
  const ids = [...new Set(plantIds)];
  const where = { where: { plantId: { in: ids } } };
  const [plants, calendars, holidays] = await Promise.all([
    tx.plant.findMany({ where: { id: { in: ids } }, select: { id: true, zone: true } }),
    tx.plantCalendar.findMany(where),
    tx.plantHoliday.findMany(where),
  ]);
  const hours = new Map(calendars.map((row) => [row.plantId, WorkingHours.parse(row.hours)]));
  const days = Map.groupBy(holidays, ({ plantId }) => plantId);
  return new Map(
    plants.map(({ id, zone }) => [
      id,
      {
        zone,
        hours: hours.get(id) ?? usualHours,
        holidays: new Set((days.get(id) ?? []).map(({ day }) => day.toISOString().slice(0, 10))),
      },
    ]),
  );
}

export async function workingCalendar(tx: Tx, plantId: string): Promise<WorkingCalendar> {
  const calendar = (await workingCalendars(tx, [plantId])).get(plantId);
  if (!calendar) throw new Error(`There is no plant ${plantId}.`);
  return calendar;
}
