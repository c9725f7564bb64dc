/**
 * Solves A X = B by Gaussian elimination with partial pivoting. Source: Golub G.H. and Van Loan C.F. (1996), 3.4.
 *
 * @param matrix A, square
 * @param right B, one row for each row of A
 * @returns X, one row for each column of A; null when A is singular
 */
export function solveLinear(
  matrix: readonly (readonly number[])[],
  right: readonly (readonly number[])[],
): number[][] | null {
  const size = matrix.length;
  const rows = matrix.map((row, i) => [...row, ...right[i]!]);
  const width = rows[0]?.length ?? 0;
  for (let column = 0; column < size; column++) {
    let pivot = column;
    for (let i = column + 1; i < size; i++) {
      if (Math.abs(rows[i]![column]!) > Math.abs(rows[pivot]![column]!)) pivot = i;
    }
    const top = rows[pivot]!;
    if (Math.abs(top[column]!) < 1e-300) return null;
    rows[pivot] = rows[column]!;
    rows[column] = top;
    for (let i = column + 1; i < size; i++) {
      const row = rows[i]!;
      const factor = row[column]! / top[column]!;
      if (factor !== 0) for (let j = column; j < width; j++) row[j]! -= factor * top[j]!;
    }
  }
  for (let i = size - 1; i >= 0; i--) {
    const row = rows[i]!;
    for (let j = size; j < width; j++) {
      let sum = row[j]!;
      for (let k = i + 1; k < size; k++) sum -= row[k]! * rows[k]![j]!;
      row[j] = sum / row[i]!;
    }
  }
  return rows.map((row) => row.slice(size));
}
