import { cavityName, type Face } from '#contracts/cavities.ts';

/** 1-based row and column. */
export interface Place {
  readonly row: number;
  readonly column: number;
}

/** The next cavity in the direction of `step` that the face really has; `from` itself where there is none. */
export const stepOnFace = (face: Face, from: Place, step: Place): Place => {
  const missing = new Set(face.missingCavities);
  let { row, column } = from;
  for (;;) {
    row += step.row;
    column += step.column;
    if (row < 1 || row > face.rows || column < 1 || column > face.columns) return from;
    if (!missing.has(cavityName(row, column))) return { row, column };
  }
};
