import type { WorkingCalendar } from '#analysis/calendar/working-time.ts';
import { workingCalendars } from '#api/features/plant-calendar/working-calendar.service.ts';
import type { Actor, PlantScope } from '#api/platform/actor.ts';
import { toPage } from '#api/platform/cursor.ts';
import type { ComplaintLine } from '#contracts/complaints.ts';
import type { Database } from '#db/client.ts';
import { clockState, minutesLeft } from './clocks.rules.ts';
import { countDesk, type DeskCounts, type DeskLine, type DeskQuery, listLines } from './desk.queries.ts';

function nextOf(line: DeskLine, at: Date, calendar: WorkingCalendar): ComplaintLine['next'] {
  const { nextKind, nextDueAt, nextShortAt, nextPausedAt, nextOwnerName } = line;
  if (!nextKind || !nextDueAt || !nextShortAt) return null;
  const clock = { dueAt: nextDueAt, shortAt: nextShortAt, pausedAt: nextPausedAt, answeredAt: null };
  return {
    kind: nextKind,
    state: clockState(clock, at),
    dueAt: nextDueAt.toISOString(),
    ownerName: nextOwnerName ?? '',
    minutesLeft: minutesLeft(clock, at, calendar),
  };
}

type Desk = { items: ComplaintLine[]; next: string | null; counts: DeskCounts };

/** A page of the desk as it stands at a moment. */
export async function listDesk(
  db: Database,
  actor: Actor,
  scope: PlantScope,
  query: DeskQuery,
  at: Date,
): Promise<Desk> {
  const [lines, counts] = await Promise.all([listLines(db, scope, query, actor.id, at), countDesk(db, scope, at)]);
  const { items, next } = toPage(lines, query.limit, (line) => [line.sortKey, line.id]);
  const calendars = await workingCalendars(
    db.prisma,
    items.map(({ plantId }) => plantId),
  );
  return {
    items: items.map((line) => ({ ...line, next: nextOf(line, at, calendars.get(line.plantId)!) })),
    next,
    counts,
  };
}
