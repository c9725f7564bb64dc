import { causes, type PerCause } from './causes.ts';
import type { SuggestionModel } from './model.ts';
import { type Answers, probabilities } from './suggest.ts';

export interface NextCheck {
  finding: string;
  minutes: number;
  /** Expected drop of the entropy of the cause, bits. */
  gain: number;
  gainPerMinute: number;
  /** Whether one of its answers would put another cause first. */
  couldChangeLead: boolean;
}

/** Entropy of a distribution, bits. Shannon C. E. (1948), Bell System Technical Journal 27:379-423. */
export const entropy = (p: PerCause): number =>
  -causes.reduce((sum, cause) => sum + (p[cause] > 0 ? p[cause] * Math.log2(p[cause]) : 0), 0);

const leader = (p: PerCause) => causes.reduce((best, cause) => (p[cause] > p[best] ? cause : best));

/**
 * The findings not yet taken and not moot for this part, by expected information gain per minute of work, best first.
 * Gain = H(cause) − Σ P(answer) H(cause | answer). Source: Lindley D. V. (1956) Annals of Mathematical Statistics 27:986-1005.
 */
export function nextChecks(
  model: SuggestionModel,
  answers: Answers,
  moot: ReadonlySet<string> = new Set(),
): NextCheck[] {
  const now = probabilities(model, answers);
  const before = entropy(now);
  const lead = leader(now);
  const checks = [...model.findings.values()]
    .filter(({ code, minutes }) => minutes > 0 && !answers.has(code) && !moot.has(code))
    .map(({ code, minutes, beta }): NextCheck => {
      const yes = causes.reduce(
        (sum, cause) => sum + now[cause] * (beta[cause].yes / (beta[cause].yes + beta[cause].no)),
        0,
      );
      const ifYes = probabilities(model, new Map([...answers, [code, 'yes']]));
      const ifNo = probabilities(model, new Map([...answers, [code, 'no']]));
      const gain = Math.max(0, before - yes * entropy(ifYes) - (1 - yes) * entropy(ifNo));
      return {
        finding: code,
        minutes,
        gain,
        gainPerMinute: gain / minutes,
        couldChangeLead: leader(ifYes) !== lead || leader(ifNo) !== lead,
      };
    });
  return checks.sort((a, b) => b.gainPerMinute - a.gainPerMinute || (a.finding < b.finding ? -1 : 1));
}

/** Enough is known when no single check left would put another cause first. */
export const enoughIsKnown = (checks: readonly NextCheck[]): boolean => checks.every((check) => !check.couldChangeLead);
