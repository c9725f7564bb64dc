/** A calendar month `YYYY-MM`. */
export type Month = string;

export type BuildMonth = { month: Month; produced: number | null };

/** Failures of one month of building that were reported in one month. */
export type FailureMonths = { built: Month; failed: Month; count: number };

export type TriangleRow = BuildMonth & {
  /** whole months in service at the last month */
  age: number;
  /** failures reported up to 0, 1, … `age` months after building */
  cumulative: number[];
};

export type Triangle = {
  rows: TriangleRow[];
  /** failures in no row: reported before they were built, after the last month, or from a month not listed */
  leftOut: { beforeBuilt: number; afterLast: number; monthNotListed: number };
};

const monthNumber = (month: Month): number => {
  const match = /^(\d{4})-(0[1-9]|1[0-2])$/.exec(month);
  if (!match) throw new RangeError(`"${month}" is not a month such as 2026-03.`);
  return Number(match[1]) * 12 + Number(match[2]) - 1;
};

/** Month so many months later. */
export function addMonths(month: Month, months: number): Month {
  const number = monthNumber(month) + months;
  const inYear = `${(number % 12) + 1}`.padStart(2, '0');
  return `${Math.floor(number / 12)}-${inYear}`;
}

/**
 * Months-in-service triangle: cumulated failures by month of building and age. Age 0 is the month of building itself.
 *
 * @param builds months of building, in any order; those after `last` are left out
 * @param last the last month that is fully reported
 */
export function triangle(builds: readonly BuildMonth[], failures: readonly FailureMonths[], last: Month): Triangle {
  const lastNumber = monthNumber(last);
  const rows = builds
    .map((build) => ({ ...build, age: lastNumber - monthNumber(build.month) }))
    .filter(({ age }) => age >= 0)
    .sort((a, b) => b.age - a.age)
    .map((build) => ({ ...build, cumulative: new Array<number>(build.age + 1).fill(0) }));
  const byMonth = new Map(rows.map((row) => [row.month, row]));
  const leftOut = { beforeBuilt: 0, afterLast: 0, monthNotListed: 0 };
  for (const { built, failed, count } of failures) {
    const age = monthNumber(failed) - monthNumber(built);
    const row = byMonth.get(built);
    if (age < 0) leftOut.beforeBuilt += count;
    else if (monthNumber(failed) > lastNumber) leftOut.afterLast += count;
    else if (!row) leftOut.monthNotListed += count;
    else for (let month = age; month <= row.age; month++) row.cumulative[month]! += count;
  }
  return { rows, leftOut };
}
