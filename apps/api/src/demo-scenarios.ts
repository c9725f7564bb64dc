import { addDays } from '#analysis/calendar/day.ts';
import { WhatIfInput } from '#contracts/what-if.ts';
import { openDatabase } from '#db/client.ts';
import { scenarios } from '#seed/what-if.ts';
import { createWhatIf } from './features/what-if/what-if.service.ts';
import { runUnit } from './platform/unit.ts';

/** Keeps the demo's what-if scenarios in the name of each plant's engineer, over the year up to the last day. */
export async function keepScenarios(url: string, anchor: string, at: Date): Promise<void> {
  const db = await openDatabase(url, { poolSize: 4 });
  try {
    for (const { plant, name, note, input } of scenarios) {
      const { id: plantId } = await db.prisma.plant.findUniqueOrThrow({ where: { code: plant } });
      const engineer = await db.prisma.person.findUniqueOrThrow({
        where: { email: `engineer.${plant.toLowerCase()}@example.test` },
      });
      const actor = {
        id: engineer.id,
        kind: 'person' as const,
        name: engineer.name,
        locale: engineer.locale,
        mustChangePassword: false,
        grants: [{ role: 'engineer' as const, plantId }],
      };
      const to = addDays(anchor, 1);
      const query = new URLSearchParams({ plant: plantId, from: addDays(to, -364), to }).toString();
      await runUnit(db, { actor, at }, (unit) =>
        createWhatIf(db, unit, { name, note, query, input: WhatIfInput.parse(input) }),
      );
    }
  } finally {
    await db.close();
  }
}
