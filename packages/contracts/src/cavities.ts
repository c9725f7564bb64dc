/** Names of the cavities of a housing's face, seen from the wire side: rows are letters, columns numbers, so B3 is row 2, column 3. */
export interface Face {
  readonly rows: number;
  readonly columns: number;
  /** Cavities of the grid that the face does not have. */
  readonly missingCavities: readonly string[];
}

/** Letters of a 1-based row: A … Z, AA, AB … */
export const rowName = (row: number): string =>
  row <= 26 ? String.fromCharCode(64 + row) : `${rowName(Math.floor((row - 1) / 26))}${rowName(((row - 1) % 26) + 1)}`;

/** Name of the cavity in a 1-based row and column. */
export const cavityName = (row: number, column: number): string => `${rowName(row)}${column}`;

/** Every place of the grid, row by row, whether the face has it or not. */
export const gridCavities = ({ rows, columns }: Pick<Face, 'rows' | 'columns'>): string[] =>
  Array.from({ length: rows * columns }, (_, place) =>
    cavityName(Math.floor(place / columns) + 1, (place % columns) + 1),
  );

/** The cavities that the face really has, row by row. */
export const faceCavities = (face: Face): string[] => {
  const missing = new Set(face.missingCavities);
  return gridCavities(face).filter((cavity) => !missing.has(cavity));
};
