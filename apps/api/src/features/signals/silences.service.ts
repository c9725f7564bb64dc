import { addDays } from '#analysis/calendar/day.ts';
import type { Asked } from '#api/features/analyses/asked.service.ts';
import { today } from '#api/features/analyses/period.rules.ts';
import { holds, requireGroup, requirePlant } from '#api/platform/actor.ts';
import { recordChange } from '#api/platform/audit.ts';
import { newId } from '#api/platform/ids.ts';
import { changedMeanwhile, notFound, problem } from '#api/platform/problems.ts';
import type { Unit } from '#api/platform/unit.ts';
import { signalName } from '#contracts/signal-words.ts';
import type { Silence } from '#contracts/signals.ts';
import { searchSignals } from './search.service.ts';
import { namesOf } from './signals.present.ts';
import { findSilence } from './silences.queries.ts';

const longest = 366;

/** The filter it was seen with says how large it is now; it comes back when it grows beyond that. */
export async function silence(
  unit: Unit,
  asked: Asked,
  { key, reason, until }: { key: string; reason: string; until: string },
): Promise<Silence> {
  if (asked.plants.length === 1) requirePlant(unit.actor, 'signals.write', asked.plants[0]!.id);
  const { found, master } = await searchSignals(asked);
  const signal = found.find((one) => one.key === key);
  if (!signal)
    throw problem('conflict', 'With this filter it is not a signal any more. Load the list again.', [
      { path: 'body/key', message: 'is not among the signals' },
    ]);
  const { plant } = signal.member;
  if (plant) requirePlant(unit.actor, 'signals.write', plant);
  else requireGroup(unit.actor, 'signals.write');
  const now = today(unit.at, asked.own);
  if (until <= now || until > addDays(now, longest))
    throw problem('not_consistent', `Choose a day after ${now} and at most a year away.`, [
      { path: 'body/until', message: 'must lie after today, at most a year away' },
    ]);
  const label = signalName({ kind: signal.member.kind, names: namesOf(signal.member, asked.plants, master) }, 'en');
  await endOthers(unit, key);
  const row = await unit.tx.signalSilence.create({
    data: {
      id: newId(),
      plantId: plant,
      key,
      label,
      reason,
      until: new Date(until),
      observed: signal.observed,
      expected: signal.expected,
      ratio: signal.ratio,
      silencedAt: unit.at,
      silencedBy: unit.actor.name,
    },
  });
  const after = (await findSilence(unit.tx, row.id))!;
  await recordChange(unit, {
    action: 'silenced',
    entity: 'signal',
    entityId: row.id,
    label,
    plantId: plant,
    before: null,
    after,
  });
  return after;
}

/** One silence per signal: a new one takes the place of an older one, whether that has run out or not. */
const endOthers = (unit: Unit, key: string) =>
  unit.tx.signalSilence.updateMany({
    where: { key, endedAt: null },
    data: { endedAt: unit.at, version: { increment: 1 } },
  });

export async function endSilence(unit: Unit, id: string, version: number): Promise<Silence> {
  const before = await findSilence(unit.tx, id);
  if (!before || (before.plantId && !holds(unit.actor, 'analyses.read', before.plantId)))
    throw notFound('silenced signal');
  if (before.plantId) requirePlant(unit.actor, 'signals.write', before.plantId);
  else requireGroup(unit.actor, 'signals.write');
  const { count } = await unit.tx.signalSilence.updateMany({
    where: { id, version, endedAt: null },
    data: { endedAt: unit.at, version: { increment: 1 } },
  });
  if (count === 0) throw changedMeanwhile();
  await recordChange(unit, {
    action: 'news_again',
    entity: 'signal',
    entityId: id,
    label: before.label,
    plantId: before.plantId,
    before,
    after: null,
  });
  return { ...before, version: version + 1 };
}
