import type { Matched } from './matched.queries.ts';
import { holds, type Member } from './members.ts';

/** Reports of the period in both of two members, by their places; every row is looked at once. */
export function overlapsOf(members: readonly Member[], matched: readonly Matched[]): (a: number, b: number) => number {
  const size = members.length;
  const counts = new Float64Array(size * size);
  for (const row of matched) {
    if (!row.inside) continue;
    const places = members.flatMap((member, place) => (holds(member, row) ? [place] : []));
    for (const a of places) for (const b of places) counts[a * size + b]! += row.reports;
  }
  return (a, b) => counts[a * size + b]!;
}
