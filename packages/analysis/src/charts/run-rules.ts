/** Named by what they detect. */
export type RunRule =
  | 'sudden_jump'
  | 'moderate_shift'
  | 'small_shift'
  | 'level_shift'
  | 'drift'
  | 'alternation'
  | 'too_even'
  | 'two_groups';

export type RunSignal = {
  rule: RunRule;
  /** first and last point of the pattern; the signal belongs to the last */
  from: number;
  at: number;
  direction: 'up' | 'down' | null;
};

export type ScoredPoint = { z: number; phase: number };

type Pattern = { window: number; direction: 'up' | 'down' | null; matches: (recent: readonly number[]) => boolean };

/** A point on a limit is not beyond it; scores that differ from it by rounding count as on it. */
const onLimit = 1e-9;
const beyond = (limit: number) => (z: number) => z > limit + onLimit;

/** At least `needed` of the last `window` points, the last among them, satisfy a condition. */
const among = (needed: number, window: number, holds: (z: number) => boolean) => ({
  window,
  matches: (recent: readonly number[]) =>
    holds(recent.at(-1)!) && recent.reduce((count, z) => count + (holds(z) ? 1 : 0), 0) >= needed,
});

/** The same on each side of the centre. */
const eitherSide = (pattern: (holds: (z: number) => number) => Omit<Pattern, 'direction'>): Pattern[] => [
  { ...pattern((z) => z), direction: 'up' },
  { ...pattern((z) => -z), direction: 'down' },
];

const someBeyond = (needed: number, window: number, limit: number): Pattern[] =>
  eitherSide((sign) => among(needed, window, (z) => beyond(limit)(sign(z))));

const steady = (points: number): Pattern[] =>
  eitherSide((sign) => ({
    window: points,
    matches: (recent) => recent.every((z, i) => i === 0 || sign(z) - sign(recent[i - 1]!) > 0),
  }));

const alternating = (recent: readonly number[]): boolean =>
  recent.every((z, i) => i < 2 || (z - recent[i - 1]!) * (recent[i - 1]! - recent[i - 2]!) < 0);

const patterns = (pointsOnOneSide: number): Record<RunRule, Pattern[]> => ({
  sudden_jump: someBeyond(1, 1, 3),
  moderate_shift: someBeyond(2, 3, 2),
  small_shift: someBeyond(4, 5, 1),
  level_shift: someBeyond(pointsOnOneSide, pointsOnOneSide, 0),
  drift: steady(6),
  alternation: [{ window: 14, direction: null, matches: alternating }],
  too_even: [{ ...among(15, 15, (z) => Math.abs(z) < 1 - onLimit), direction: null }],
  two_groups: [{ ...among(8, 8, (z) => beyond(1)(Math.abs(z))), direction: null }],
});

/** In control these two signal once in 153 points on average (reference `4-we-rules-arl`), all four shifts once in 92. */
export const usualRules: readonly RunRule[] = ['sudden_jump', 'level_shift'];

/**
 * Patterns that a process in control shows only rarely. Runs end where a phase ends.
 *
 * sudden_jump: one point beyond 3; moderate_shift: two of three beyond 2 on one side; small_shift: four of five beyond 1 on
 * one side; level_shift: eight (or nine) in a row on one side; drift: six rising or falling; alternation: fourteen up and
 * down in turn; too_even: fifteen within 1; two_groups: eight in a row beyond 1 on either side. "Beyond" is strict.
 * Sources: Western Electric (1956) and Champ C.W. and Woodall W.H. (1987) Technometrics 29:393-399 for the first four;
 * Nelson L.S. (1984) J. Quality Technology 16:237-239 for all, with nine on one side (both from memory). Each further rule
 * adds false alarms.
 */
export function runSignals(
  points: readonly ScoredPoint[],
  rules: readonly RunRule[] = usualRules,
  pointsOnOneSide: 8 | 9 = 8,
): RunSignal[] {
  const known = patterns(pointsOnOneSide);
  const signals: RunSignal[] = [];
  let phaseStart = 0;
  for (let at = 0; at < points.length; at++) {
    if (points[at]!.phase !== points[phaseStart]!.phase) phaseStart = at;
    for (const rule of rules) {
      for (const { window, direction, matches } of known[rule]) {
        const from = Math.max(phaseStart, at - window + 1);
        const whole = at - from + 1 === window;
        if (!whole && rule !== 'moderate_shift' && rule !== 'small_shift') continue;
        if (matches(points.slice(from, at + 1).map(({ z }) => z))) signals.push({ rule, from, at, direction });
      }
    }
  }
  return signals;
}
