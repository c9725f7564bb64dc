/** Geometry of the flow picture: the process is a line, every escape an arc from where it was made to where it was found. Pure. */
import { type Stage, stageNumber, stages } from '#contracts/taxonomy.ts';
import type { Cell, Matrix } from './matrix.ts';
import { type Weight, weightOf } from './weights.ts';

export interface Arc {
  readonly cell: Cell;
  readonly weight: number;
  /** Width of the band. */
  readonly width: number;
  readonly path: string;
  /** Top of the arc, where its figure stands. */
  readonly top: { readonly x: number; readonly y: number };
}
export interface Spot {
  readonly stage: Stage;
  readonly at: number;
  /** Found where it was made. */
  readonly here: Cell | undefined;
  readonly radius: number;
}
export interface Flow {
  readonly arcs: readonly Arc[];
  readonly spots: readonly Spot[];
  readonly line: { readonly from: number; readonly to: number; readonly base: number };
}

interface Space {
  /** Length along the process and room across it, px. */
  readonly along: number;
  readonly across: number;
  /** Room before the first and after the last stage. */
  readonly margin: number;
  /** The process runs down instead of to the right. */
  readonly upright: boolean;
}

const widest = 34;
const thinnest = 1.2;

export const flowOf = (matrix: Matrix, weight: Weight, { along, across, margin, upright }: Space): Flow => {
  const step = (along - 2 * margin) / (stages.length - 1);
  const at = (stage: Stage): number => margin + (stageNumber(stage) - 1) * step;
  const base = upright ? 0 : across;
  const largest = Math.max(1, ...matrix.placed.map((cell) => weightOf(cell, weight)));
  const heaviest = (cell: Cell): number => weightOf(cell, weight) / largest;
  // A band of width w rises to this height; the longest way fills the room.
  const rise = (steps: number): number => ((across - widest / 2 - 14) * (0.35 + steps * 0.65)) / (0.35 + 9 * 0.65);

  const arcs = matrix.placed
    .filter((cell) => cell.origin !== 'none' && cell.steps !== null && cell.steps > 0 && weightOf(cell, weight) > 0)
    .map((cell): Arc => {
      const start = at(cell.origin as Stage);
      const end = at(cell.found);
      const height = rise(cell.steps ?? 0);
      // The top of a cubic with both handles at 4/3 of the height lies exactly at the height.
      const handle = (height * 4) / 3;
      const middle = (start + end) / 2;
      return {
        cell,
        weight: weightOf(cell, weight),
        width: Math.max(thinnest, heaviest(cell) * widest),
        path: upright
          ? `M0 ${start}C${handle} ${start} ${handle} ${end} 0 ${end}`
          : `M${start} ${base}C${start} ${base - handle} ${end} ${base - handle} ${end} ${base}`,
        top: upright ? { x: height, y: middle } : { x: middle, y: base - height },
      };
    })
    .sort((a, b) => b.width - a.width);

  const spots = stages.map((stage): Spot => {
    const here = matrix.at(stage, stage);
    return {
      stage,
      at: at(stage),
      here,
      radius: here ? Math.max(3, Math.sqrt(heaviest(here)) * (widest / 2)) : 2.5,
    };
  });
  return { arcs, spots, line: { from: margin, to: along - margin, base } };
};
