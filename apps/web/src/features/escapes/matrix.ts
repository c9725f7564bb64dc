/** The escape matrix as rows and columns, with what each cell means. Pure. */
import type { Counts, Escapes } from '#contracts/analyses.ts';
import { type Stage, stageNumber, stages } from '#contracts/taxonomy.ts';

export type Origin = Stage | 'none';
export interface Cell extends Counts {
  readonly origin: Origin;
  readonly found: Stage;
  /** How many of the ten common stages lie from origin to found; null without an origin. */
  readonly steps: number | null;
}

const nothing: Counts = { reports: 0, terminals: 0, bookedMinor: 0, estimateMinor: 0 };

export const added = (parts: readonly Counts[]): Counts =>
  parts.reduce<Counts>(
    (sum, part) => ({
      reports: sum.reports + part.reports,
      terminals: sum.terminals + part.terminals,
      bookedMinor: sum.bookedMinor + part.bookedMinor,
      estimateMinor: sum.estimateMinor + part.estimateMinor,
    }),
    nothing,
  );

export const matrixOf = (cells: Escapes['cells']) => {
  const placed: Cell[] = cells.map(({ origin, ...cell }) => ({
    ...cell,
    origin: origin ?? 'none',
    steps: origin === null ? null : stageNumber(cell.found) - stageNumber(origin),
  }));
  const origins: Origin[] = [...stages, 'none' as const].filter((origin) => placed.some((it) => it.origin === origin));
  const founds = stages.filter((found) => placed.some((it) => it.found === found));
  const at = (origin: Origin, found: Stage): Cell | undefined =>
    placed.find((it) => it.origin === origin && it.found === found);
  return {
    placed,
    origins,
    founds,
    at,
    ofOrigin: (origin: Origin): Counts => added(placed.filter((it) => it.origin === origin)),
    ofFound: (found: Stage): Counts => added(placed.filter((it) => it.found === found)),
  };
};

export type Matrix = ReturnType<typeof matrixOf>;
