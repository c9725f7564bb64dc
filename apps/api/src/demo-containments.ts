import { addDays } from '#analysis/calendar/day.ts';
import { ContainmentInput } from '#contracts/containment.ts';
import type { Place } from '#contracts/containment-parts.ts';
import { openDatabase } from '#db/client.ts';
import { lowLances } from '#seed/scenario/low-lances.ts';
import { oversizeProbe } from '#seed/scenario/oversize-probe.ts';
import { wornApplicator } from '#seed/scenario/worn-applicator.ts';
import { createContainment, setCleanPoint, statePlaces } from './features/containment/containment.service.ts';
import { addSorting } from './features/containment/sorting.service.ts';
import { runUnit, type Unit } from './platform/unit.ts';

interface Plan {
  plant: string;
  title: string;
  scope: { terminal?: string; tool?: string; lot?: string; lines: readonly string[] };
  /** days before the last day */
  from: number;
  to: number;
  clean: string | null;
  places: readonly [Place, number][];
  /** place, days before the last day, inspected, found, whether a random sample */
  sorted: readonly [Place, number, number, number, boolean][];
}

const [first] = lowLances.uses;
const plans: readonly Plan[] = [
  {
    plant: first.plant,
    title: `Low lances, reel lot ${lowLances.lot}`,
    scope: { terminal: lowLances.terminal, lot: lowLances.lot, lines: [first.line] },
    from: first.from,
    to: first.to,
    clean: 'Reels of the lot sent back; lances of the next lot measured on receipt.',
    places: [
      ['stock', 1200],
      ['customer', 2600],
    ],
    sorted: [
      ['stock', 96, 1200, 7, false],
      ['customer', 92, 315, 0, true],
    ],
  },
  {
    plant: oversizeProbe.plant,
    title: `Probe at position ${oversizeProbe.position} of ${oversizeProbe.fixture} too large`,
    scope: { tool: oversizeProbe.fixture, lines: oversizeProbe.lines },
    from: oversizeProbe.fitted,
    to: oversizeProbe.changed,
    clean: 'Probe changed to the size on the drawing; no new marks in 200 harnesses.',
    places: [['stock', 800]],
    sorted: [['stock', oversizeProbe.changed - 2, 800, 5, false]],
  },
  {
    plant: wornApplicator.plant,
    title: `Terminals crimped by ${wornApplicator.tool}`,
    scope: { terminal: wornApplicator.terminal, tool: wornApplicator.tool, lines: [wornApplicator.line] },
    from: wornApplicator.replaced + 30,
    to: wornApplicator.replaced,
    clean: null,
    places: [['in_process', 300]],
    sorted: [['in_process', wornApplicator.replaced - 1, 80, 1, true]],
  },
];

/** Holds back what the planted truths made suspect, with what sorting found, in the name of each plant's engineer. */
export async function holdBack(url: string, anchor: string, at: Date): Promise<void> {
  const db = await openDatabase(url, { poolSize: 4 });
  try {
    for (const plan of plans) {
      const { id: plantId } = await db.prisma.plant.findUniqueOrThrow({ where: { code: plan.plant } });
      const { id, name, locale } = await db.prisma.person.findUniqueOrThrow({
        where: { email: `engineer.${plan.plant.toLowerCase()}@example.test` },
      });
      const grants = [{ role: 'engineer' as const, plantId }];
      const actor = { id, kind: 'person' as const, name, locale, mustChangePassword: false, grants };
      await runUnit(db, { actor, at }, (unit) => carryOut(unit, plantId, plan, anchor));
    }
  } finally {
    await db.close();
  }
}

async function carryOut(unit: Unit, plantId: string, plan: Plan, anchor: string): Promise<void> {
  const { terminal, tool, lot, lines } = plan.scope;
  const day = (before: number) => addDays(anchor, -before);
  const terminals = terminal ? await unit.tx.terminal.findMany({ where: { code: terminal } }) : [];
  const tools = tool ? await unit.tx.tool.findMany({ where: { plantId, code: tool } }) : [];
  const lineRows = await unit.tx.line.findMany({ where: { plantId, code: { in: [...lines] } } });
  const input = ContainmentInput.parse({
    plantId,
    title: plan.title,
    terminalIds: terminals.map(({ id }) => id),
    toolIds: tools.map(({ id }) => id),
    lineIds: lineRows.map(({ id }) => id),
    reelLots: lot ? [lot] : [],
    builtFrom: day(plan.from),
    builtTo: day(plan.to - 1),
  });
  const { id, version } = await createContainment(unit, input);
  const places = plan.places.map(([place, quantity]) => ({ place, quantity, note: null }));
  const stated = await statePlaces(unit, id, version, { places });
  for (const [place, before, inspected, found, sample] of plan.sorted)
    await addSorting(unit, id, { place, day: day(before), inspected, found, sample, note: null, report: false });
  if (plan.clean)
    await setCleanPoint(unit, id, stated.version, {
      from: day(plan.to - 1),
      serial: null,
      lot: null,
      reason: plan.clean,
    });
}
