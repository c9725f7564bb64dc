const daysPerMonth = 365.25 / 12;

/** Fraction reported at an age, linear between whole months; 1 everywhere without a table. */
export function maturityAt(ageInDays: number, byMonth: readonly number[] | null | undefined): number {
  if (!byMonth) return 1;
  const age = ageInDays / daysPerMonth;
  const month = Math.floor(age);
  const here = byMonth[Math.min(month, byMonth.length - 1)] ?? 1;
  const next = byMonth[Math.min(month + 1, byMonth.length - 1)] ?? 1;
  return here + (age - month) * (next - here);
}
