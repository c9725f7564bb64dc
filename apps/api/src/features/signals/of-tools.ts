import type { Made } from '#api/features/analyses/exposure.service.ts';
import { type Candidate, candidate } from './candidate.ts';
import type { Master } from './master.queries.ts';
import type { CountedTool } from './tools.queries.ts';

/**
 * Tools against the tools of their kind at the plant: the reports that name one of them are spread over the terminals inserted,
 * and those of a terminal equally over the tools named with it. Without production by terminal, equally over all.
 */
export function ofTools(counted: readonly CountedTool[], byTerminal: readonly Made[], { tools }: Master): Candidate[] {
  const kinds = Map.groupBy(counted, (row) => `${row.plant_id} ${tools.get(row.tool_id)?.kind}`);
  return [...kinds.values()].flatMap((peers) => {
    const plant = peers[0]!.plant_id;
    const named = new Map<string, number>();
    for (const { terminals } of peers) for (const id of terminals) named.set(id, (named.get(id) ?? 0) + 1);
    const inserted = new Map(
      byTerminal
        .filter((row) => row.plant_id === plant && named.has(row.key ?? ''))
        .map((row) => [row.key!, row.terminals]),
    );
    const all = [...inserted.values()].reduce((sum, terminals) => sum + terminals, 0);
    const reports = peers.reduce((sum, row) => sum + row.reports, 0);
    const shareOf = ({ terminals }: CountedTool) =>
      all === 0
        ? 1 / peers.length
        : terminals.reduce((sum, id) => sum + (inserted.get(id) ?? 0) / named.get(id)!, 0) / all;
    return peers.map((row) =>
      candidate(
        'tool',
        { kind: 'tool', plant, tool: row.tool_id },
        row.reports,
        peers.length < 2 ? 0 : reports * shareOf(row),
        'share',
        peers.length,
      ),
    );
  });
}
