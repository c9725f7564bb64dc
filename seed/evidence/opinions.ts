import { people } from '../group/people.ts';
import { mistakenFor } from '../report/sorting.ts';
import { engineerOf, plantOf } from '../tables/reports.ts';
import { instant, type Row } from '../tables/row.ts';
import type { World } from '../world.ts';
import type { Replayed } from './replay.ts';

const dayMs = 86_400_000;

/** Blind second opinions on about one decision in twelve, given by the plant's quality manager; the latest still wait. */
export function opinionRows({ id, dice: stream, anchor }: World, decisions: readonly Replayed[]): Row[] {
  const dice = stream('second opinions');
  const end = anchor * dayMs;
  return decisions.flatMap(({ case: { filed }, cause, at }): Row[] => {
    const asked = at + dice.whole(5, 25) * dayMs;
    const given = asked + dice.whole(1, 6) * dayMs;
    const right = dice.chance(0.88);
    if (!dice.chance(0.08) || asked > end) return [];
    const plant = plantOf(filed.report).code;
    const second = people.find((it) => it.plant === plant && it.role === 'manager')!;
    const truth = filed.report.fault.cause;
    const isGiven = given <= end;
    return [
      {
        id: id(`opinion ${filed.id}`, asked),
        plant_id: id(`plant ${plant}`),
        failure_id: filed.id,
        confirmation_id: id(`confirmation ${filed.id}`, at),
        first_cause: cause,
        first_person_id: id(`person ${engineerOf(plant).email}`),
        asked_at: instant(asked),
        asked_by: 'Group quality manager',
        cause: isGiven ? (right ? truth : mistakenFor[truth]) : null,
        given_by: isGiven ? id(`person ${second.email}`) : null,
        given_at: isGiven ? instant(given) : null,
      },
    ];
  });
}
