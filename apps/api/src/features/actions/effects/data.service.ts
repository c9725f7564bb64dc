import { addDays, type Day } from '#analysis/calendar/day.ts';
import type { EffectData } from '#analysis/effectiveness/count-effect.ts';
import { reportingDelay } from '#analysis/effectiveness/reporting-delay.ts';
import type { EffectScope } from '#contracts/effects.ts';
import type { Tx } from '#db/client.ts';
import { buildsOf, delaysOf, reportsOf } from './data.queries.ts';
import { comesLate } from './scope.ts';

/** How far back reports tell how late reports come in. */
const delayDays = 730;

/** What was built and what failed within a scope, from a day on, as the data are now. */
export async function effectData(
  tx: Tx,
  plantId: string,
  scope: EffectScope,
  { from, today }: { from: Day; today: Day },
): Promise<EffectData> {
  const reports = await reportsOf(tx, plantId, scope, from);
  const builds = await buildsOf(tx, plantId, scope, from);
  const delays = comesLate(scope) ? await delaysOf(tx, plantId, scope, addDays(today, -delayDays)) : [];
  return { builds, reports, maturity: comesLate(scope) ? reportingDelay(delays, today) : null };
}
