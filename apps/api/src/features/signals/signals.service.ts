import type { Day } from '#analysis/calendar/day.ts';
import { weekStart } from '#analysis/calendar/week.ts';
import { type Asked, prepare } from '#api/features/analyses/asked.service.ts';
import type { Actor } from '#api/platform/actor.ts';
import type { Signals } from '#contracts/signals.ts';
import type { Database } from '#db/client.ts';
import { dateOf, weekStarts } from './dating.ts';
import { holds } from './members.ts';
import { searchSignals } from './search.service.ts';
import { presentSignals } from './signals.present.ts';
import { openSilences } from './silences.queries.ts';

/** Listed and dated. */
const listed = 20;

/** The signals of plants and a period, for whoever may see them; what the page shows without a filter. */
export const findPlantSignals = async (
  db: Database,
  actor: Actor,
  question: { plant?: string[]; from?: Day; to?: Day },
  at: Date,
): Promise<Signals> => signalsOf(await prepare(db, actor, question, at), at);

/** The short list: signals of their own with when they began, echoes under them, silenced ones apart. */
export async function signalsOf(asked: Asked, at: Date): Promise<Signals> {
  const [search, silences] = await Promise.all([searchSignals(asked), openSilences(asked, at)]);
  const weeks = weekStarts(search.lookedBack, asked.period.to);
  return presentSignals(asked, search, silences, listed, (signal) => {
    const own = search.matched.filter((row) => holds(signal.member, row));
    const reports = new Map<Day, number>();
    for (const row of own) reports.set(row.week, (reports.get(row.week) ?? 0) + row.reports);
    const made = new Map<Day, number>();
    for (const row of search.production)
      if (signal.member.plant === null || row.plant_id === signal.member.plant) {
        const week = weekStart(row.day, asked.own.firstWeekday);
        made.set(week, (made.get(week) ?? 0) + row.terminals);
      }
    return dateOf(
      reports,
      weeks.map((week) => ({ week, terminals: made.get(week) ?? 0 })),
      asked.seed,
    );
  });
}
